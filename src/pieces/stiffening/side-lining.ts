import { finding, type Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import { joined, nearestOn, partBetween, reversed } from "#plane/along.ts";
import { evenWidth, offsetEdge } from "#plane/edge-offset.ts";
import { fairLine } from "#plane/fair.ts";
import { lengthOf } from "#plane/measure.ts";
import type { Polyline } from "#plane/outline.ts";
import type { ShellSettings } from "#shell/settings.ts";
import type { Draft } from "../draft.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { linesInside, onPiece } from "../inside-piece.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { placeBlock, readable } from "../labels.ts";
import { lineMark, notchAt, notchDepthMm } from "../marks.ts";
import { edgeLength, edgeOf, edgePoint, type NetUpper } from "../net-upper.ts";
import type { GroundName, Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { widthsAlong } from "../zones.ts";
import { flatAt, type Scales } from "../lining/on-last.ts";
import { straight } from "../lining/panels.ts";
import { puffReachOn, type PuffSizes } from "./puff.ts";
import { metLines, outlineOf, rounded } from "./ring.ts";

export interface SideLiningInput {
  readonly net: NetUpper;
  readonly ground: GroundName;
  /** Lengths on the last along that sheet's edges. */
  readonly scales: Scales;
  readonly sizes: PuffSizes & Pick<ShellSettings, "counterInnerMm" | "counterOuterMm">;
  readonly settings: PieceSettings;
  readonly labels: Labels;
}

const cornerMm = 6;
/** Shorter than this there is nothing for it to bridge, mm (our own limit). */
const leastLengthMm = 30;

/** Inner and outer side lining: along the feather line from the stiffener to the puff, lying on the skived ends of both, lasted under like the puff. */
export function cutSideLinings(input: SideLiningInput): { readonly drafts: readonly Draft[]; readonly findings: readonly Finding[] } {
  const made = halves.map((half) => sideLining(half, input));
  return { drafts: made.flatMap(({ draft }) => (draft ? [draft] : [])), findings: made.flatMap(({ findings }) => findings) };
}

function sideLining(half: Half, { net, ground, scales, sizes, settings, labels }: SideLiningInput): { readonly draft?: Draft; readonly findings: readonly Finding[] } {
  const { feather, places } = net;
  const inner = half === "medial";
  const { sideLiningLapMm: lapMm, counterRakeMm, puffLastingMm } = settings;
  const wing = flatAt(scales[half].feather, (inner ? sizes.counterInnerMm : sizes.counterOuterMm) - lapMm);
  // Lengths run from the outer seat over the toe to the inner one; no side lining reaches beyond either.
  const back = inner ? 1 : -1;
  const between = (s: number): number => (inner ? Math.min(edgeLength(feather), Math.max(places.toe, s)) : Math.max(0, Math.min(places.toe, s)));
  const front = between(puffEnd(net, half, puffReachOn(net, sizes)) - back * lapMm);
  const lengthMm = back * (wing - front);
  if (lengthMm < leastLengthMm) return { findings: [finding("side-lining-short", { half, lengthMm, neededMm: leastLengthMm })] };
  const top = topEdge(net, front, between(wing + back * counterRakeMm), settings);
  const below = partBetween(feather.line, feather.arc, Math.min(front, wing), Math.max(front, wing));
  const lasting = offsetEdge(below, evenWidth(below, puffLastingMm));
  const [start, end]: readonly Xy[] = [0, lasting.xy.length - 2].map((i) => [lasting.xy[i]!, lasting.xy[i + 1]!]);
  const [topStart, topEnd]: readonly Xy[] = [0, top.xy.length - 2].map((i) => [top.xy[i]!, top.xy[i + 1]!]);
  const ends = [straight([end!, topEnd!]), straight([topStart!, start!])] as const;
  const outline = outlineOf(rounded([lasting, ends[0], reversed(top), ends[1]], [cornerMm, cornerMm, cornerMm, cornerMm]));
  const joint = inner ? places.jointMedial : places.jointLateral;
  const marks: Drawn[] = [
    ...paredFrom([below, ends[0], reversed(top), ends[1]], lapMm, sizes.skiveFeatherMm).flatMap((line) => linesInside(outline, line)).map((line) => lineMark("skive to nothing", "skive", line)),
    lineMark("feather line", "net", below),
    ...onPiece(outline, [notchAt(`joint, ${inner ? "inside" : "outside"}`, feather, joint, puffLastingMm, notchDepthMm)]),
  ];
  const name = inner ? "inner side lining" : "outer side lining";
  const lines = pieceLines({ name, material: "side lining", notes: ["between stiffener and puff,", "seen from outside"], count: 1, labels });
  const edge = edgeOf(below), middle = edgeLength(edge) / 2;
  const [a, b] = [edgePoint(edge, middle - 10), edgePoint(edge, middle + 10)];
  const angleDeg = readable(Math.round((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI));
  const near = offsetEdge(below, evenWidth(below, -settings.sideLiningHeightMm / 2)).xy;
  const at = 2 * Math.floor(near.length / 4);
  const label = placeBlock(lines, { within: outline, avoid: [], near: [near[at]!, near[at + 1]!], angleDeg });
  return { draft: { name, material: "side lining", net: false, outline, marks, labels: [label], directionDeg: angleDeg, ground }, findings: [] };
}

/** From where it is pared to nothing: over both laps, and along its upper edge as the stiffener is along the feather line. None where it is too low or too short for that. */
function paredFrom([below, rear, upper, front]: readonly [Polyline, Polyline, Polyline, Polyline], lapMm: number, skiveMm: number): readonly Polyline[] {
  if (lapMm === 0 || [rear, front].some((line) => lengthOf(line) < skiveMm + leastFullMm)) return [];
  const inward = (line: Polyline, mm: number): Polyline => offsetEdge(line, evenWidth(line, -mm));
  const ring = metLines([below, inward(rear, lapMm), inward(upper, skiveMm), inward(front, lapMm)], 30);
  return ring ? [joined(ring.slice(1))] : [];
}
/** Less than this of its full thickness up from the lasted edge is not marked, mm (our own limit). */
const leastFullMm = 8;

/** Where the puff's back edge meets the feather line. */
function puffEnd({ feather, places }: NetUpper, half: Half, reachMm: number): number {
  const x = edgePoint(feather, places.toe)[0] - reachMm;
  let [near, far] = [places.toe, half === "medial" ? places.jointMedial : places.jointLateral];
  if (edgePoint(feather, far)[0] > x) return far;
  for (let k = 0; k < 40; k++) {
    const middle = (near + far) / 2;
    if (edgePoint(feather, middle)[0] > x) near = middle;
    else far = middle;
  }
  return near;
}

/** As high as asked, but so far below the topline; where the two meet it goes over from one to the other without a corner. */
function topEdge({ feather, topline }: NetUpper, from: number, to: number, { sideLiningHeightMm, sideLiningBelowMm }: PieceSettings) {
  const part = partBetween(feather.line, feather.arc, Math.min(from, to), Math.max(from, to));
  const { line, arc } = edgeOf(part);
  const heights = widthsAlong(arc, (s) => {
    const [x, y] = edgePoint({ line, arc }, s);
    return -lesser(sideLiningHeightMm, nearestOn(topline.line, topline.arc, x, y).distance - sideLiningBelowMm);
  });
  return fairLine(offsetEdge(line, heights), { toleranceMm: 0.5 });
}

/** The smaller of two with a soft corner, 4 mm wide. */
const lesser = (a: number, b: number): number => (a + b - Math.sqrt((a - b) * (a - b) + 16)) / 2;

import { offsetLoop } from "#plane/edge-offset.ts";
import { withoutLoops } from "#plane/crossing.ts";
import { bounds } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { heelBreast } from "./heel-line.ts";
import type { Draft } from "../draft.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { blockOutline, placeBlock, type LabelBlock, type LabelLine } from "../labels.ts";
import { acrossAt, centreNotch, lengthwiseArrow, lineMark, notchAt, notchDepthMm, straightMarks } from "../marks.ts";
import type { Mark, Material, Xy } from "../piece.ts";
import { widthsAlong } from "../zones.ts";
import { inside } from "./bottom-lines.ts";
import type { NetBottom } from "./net-bottom.ts";

export type DraftMark = Exclude<Mark, { kind: "text" }>;

/** What lies inside the feather line by a width, or reaches beyond it, as a label says it. */
export const drawnIn = (mm: number): string => (mm === 0 ? "net, no allowance" : mm > 0 ? `drawn in ${mm.toFixed(1)} mm` : `reaches out ${(-mm).toFixed(1)} mm`);

/** The bottom's ring moved outward by a width at each running length, mm. */
export const grown = (net: NetBottom, margin: (s: number) => number): Outline => offsetLoop(net.outline, widthsAlong(net.ring.arc, margin).subarray(0, net.outline.xy.length / 2));

/** The ring drawn in by one width all round. Inside a sharp toe its edges may cross: the loops, far from the seat where the line begins and ends, are cut off. */
export const drawnInRing = (net: NetBottom, mm: number): Outline => withoutLoops(grown(net, () => -mm), 8 * Math.abs(mm));

/** Pieces with little room leave the job's title out. */
export const untitled = (labels: Labels): Labels => ({ ...labels, title: "" });

export interface FlatPiece {
  readonly name: string;
  readonly material: Material;
  readonly notes: readonly string[];
  readonly outline: Outline;
  /** How far the piece's edge lies outside the feather line at a running length of it. */
  readonly margin: (s: number) => number;
  /** The heel's breast where it is not the straight one. */
  readonly breast?: Polyline;
  /** Where its name stands best; before the joint on the inner side where nothing is said. */
  readonly nameAt?: Xy;
  /** Lines of its own, beside those of every piece of the bottom. */
  readonly marks?: readonly DraftMark[];
  /** Numbers that stand where they hold. */
  readonly written?: readonly LabelBlock[];
  readonly labels: Labels;
}

/** A piece in the flat bottom's own place, with centre line, joint line, heel breast line, arrow, notches and texts as far as they lie in it. */
export function flatPiece(net: NetBottom, { name, material, notes, outline, margin, breast = heelBreast(net), nameAt, marks: own = [], written = [], labels }: FlatPiece): Draft {
  const marks = [...bottomMarks(net, outline, margin, breast, material !== "filler"), ...own];
  const lines = pieceLines({ name, material, notes, count: 1, labels }).flatMap(inTwo);
  return {
    name, material, outline, marks,
    net: outline.xy.every((v, i) => v === net.outline.xy[i]),
    labels: bottomLabels(net, outline, marks, written, lines, nameAt ?? [net.jointMedialPoint[0] + 24, 0.42 * net.jointMedialPoint[1]]),
    directionDeg: 0,
    ground: "bottom",
  };
}

function bottomMarks(net: NetBottom, within: Outline, margin: (s: number) => number, breastLine: Polyline, hasGrain: boolean): readonly DraftMark[] {
  const beyond = (a: Xy, b: Xy): Xy => [b[0] + (b[0] - a[0]) * 0.2, b[1] + (b[1] - a[1]) * 0.2];
  const breast = inside(within, breastLine);
  const front = bounds(within).maxX;
  const jointX = (net.jointMedialPoint[0] + net.jointLateralPoint[0]) / 2;
  const jointMiddle: Xy = [jointX, (net.jointMedialPoint[1] + net.jointLateralPoint[1]) / 2];
  const hasToe = front > net.toePoint[0] - 20, hasJoint = front > jointX;
  return [
    ...straightMarks("centre line", "centre", within, beyond(net.toePoint, [0, 0]), beyond([0, 0], net.toePoint)),
    ...(hasJoint ? straightMarks("joint line", "joint", within, beyond(net.jointMedialPoint, net.jointLateralPoint), beyond(net.jointLateralPoint, net.jointMedialPoint)) : []),
    ...(breast ? [lineMark("heel breast line", "heel", breast)] : []),
    ...(hasGrain ? lengthwiseArrow(within, 0.4 * net.jointLateralPoint[1], Math.min(front - 6, jointX - 12), front < net.breastX + 60 ? 12 : net.breastX + 20) : []),
    ...(hasToe ? centreNotch("toe centre", within, [net.breastX, 0], beyond([net.breastX, 0], net.toePoint), notchDepthMm) : []),
    ...centreNotch("seat", within, [net.breastX / 2, 0], [-net.breastX, 0], notchDepthMm),
    ...(hasJoint ? [
      ...centreNotch("joint, inside", within, jointMiddle, beyond(net.jointLateralPoint, net.jointMedialPoint), notchDepthMm),
      ...centreNotch("joint, outside", within, jointMiddle, beyond(net.jointMedialPoint, net.jointLateralPoint), notchDepthMm),
    ] : []),
    ...(front > waistX(net) + 6 ? [notchAt("inside", net.ring, net.waistMedial, margin(net.waistMedial), notchDepthMm)] : []),
  ];
}

/** A long name runs on in a second line, so that it needs not be written small. */
function inTwo(line: LabelLine): readonly LabelLine[] {
  const [first, ...rest] = line.text.split(" ");
  return line.heightMm > 4 && line.text.length > 14 && rest.length > 0 ? [{ ...line, text: first! }, { ...line, text: rest.join(" ") }] : [line];
}

const waistX = (net: NetBottom): number => (net.breastX + net.jointMedialPoint[0]) / 2;

/** The name where it is wished, and `inside` along the medial waist. */
function bottomLabels(net: NetBottom, within: Outline, marks: readonly DraftMark[], written: readonly LabelBlock[], lines: LabelBlock["lines"], near: Xy): readonly LabelBlock[] {
  const avoid = [...written.map(blockOutline), ...marks.flatMap((m) => (m.kind === "line" ? [m.line] : m.kind === "arrow" ? [{ xy: Float64Array.of(...m.from, ...m.to) }] : []))];
  const name = placeBlock(lines, { within, avoid, near, angleDeg: 0 });
  if (bounds(within).maxX <= waistX(net) + 6) return [name, ...written];
  const waist = acrossAt(within, waistX(net));
  const there: Xy = waist ? [waistX(net), 0.5 * waist[1][1]] : [net.breastX, 0];
  const says = placeBlock([{ text: "inside", heightMm: 4 }], { within, avoid: [...avoid, blockOutline(name)], near: there, angleDeg: 0 });
  return [name, says, ...written];
}

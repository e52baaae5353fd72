import { finding, type Finding } from "#base/findings.ts";
import { evenWidth, offsetEdge } from "#plane/edge-offset.ts";
import { cutAtCrossing } from "#plane/join.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { puffBeforeThroatMm } from "#shell/beneath.ts";
import type { Draft } from "../draft.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { placeBlock } from "../labels.ts";
import { acrossAt, centreNotch, lineMark, notchDepthMm } from "../marks.ts";
import { edgePoint, netOutline, type NetUpper } from "../net-upper.ts";
import type { GroundName, Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { straight } from "../lining/panels.ts";
import { closedLine, outlineOf, rounded, within } from "./ring.ts";

export type PuffSizes = Pick<ShellSettings, "puffReachMm" | "skiveMm" | "skiveFeatherMm">;

export interface PuffInput {
  /** The sheet that it is drawn on: the upper's or the lining's. */
  readonly net: NetUpper;
  readonly ground: GroundName;
  readonly sizes: PuffSizes;
  readonly settings: PieceSettings;
  readonly labels: Labels;
}

/** What it must keep from the line of the joint, where the shoe bends, mm (our own reading of "ahead of the bend"). */
const beforeBendMm = 10;
/** Less of its full thickness than this holds no shape, mm across (our own limit). */
const leastFullMm = 12;
/** Beyond every outline. */
const farMm = 300;

/** How far the puff reaches back along the centre line: as asked, but no nearer to the throat than the shell lets it. */
export function puffReachOn({ feather, topline, places }: NetUpper, { puffReachMm }: Pick<ShellSettings, "puffReachMm">): number {
  const centreMm = edgePoint(feather, places.toe)[0] - edgePoint(topline, places.throat)[0];
  return Math.max(0, Math.min(puffReachMm, centreMm - puffBeforeThroatMm));
}

/** The toe puff: feather line with what is lasted under, back edge straight across with its ends rounded. The centre line runs along +x. */
export function cutPuff({ net, ground, sizes, settings, labels }: PuffInput): { readonly draft?: Draft; readonly findings: readonly Finding[] } {
  if (settings.toePuffMm === 0) return { findings: [] };
  const reachMm = puffReachOn(net, sizes);
  const toe = edgePoint(net.feather, net.places.toe);
  const { puffLastingMm, puffRoundMm } = settings;
  const { skiveMm, skiveFeatherMm } = sizes;
  const backX = toe[0] - reachMm;
  const ring = reachMm > skiveMm ? between(offsetEdge(net.feather.line, evenWidth(net.feather.line, puffLastingMm)), backX) : undefined;
  if (!ring) return { findings: [finding("puff-none", { reachMm })] };
  const full = between(offsetEdge(net.feather.line, evenWidth(net.feather.line, -skiveFeatherMm)), backX + skiveMm);
  const outline = outlineOf(rounded(ring, [puffRoundMm, puffRoundMm]));
  const middle: Xy = [toe[0] - reachMm / 2, 0];
  const marks: Drawn[] = [
    ...(full ? [lineMark("skive to nothing", "skive", closedLine(full))] : []),
    lineMark("feather line", "net", within(net.feather.line, outline)),
    lineMark("centre line", "centre", { xy: Float64Array.of(backX, toe[1], toe[0], toe[1]) }),
    ...centreNotch("toe centre", outline, middle, [toe[0] + farMm, 0], notchDepthMm),
  ];
  // There is seldom room beside the skive lines, which text may cross.
  const avoid = marks.flatMap((m) => (m.kind === "line" && m.use === "centre" ? [m.line] : []));
  const lines = pieceLines({ name: "toe puff", material: "toe puff", notes: ["skived all round,", "seen from outside"], count: 1, labels });
  const label = placeBlock(lines, { within: outline, avoid, near: [toe[0] - 0.55 * reachMm, 0.3 * (acrossAt(netOutline(net), backX)?.[1][1] ?? 40)], angleDeg: -90 });
  return { draft: { name: "toe puff", material: "toe puff", net: false, outline, marks, labels: [label], directionDeg: 0, ground }, findings: judge(net, full, reachMm, toe[0], settings) };
}

/** The part of a line over the toe that lies before a place on the axis, and the straight way back across; none where there is none. */
function between(overToe: Polyline, x: number): readonly [Polyline, Polyline] | undefined {
  const first = cutAtCrossing(overToe, { xy: Float64Array.of(x, farMm, x, -farMm) });
  if (!first) return undefined;
  const second = cutAtCrossing(first.after, first.before);
  if (!second) return undefined;
  const [a, b]: readonly Xy[] = [first.at, second.at];
  return a![1] - b![1] > 1 ? [second.after, straight([a!, b!])] : undefined;
}

function judge(net: NetUpper, full: readonly [Polyline, Polyline] | undefined, reachMm: number, toeX: number, { puffLastingMm }: PieceSettings): readonly Finding[] {
  const findings: Finding[] = [];
  const outline = netOutline(net);
  const widthMm = widthAt(outline, toeX - puffLastingMm);
  if (widthMm < 2 * puffLastingMm) findings.push(finding("puff-doubles", { widthMm, lastingMm: puffLastingMm, trimMm: Math.floor(widthMm) / 2 }));
  const fullMm = full ? full[1].xy[1]! - full[1].xy[full[1].xy.length - 1]! : 0;
  if (fullMm < leastFullMm) findings.push(finding("puff-thin", { widthMm: fullMm, reachMm }));
  const [medial, lateral] = [edgePoint(net.feather, net.places.jointMedial), edgePoint(net.feather, net.places.jointLateral)];
  const awayMm = toeX - reachMm - Math.max(medial[0], lateral[0]);
  if (awayMm < beforeBendMm) findings.push(finding("puff-at-bend", { awayMm, neededMm: beforeBendMm, reachMm: Math.floor(2 * (reachMm - beforeBendMm + awayMm)) / 2 }));
  return findings;
}

function widthAt(outline: Outline, x: number): number {
  const across = acrossAt(outline, x);
  return across ? across[1][1] - across[0][1] : 0;
}

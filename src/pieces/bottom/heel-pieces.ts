import { partsInside } from "#plane/clip.ts";
import { arcLengths, joined, pointAt, reversed } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { blockOutline, placeBlock, type LabelBlock } from "../labels.ts";
import { centreNotch, lineMark, notchDepthMm, outward } from "../marks.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { behind, centring, closedBehind, type BehindLine } from "./bottom-lines.ts";
import { grown, type DraftMark } from "./flat-piece.ts";
import { hollowBreast } from "./heel-line.ts";
import type { HeelLayer } from "./heel-stack.ts";
import type { NetBottom } from "./net-bottom.ts";
import type { SeatEdge } from "./seat.ts";

/** A seat that is level within this needs no split lift, mm (our own limit). */
const levelMm = 0.3;
/** How far inside the feather line thicknesses are written, mm. */
const writtenInMm = 1.5;
/** Nails of a lift stand so far inside its edge, mm, at these shares of the way round it (common practice, no source). */
const nailsInMm = 9;
const nailShares = [0.06, 0.28, 0.5, 0.72, 0.94] as const;

/** Whether there is a heel on a seat that is not level of itself. */
export const needsSplitLift = (layers: readonly HeelLayer[], seatEdge: readonly SeatEdge[]): boolean => layers.length > 0 && seatEdge.some(({ offMm }) => offMm >= levelMm);

/** Split lift, lifts and top piece; each as large as its upper face, for the heel runs in toward the ground. Nothing where there are no layers. */
export function cutHeel(net: NetBottom, layers: readonly HeelLayer[], seatEdge: readonly SeatEdge[], settings: PieceSettings, labels: Labels): readonly Draft[] {
  const total = layers.reduce((sum, l) => sum + l.backMm, 0);
  let above = 0;
  const drafts: Draft[] = [];
  if (needsSplitLift(layers, seatEdge)) drafts.push(...splitLift(net, seatEdge, settings, labels));
  for (const layer of layers) {
    const over = settings.heelOverMm - (total > 0 ? (settings.heelTaperMm * above) / total : 0);
    drafts.push(...layerPiece(net, layer, over, settings, labels));
    above += layer.backMm;
  }
  return drafts;
}

/** The seat's outline with what lies under the feather and a width beyond, behind the breast. */
function seatPart(net: NetBottom, { upperThicknessMm, liningThicknessMm, breastHollowMm }: PieceSettings, overMm: number): BehindLine | undefined {
  return behind(grown(net, () => upperThicknessMm + liningThicknessMm + overMm), hollowBreast(net, breastHollowMm));
}

function layerPiece(net: NetBottom, layer: HeelLayer, overMm: number, settings: PieceSettings, labels: Labels): readonly Draft[] {
  const part = seatPart(net, settings, overMm);
  if (!part) return [];
  const outline = closedBehind(part);
  const isTop = layer.name === "top piece";
  const nails = isTop ? undefined : seatPart(net, settings, overMm - nailsInMm);
  const marks: DraftMark[] = [...heelMarks(net, outline), ...(nails ? nailMarks(nails.edge) : [])];
  const even = layer.backMm.toFixed(1) === layer.breastMm.toFixed(1);
  const thick = even ? `${layer.backMm.toFixed(1)} mm` : `back ${layer.backMm.toFixed(1)}, breast ${layer.breastMm.toFixed(1)} mm`;
  return [heelDraft(net, layer.name, outline, marks, [thick, "seen from above"], labels)];
}

/** The horseshoe that levels the round of the seat, to be pared to nothing inside. */
function splitLift(net: NetBottom, seatEdge: readonly SeatEdge[], settings: PieceSettings, labels: Labels): readonly Draft[] {
  const outer = seatPart(net, settings, settings.heelOverMm), inner = seatPart(net, settings, settings.heelOverMm - settings.splitLiftWideMm);
  if (!outer || !inner) return [];
  const between = (from: Xy, to: Xy, front: Polyline): Polyline => frontBetween(front, from, to);
  const o = outer.edge.xy, i = inner.edge.xy;
  const outerEnds = [at(o, 0), at(o, o.length - 2)] as const, innerEnds = [at(i, 0), at(i, i.length - 2)] as const;
  const ring = joined([outer.edge, between(outerEnds[1], innerEnds[1], outer.front), reversed(inner.edge), between(innerEnds[0], outerEnds[0], outer.front)]);
  const outline: Outline = { xy: ring.xy.slice(0, ring.xy.length - 2) };
  const draft = { name: "split lift", material: "heel leather", net: false, outline, directionDeg: 0, ground: "bottom" } as const;
  const marks = heelMarks(net, outline);
  const written = thicknessesWritten(net, seatEdge);
  const avoid = [...marks.flatMap((m) => (m.kind === "line" ? [m.line] : [])), ...written.map(blockOutline)];
  const lines = [{ text: labels.size === "" ? "split lift" : `split lift ${labels.size}`, heightMm: 3 }, { text: `{side}, ${settings.splitLiftMm.toFixed(1)} mm, pare inside`, heightMm: 2.2 }];
  const near: Xy = [net.breastX * 0.62, (o[1]! + i[1]!) / 2];
  return [{ ...draft, marks, labels: [placeBlock(lines, { within: outline, avoid, near, angleDeg: 0 }), ...written] }];
}

/** How thick the split lift is at its edge, written where it is: at the back, beside it, and toward either breast. */
function thicknessesWritten(net: NetBottom, seatEdge: readonly SeatEdge[]): readonly LabelBlock[] {
  const total = edgeLength(net.ring);
  const [from, to] = [seatEdge[0]!.alongMm, seatEdge[seatEdge.length - 1]!.alongMm];
  return [0.94 * from, 0.35 * from, 0.08 * to, 0.35 * to, 0.94 * to].map((along) => {
    const edge = seatEdge.reduce((best, e) => (Math.abs(e.alongMm - along) < Math.abs(best.alongMm - along) ? e : best));
    const s = along < 0 ? -along : total - along;
    const [x, y] = edgePoint(net.ring, s), [nx, ny] = outward(net.ring, s);
    return { lines: [{ text: Math.max(0, edge.offMm).toFixed(1), heightMm: 2 }], at: [x - writtenInMm * nx, y - writtenInMm * ny], angleDeg: 0 };
  });
}

/** The part of the breast line from one place on it to another, both included. */
function frontBetween({ xy }: Polyline, from: Xy, to: Xy): Polyline {
  const inner: number[] = [];
  const way: Xy = [to[0] - from[0], to[1] - from[1]];
  const square = way[0] * way[0] + way[1] * way[1];
  const along: { readonly t: number; readonly p: Xy }[] = [];
  for (let k = 0; k < xy.length; k += 2) {
    const t = ((xy[k]! - from[0]) * way[0] + (xy[k + 1]! - from[1]) * way[1]) / square;
    if (t > 0.001 && t < 0.999) along.push({ t, p: at(xy, k) });
  }
  for (const { p } of along.sort((a, b) => a.t - b.t)) inner.push(...p);
  return { xy: Float64Array.of(...from, ...inner, ...to) };
}

const at = (xy: Float64Array, k: number): Xy => [xy[k]!, xy[k + 1]!];

/** The line seat-waist, on which the heel is centred, and the notch at its back. */
function heelMarks(net: NetBottom, outline: Outline): readonly DraftMark[] {
  const [ux, uy] = centring(net);
  const middle: Xy = [(net.breastX / 2) * ux, (net.breastX / 2) * uy];
  const from: Xy = [-20 * ux, -20 * uy], far: Xy = [2 * net.breastX * ux, 2 * net.breastX * uy];
  return [...straightCentre(outline, from, far), ...centreNotch("seat", outline, middle, from, notchDepthMm)];
}

const straightCentre = (outline: Outline, from: Xy, to: Xy): readonly DraftMark[] =>
  partsInside(outline, from, to).map(([a, b]) => lineMark("centre line", "centre", { xy: Float64Array.of(...a, ...b) }));

function nailMarks(edge: Polyline): readonly DraftMark[] {
  const arc = arcLengths(edge), length = arc[arc.length - 1]!;
  return nailShares.map((share) => ({ kind: "prick", name: "nails", at: pointAt(edge, arc, share * length) }));
}

function heelDraft(net: NetBottom, name: string, outline: Outline, marks: readonly DraftMark[], notes: readonly string[], labels: Labels): Draft {
  const avoid = marks.flatMap((m) => (m.kind === "line" ? [m.line] : m.kind === "prick" ? [blockOutline({ lines: [{ text: "o", heightMm: 2 }], at: m.at, angleDeg: 0 })] : []));
  const lines = [
    { text: name, heightMm: 4 },
    { text: labels.size === "" ? "{side}, heel leather" : `{side}, size ${labels.size}, heel leather`, heightMm: 2.4 },
    ...notes.map((text) => ({ text, heightMm: 2.4 })),
  ];
  return { name, material: "heel leather", net: false, outline, marks, labels: [placeBlock(lines, { within: outline, avoid, near: [net.breastX * 0.45, 12], angleDeg: 0 })], directionDeg: 0, ground: "bottom" };
}

import { finding } from "#base/findings.ts";
import { arcLengths, joined, nearestOn, pointAt } from "#plane/along.ts";
import { offsetEdge, evenWidth } from "#plane/edge-offset.ts";
import { cutAtCrossing, extendEnd, extendStart } from "#plane/join.ts";
import { bounds, lengthOf } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { pieceLines } from "../label-text.ts";
import { placeBlock } from "../labels.ts";
import { centreNotch, lineMark, notchDepthMm, ringEdge } from "../marks.ts";
import { placeOn, pointOf } from "../edges/places.ts";
import { linesInside } from "../inside-piece.ts";
import type { PieceSettings } from "../settings.ts";
import type { Draft } from "../draft.ts";
import type { Xy } from "../piece.ts";
import { cannot, leftOut, type Extra, type ExtraInput } from "./extra.ts";

/** So much of the cap is to be seen at its sides, mm. */
const leastMm = 15;
/** How far ahead of its edge the cap hides a prick, mm. */
const hiddenMm = 1.5;

/** The cap must end so far ahead of the throat and of the joint line, mm. */
const beforeThroatMm = 12;

/** A cap laid on the toe and lasted with the vamp beneath; its edge is a shallow bow across, its other edges are the vamp's own. */
export function toeCap({ panels, upper, settings, labels }: ExtraInput): Extra {
  const panel = panels.findIndex((p) => placeOn(p, "toe"));
  const vamp = panels[panel];
  const draft = vamp && upper.find((d) => d.ground === vamp.name && !d.net);
  if (!vamp?.centre || !draft) return leftOut(cannot("toe cap", "the upper has no toe to lay it on", "leave it out"));
  const [throat, toe] = vamp.centre;
  const { toeCapMm: reach, toeCapBowMm: bow, toeCapFoldMm: fold } = settings;
  const most = Math.min(throatDistance(throat, toe) - beforeThroatMm, jointDistance(vamp, toe));
  if (reach > most) return leftOut(finding("toe-cap-too-long", { reachMm: reach, mostMm: most }));
  if (reach < bow + leastMm) return leftOut(cannot("toe cap", `of ${reach} mm along the centre nothing would be left above the lasting margin`, `make it ${bow + leastMm} mm long or more`));
  const edge = capEdge(draft.outline, toe[0] - reach, toe[1], bow);
  const folded = fold > 0 ? offsetEdge(edge, evenWidth(edge, fold)) : edge;
  const outline = aheadOf(draft.outline, folded);
  if (!outline) return leftOut(finding("toe-cap-too-long", { reachMm: reach, mostMm: most }));
  const feather = draft.marks.find((m) => m.kind === "line" && m.name === "feather line");
  const own = feather?.kind === "line" ? lineAhead(feather.line, edge) : undefined;
  const inside: Xy = [toe[0] - reach / 2, toe[1]];
  const marks: Draft["marks"] = [
    ...(fold > 0 ? [lineMark("fold line of the cap", "fold", within(edge, draft.outline))] : []),
    ...skived(edge, draft.outline, settings),
    ...(own ? [lineMark("feather line", "net", own)] : []),
    lineMark("centre line", "centre", { xy: Float64Array.of(toe[0] - reach, toe[1], ...toe) }),
    ...centreNotch("toe centre", outline, inside, [3 * toe[0] - 2 * inside[0], toe[1]], notchDepthMm),
  ];
  const lines = pieceLines({ name: "toe cap", material: "upper leather", notes: [fold > 0 ? "with lasting margin and fold" : "with lasting margin, edge raw", "grain side up"], count: 1, labels });
  const label = placeBlock(lines, { within: outline, avoid: marks.flatMap((m) => (m.kind === "line" && m.use !== "net" ? [m.line] : [])), near: [inside[0], inside[1] + 16], angleDeg: -90 });
  return {
    drafts: [{ name: "toe cap", material: "upper leather", net: false, outline, marks, labels: [label], directionDeg: 0, ground: vamp.name }],
    marks: placeOnVamp(edge, draft.outline, own).map((mark) => ({ panel, mark })),
  };
}

/** A raw edge that lies over is skived, a folded one for its fold; the line runs ahead of the cap's edge. */
function skived(edge: Polyline, outline: Outline, { toeCapFoldMm: fold, skiveRawMm, skiveFoldMoreMm }: PieceSettings): Draft["marks"] {
  const inMm = fold > 0 ? fold + skiveFoldMoreMm : skiveRawMm;
  return inMm > 0 ? [lineMark("skive to here", "skive", within(offsetEdge(edge, evenWidth(edge, -inMm)), outline))] : [];
}

/** Where the cap's edge comes to lie, and pricks that the cap hides: on the centre and where it meets the feather line. */
function placeOnVamp(edge: Polyline, outline: Outline, feather: Polyline | undefined): Draft["marks"] {
  const hidden = offsetEdge(edge, evenWidth(edge, -hiddenMm));
  const middle = (hidden.xy.length >> 2) << 1;
  const ends = feather ? [0, feather.xy.length - 2].map((i): Xy => [feather.xy[i]!, feather.xy[i + 1]!]) : [];
  const arc = arcLengths(hidden);
  const beside = ends.map(([x, y]): Xy => pointAt(hidden, arc, nearestOn(hidden, arc, x, y).s));
  const name = "edge of the toe cap";
  return [lineMark(name, "place", within(edge, outline), "own pricks"), ...[[hidden.xy[middle]!, hidden.xy[middle + 1]!] as const, ...beside].map((at) => ({ kind: "prick" as const, name, at }))];
}

const throatDistance = (throat: Xy, toe: Xy): number => toe[0] - throat[0];

/** How far the joint line lies behind the toe, where the panel has both joints. */
function jointDistance(vamp: ExtraInput["panels"][number], toe: Xy): number {
  const xs = vamp.places.filter((p) => p.name === "joint").map((p) => pointOf(vamp, p)[0]);
  return xs.length === 0 ? Infinity : toe[0] - Math.max(...xs);
}

/** The cap's edge as a parabola across the whole piece: its middle at x, its ends on the feather line nearer to the toe by the bow. From −y to +y, so that outward is toward the heel. */
function capEdge(outline: Outline, x: number, y: number, bow: number): Polyline {
  const box = bounds(outline);
  const half = Math.max(box.maxY - y, y - box.minY) + 5;
  const n = 60;
  // Square at the centre, so that both halves go on smoothly.
  return { xy: Float64Array.from({ length: 2 * (n + 1) }, (_, i) => {
    const t = (2 * (n - (i >> 1))) / n - 1;
    return i % 2 === 0 ? x + bow * t * t : y + half * t;
  }) };
}

/** The part of the outline on the toe's side of a line across it. */
function aheadOf(outline: Outline, across: Polyline): Outline | undefined {
  const ring = ringEdge(outline).line;
  // Walk the ring from far behind the cap, so that the crossing pair brackets the toe.
  const turned = fromHeel(ring);
  const down = cutAtCrossing({ xy: across.xy }, turned);
  if (!down) return undefined;
  const rest = cutAtCrossing(down.after, down.before);
  if (!rest) return undefined;
  const parts = joined([rest.before, rest.after]).xy;
  return { xy: parts.slice(0, parts.length - 2) };
}

/** A closed line begun at its point of least x. */
function fromHeel({ xy }: Polyline): Polyline {
  const n = xy.length / 2 - 1;
  let least = 0;
  for (let i = 1; i < n; i++) if (xy[2 * i]! < xy[2 * least]!) least = i;
  return { xy: Float64Array.from({ length: 2 * (n + 1) }, (_, i) => xy[2 * ((least + (i >> 1)) % n) + (i % 2)]!) };
}

/** The part of a line between its two crossings with another. */
function lineAhead(line: Polyline, across: Polyline): Polyline | undefined {
  const reach = 5;
  const first = cutAtCrossing(extendEnd(extendStart(across, reach), reach), line);
  const second = first && cutAtCrossing(first.after, first.before);
  return second?.before;
}

/** The part of a line across a piece that lies in it, the longest where there are several. */
function within(line: Polyline, outline: Outline): Polyline {
  const parts = linesInside(outline, line);
  return parts.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a), parts[0] ?? line);
}

import { finding } from "#base/findings.ts";
import { joined } from "#plane/along.ts";
import { offsetEdge, evenWidth } from "#plane/edge-offset.ts";
import { cutAtCrossing, extendEnd, extendStart } from "#plane/join.ts";
import { bounds } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { pieceLines } from "../label-text.ts";
import { placeBlock } from "../labels.ts";
import { centreNotch, lineMark, notchDepthMm, ringEdge } from "../marks.ts";
import { placeOn } from "../edges/places.ts";
import type { Draft } from "../draft.ts";
import type { Xy } from "../piece.ts";
import { cannot, leftOut, type Extra, type ExtraInput } from "./extra.ts";

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
  const edge = capEdge(draft.outline, toe[0] - reach, toe[1], bow);
  const folded = fold > 0 ? offsetEdge(edge, evenWidth(edge, fold)) : edge;
  const outline = aheadOf(draft.outline, folded);
  if (!outline) return leftOut(finding("toe-cap-too-long", { reachMm: reach, mostMm: most }));
  const feather = draft.marks.find((m) => m.kind === "line" && m.name === "feather line");
  const own = feather?.kind === "line" ? lineAhead(feather.line, edge) : undefined;
  const inside: Xy = [toe[0] - reach / 2, toe[1]];
  const marks: Draft["marks"] = [
    ...(fold > 0 ? [lineMark("fold line of the cap", "fold", within(edge, draft.outline) ?? edge)] : []),
    ...(own ? [lineMark("feather line", "net", own)] : []),
    lineMark("centre line", "centre", { xy: Float64Array.of(toe[0] - reach, toe[1], ...toe) }),
    ...centreNotch("toe centre", outline, inside, [3 * toe[0] - 2 * inside[0], toe[1]], notchDepthMm),
  ];
  const lines = pieceLines({ name: "toe cap", material: "upper leather", notes: [fold > 0 ? "with lasting margin and fold" : "with lasting margin, edge raw", "grain side up"], count: 1, labels });
  const label = placeBlock(lines, { within: outline, avoid: marks.flatMap((m) => (m.kind === "line" && m.use !== "net" ? [m.line] : [])), near: [inside[0], inside[1] + 16], angleDeg: -90 });
  return {
    drafts: [{ name: "toe cap", material: "upper leather", net: false, outline, marks, labels: [label], directionDeg: 0, ground: vamp.name }],
    marks: [{ panel, mark: lineMark("edge of the toe cap", "place", within(edge, draft.outline) ?? edge) }],
  };
}

const throatDistance = (throat: Xy, toe: Xy): number => toe[0] - throat[0];

/** How far the joint line lies behind the toe, where the panel has both joints. */
function jointDistance(vamp: ExtraInput["panels"][number], toe: Xy): number {
  const xs = vamp.places.filter((p) => p.name === "joint").map((p) => pointX(vamp, p));
  return xs.length === 0 ? Infinity : toe[0] - Math.max(...xs);
}

const pointX = ({ edges }: ExtraInput["panels"][number], { edge, s }: { readonly edge: number; readonly s: number }): number => {
  const { line, arc } = edges[edge]!;
  const i = Math.min(arc.length - 1, arc.findIndex((a) => a >= s));
  return line.xy[2 * Math.max(0, i)]!;
};

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

/** The part of a line across a piece that lies in it. */
function within(line: Polyline, outline: Outline): Polyline | undefined {
  const turned = fromHeel(ringEdge(outline).line);
  const first = cutAtCrossing(line, turned);
  return first && cutAtCrossing(first.after, first.before)?.after;
}

import { joined, nearestOn, reversed } from "#plane/along.ts";
import { evenWidth, offsetEdge } from "#plane/edge-offset.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { foldedCorner, sharpCorner, straightCorner } from "./corners.ts";
import type { Draft } from "./draft.ts";
import { pieceLines, type Labels } from "./label-text.ts";
import { evenedLasting } from "./even.ts";
import { blockOutline, placeBlock, readable, type LabelBlock } from "./labels.ts";
import { lastingMargin } from "./margins.ts";
import { centreNotch, foldNotchDepthMm, lengthwiseArrow, lineMark, notchAt, notchDepthMm, straightMarks } from "./marks.ts";
import { edgeLength, edgePoint, netOutline, type NetUpper } from "./net-upper.ts";
import type { Mark, Xy } from "./piece.ts";
import type { PieceSettings } from "./settings.ts";
import { widthsAlong } from "./zones.ts";

type Drawn = Exclude<Mark, { kind: "text" }>;

/** The net upper as a card to lay on the leather and to hold against the last. */
export function netUpperCard(net: NetUpper, labels: Labels): Draft {
  const outline = netOutline(net);
  const marks: Drawn[] = [
    ...insideLines(net, outline, outline),
    ...centreNotches(net, outline, notchDepthMm),
    ...featherNotches(net, outline, () => 0),
    ...toplineNotches(net, 0, notchDepthMm),
    ...backPricks(netBackPoints(net)),
  ];
  const lines = pieceLines({ name: "upper, net", material: "card", notes: ["net, no allowance"], count: 1, labels });
  return { name: "upper, net", material: "card", net: true, outline, marks, labels: upperLabels(net, outline, marks, lines), directionDeg: 0 };
}

/** The upper as it is cut: lasting margin, back seam and topline fold added, corners by rule (docs/method/pieces.md). */
export function cutUpper(net: NetUpper, settings: PieceSettings, labels: Labels): Draft {
  const margin = lastingMargin(net, settings);
  const cut = allowancesAdded(net, {
    margin,
    backMedial: evenWidth(net.backMedial.line, settings.backSeamMm),
    backLateral: evenWidth(net.backLateral.line, settings.backSeamMm),
    toplineMm: settings.toplineFoldMm,
    stitchMedial: evenWidth(net.backMedial.line, 0),
    stitchLateral: evenWidth(net.backLateral.line, 0),
    folded: true,
  });
  const inner = netOutline(net);
  const folded = settings.toplineFoldMm > 0;
  const marks: Drawn[] = [
    ...(folded ? [lineMark("fold line of the topline", "fold", cut.foldLine)] : []),
    lineMark("feather line", "net", net.feather.line),
    ...seamLines(cut),
    ...insideLines(net, inner, cut.outline),
    ...centreNotches(net, cut.outline, Math.min(foldNotchDepthMm, settings.toplineFoldMm / 2)).filter(({ name }) => folded || name !== "throat"),
    ...featherNotches(net, cut.outline, margin),
    // A raw edge stays in sight: nothing is snipped into it.
    ...(folded ? toplineNotches(net, settings.toplineFoldMm, Math.min(foldNotchDepthMm, settings.toplineFoldMm / 2)) : []),
    ...backPricks(netBackPoints(net)),
  ];
  const notes = folded ? ["with lasting margin,", "fold and back seam,", "grain side up"] : ["with lasting margin", "and back seam,", "topline raw,", "grain side up"];
  const lines = pieceLines({ name: "upper", material: "upper leather", notes, count: 1, labels });
  return { name: "upper", material: "upper leather", net: false, outline: cut.outline, marks, labels: upperLabels(net, inner, marks, lines), directionDeg: 0 };
}

export interface Allowances {
  /** Outward from the feather at its running length. */
  readonly margin: (s: number) => number;
  /** Outward from the back edges, one width a point. */
  readonly backMedial: Float64Array;
  readonly backLateral: Float64Array;
  /** The same for the stitch lines. */
  readonly stitchMedial: Float64Array;
  readonly stitchLateral: Float64Array;
  /** Outward from the topline. */
  readonly toplineMm: number;
  /** Whether that is folded down, so that its corners must mirror the seam. */
  readonly folded: boolean;
}

/** A stitch line from cutting edge to cutting edge, seat first, and where it crosses the topline. */
export interface Seam {
  readonly line: Polyline;
  readonly backPoint: Xy;
}

export interface CutEdges {
  readonly outline: Outline;
  readonly foldLine: Polyline;
  readonly seamMedial: Seam;
  readonly seamLateral: Seam;
}

/**
 * The net edges moved outward and brought to corners. The fold line is the topline between the two seams' cutting edges. The
 * stitch lines run as their cutting edges do, out through the lasting margin and through the fold.
 */
export function allowancesAdded(net: NetUpper, allowances: Allowances): CutEdges {
  const { margin, backMedial, backLateral, stitchMedial, stitchLateral, toplineMm, folded } = allowances;
  const widths = widthsAlong(net.feather.arc, margin);
  const widest = widths.reduce((a, w) => Math.max(a, w), 0);
  const lasting = evenedLasting(offsetEdge(net.feather.line, widths));
  const medial = offsetEdge(net.backMedial.line, backMedial);
  const lateral = offsetEdge(net.backLateral.line, backLateral);
  const edge = offsetEdge(net.topline.line, evenWidth(net.topline.line, toplineMm));
  const corner = folded && toplineMm > 0 ? foldedCorner : straightCorner;
  const atMedial = corner(medial, net.topline.line, edge, toplineMm);
  // The other end is the same corner walked the other way.
  const atLateral = corner(reversed(lateral), reversed(atMedial.foldLine), reversed(atMedial.foldEdge), toplineMm);
  const seatMedial = sharpCorner(lasting, atMedial.seam, 3 * widest);
  const seatLateral = sharpCorner(reversed(atLateral.seam), seatMedial.before, 3 * widest);
  const ring = joined([seatLateral.after, seatMedial.after, reversed(atLateral.foldEdge), seatLateral.before]).xy;
  const seam = (stitch: Polyline, topline: Polyline, foldEdge: Polyline, lastingEdge: Polyline): Seam => {
    const top = corner(stitch, topline, foldEdge, toplineMm);
    return { line: sharpCorner(lastingEdge, top.seam, 3 * widest).after, backPoint: top.at };
  };
  return {
    outline: { xy: ring.slice(0, ring.length - 2) },
    foldLine: reversed(atLateral.foldLine),
    seamMedial: seam(offsetEdge(net.backMedial.line, stitchMedial), net.topline.line, edge, lasting),
    seamLateral: seam(reversed(offsetEdge(net.backLateral.line, stitchLateral)), reversed(net.topline.line), reversed(edge), reversed(lasting)),
  };
}

/** The stitch lines of both halves. */
export function seamLines({ seamMedial, seamLateral }: CutEdges): readonly Drawn[] {
  return [lineMark("back seam, inside", "stitch", seamMedial.line), lineMark("back seam, outside", "stitch", seamLateral.line)];
}

/** A point of the line through both joints, a share beyond the first of them; negative lies between. */
function onJointLine(net: NetUpper, half: "medial" | "lateral", share: number): Xy {
  const [a, b] = [edgePoint(net.feather, net.places.jointMedial), edgePoint(net.feather, net.places.jointLateral)];
  const [near, far] = half === "medial" ? [a, b] : [b, a];
  return [near[0] + share * (near[0] - far[0]), near[1] + share * (near[1] - far[1])];
}

/** Centre line and arrow, as far as they lie in the net piece; the joint line from cutting edge to cutting edge. */
export function insideLines(net: NetUpper, within: Outline, cut: Outline): readonly Drawn[] {
  const { places } = net;
  const toe = edgePoint(net.feather, places.toe);
  const throat = edgePoint(net.topline, places.throat);
  const half = edgePoint(net.feather, places.jointLateral)[1];
  return [
    lineMark("centre line", "centre", { xy: Float64Array.of(throat[0], throat[1], toe[0], toe[1]) }),
    ...straightMarks("joint line", "joint", cut, onJointLine(net, "medial", beyondJoint), onJointLine(net, "lateral", beyondJoint)),
    ...lengthwiseArrow(within, 0.45 * half, toe[0], throat[0]),
  ];
}

/** Notches of the centre line, on it and not square to the edge, so that they mark the line however the toe is shaped. */
export function centreNotches(net: NetUpper, outline: Outline, throatDepthMm: number): readonly Drawn[] {
  const toe = edgePoint(net.feather, net.places.toe);
  const throat = edgePoint(net.topline, net.places.throat);
  const middle: Xy = [(toe[0] + throat[0]) / 2, (toe[1] + throat[1]) / 2];
  const beyond = (end: Xy): Xy => [3 * end[0] - 2 * middle[0], 3 * end[1] - 2 * middle[1]];
  return [
    ...centreNotch("toe centre", outline, middle, beyond(toe), notchDepthMm),
    ...centreNotch("throat", outline, middle, beyond(throat), throatDepthMm),
  ];
}

/** Far enough beyond a joint, as a share of the joint line, to be outside every margin. */
const beyondJoint = 0.4;

/** Notches where the joint line meets the cutting edge, and one square to it at the inner waist that means inside. */
export function featherNotches(net: NetUpper, cut: Outline, margin: (s: number) => number): readonly Drawn[] {
  const s = net.places.waistMedial;
  const joint = (name: string, half: "medial" | "lateral"): readonly Drawn[] =>
    centreNotch(name, cut, onJointLine(net, half, -0.1), onJointLine(net, half, beyondJoint), notchDepthMm);
  return [
    ...joint("joint, inside", "medial"),
    ...joint("joint, outside", "lateral"),
    notchAt("inside", net.feather, s, margin(s), notchDepthMm),
  ];
}

/** How far from the seat point to below the throat the heights are taken. */
const heightShares = ["1/4", "1/2", "3/4"] as const;

/** Notches along the topline: quarter heights and lowest places. */
export function toplineNotches(net: NetUpper, outMm: number, depthMm: number): readonly Drawn[] {
  const { places } = net;
  const at = (name: string, s: number): Drawn => notchAt(name, net.topline, s, outMm, depthMm);
  const quarters = (side: string, on: readonly number[]): readonly Drawn[] => on.map((s, k) => at(`height at ${heightShares[k] ?? `place ${k + 1}`}, ${side}`, s));
  return [
    ...quarters("inside", places.quarterMedial),
    ...quarters("outside", places.quarterLateral),
    at("lowest, inside", places.lowestMedial),
    at("lowest, outside", places.lowestLateral),
  ];
}

/** Back points and seats on both stitch lines. */
export interface BackPoints {
  readonly backMedial: Xy;
  readonly backLateral: Xy;
  readonly seatMedial: Xy;
  readonly seatLateral: Xy;
}

const netBackPoints = (net: NetUpper): BackPoints => ({
  backMedial: edgePoint(net.backMedial, edgeLength(net.backMedial)),
  backLateral: edgePoint(net.backLateral, 0),
  seatMedial: edgePoint(net.backMedial, 0),
  seatLateral: edgePoint(net.backLateral, edgeLength(net.backLateral)),
});

/** Where back point and seat lie on the seam. They are covered once the seam is closed. */
export function backPricks({ backMedial, backLateral, seatMedial, seatLateral }: BackPoints): readonly Drawn[] {
  const prick = (name: string, at: Xy): Drawn => ({ kind: "prick", name, at });
  return [
    prick("back point, inside", backMedial),
    prick("back point, outside", backLateral),
    prick("seat, inside", seatMedial),
    prick("seat, outside", seatLateral),
  ];
}

/** The piece's name on the medial half of the vamp, and `inside` on the medial waist. */
export function upperLabels(net: NetUpper, within: Outline, marks: readonly Drawn[], lines: LabelBlock["lines"]): readonly LabelBlock[] {
  const avoid = marks.flatMap((m) => (m.kind === "line" && m.use !== "net" ? [m.line] : m.kind === "arrow" ? [{ xy: Float64Array.of(...m.from, ...m.to) }] : []));
  const { places } = net;
  const toe = edgePoint(net.feather, places.toe);
  const throat = edgePoint(net.topline, places.throat);
  const joint = edgePoint(net.feather, places.jointMedial);
  const name = placeBlock(lines, { within, avoid, near: [0.45 * toe[0] + 0.55 * throat[0], 0.45 * joint[1]], angleDeg: -90 });
  const foot = edgePoint(net.feather, places.waistMedial);
  const above = nearestOn(net.topline.line, net.topline.arc, foot[0], foot[1]);
  const before = edgePoint(net.feather, places.waistMedial - 15);
  const after = edgePoint(net.feather, places.waistMedial + 15);
  const angle = (Math.atan2(after[1] - before[1], after[0] - before[0]) * 180) / Math.PI;
  const inside = placeBlock([{ text: "inside", heightMm: 4 }], {
    within,
    avoid: [...avoid, blockOutline(name)],
    near: [(foot[0] + above.x) / 2, (foot[1] + above.y) / 2],
    angleDeg: readable(Math.round(angle)),
  });
  return [name, inside];
}


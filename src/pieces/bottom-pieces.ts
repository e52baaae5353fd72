import { nearestOn } from "#plane/along.ts";
import { offsetLoop } from "#plane/edge-offset.ts";
import type { Outline } from "#plane/outline.ts";
import { breastShare } from "#last/heel-breast.ts";
import { medialSign, type Last } from "#last/last.ts";
import type { FlatBottom } from "#shell/shell.ts";
import { carryAlong, edgeLine } from "./carry.ts";
import type { Draft } from "./draft.ts";
import { evenLoop } from "./even.ts";
import { pieceLines, type Labels } from "./label-text.ts";
import { blockOutline, placeBlock, type LabelBlock } from "./labels.ts";
import { toeReachMm } from "./margins.ts";
import { acrossAt, centreNotch, lengthwiseArrow, notchAt, notchDepthMm, ringEdge, straightMarks } from "./marks.ts";
import { edgeLength, withWaists, type Edge, type FeatherPlaces } from "./net-upper.ts";
import type { Material, Xy } from "./piece.ts";
import type { PieceSettings } from "./settings.ts";
import { inOrder, widthAt, widthsAlong } from "./zones.ts";

/**
 * The last's bottom laid flat, always as a right one, seen from above: one fair ring, counter-clockwise from the seat point
 * over the lateral side to the toe and back over the medial side, with the named places as running lengths on it.
 */
export interface NetBottom extends FeatherPlaces {
  readonly outline: Outline;
  readonly ring: Edge;
  readonly toePoint: Xy;
  readonly jointMedialPoint: Xy;
  readonly jointLateralPoint: Xy;
  readonly breastX: number;
}

export function netBottom(last: Last, flat: FlatBottom): NetBottom {
  const sign = medialSign(last.side);
  const { loop, mesh, toeIndex } = flat.bottom;
  // The loop runs over the medial side first, which is clockwise on a right one: walk it backwards from the seat.
  const seat = loop[0]!;
  const backwards = Uint32Array.of(seat, ...Array.from(loop.subarray(1)).reverse());
  const outline = evenLoop(edgeLine(flat.uv, backwards, sign));
  const closed = Uint32Array.of(...backwards, seat);
  const carrier = { positions: mesh.positions, uv: flat.uv };
  const jointMedialPoint = carryAlong(carrier, closed, last.landmarks.jointMedial, sign);
  const jointLateralPoint = carryAlong(carrier, closed, last.landmarks.jointLateral, sign);
  const toeVertex = loop[toeIndex]!;
  const toePoint: Xy = [flat.uv[2 * toeVertex]!, sign * flat.uv[2 * toeVertex + 1]!];
  return netBottomOf({ outline, toePoint, jointMedialPoint, jointLateralPoint, lengthMm: last.measures.lastLength });
}

/** A bottom by its points: `outline` is even, starts at the seat point (the origin) and has the toe point on +x. */
export interface BottomPoints {
  readonly outline: Outline;
  readonly toePoint: Xy;
  readonly jointMedialPoint: Xy;
  readonly jointLateralPoint: Xy;
  /** Along the bottom. */
  readonly lengthMm: number;
}

/** Finds the named places on the ring of a bottom. */
export function netBottomOf({ outline, toePoint, jointMedialPoint, jointLateralPoint, lengthMm }: BottomPoints): NetBottom {
  const ring = ringEdge(outline);
  const on = (p: Xy): number => nearestOn(ring.line, ring.arc, p[0], p[1]).s;
  const breastX = breastShare * lengthMm;
  const across = acrossAt(outline, breastX);
  const breastLateral = across ? on(across[0]) : edgeLength(ring) * 0.15;
  const breastMedial = across ? on(across[1]) : edgeLength(ring) * 0.85;
  return withWaists({
    outline, ring, toePoint, jointMedialPoint, jointLateralPoint, breastX,
    toe: on(toePoint),
    jointMedial: on(jointMedialPoint),
    jointLateral: on(jointLateralPoint),
    breastMedial,
    breastLateral,
  });
}

/** The insole: the bottom inside the feather line, less room for cement. */
export function cutInsole(net: NetBottom, settings: PieceSettings, labels: Labels): Draft {
  const out = -settings.insoleInMm;
  return bottomPiece(net, "insole", "insole board", [drawnIn(-out), "seen from above"], () => out, labels);
}

/** What the label says of a piece that lies inside the feather line by a width, or reaches beyond it. */
const drawnIn = (mm: number): string => (mm === 0 ? "net, no allowance" : mm > 0 ? `drawn in ${mm.toFixed(1)} mm` : `reaches out ${(-mm).toFixed(1)} mm`);

/** The sock: the insole, a little smaller, so that it lies flat inside the shoe. */
export function cutSock(net: NetBottom, settings: PieceSettings, labels: Labels): Draft {
  const out = -settings.insoleInMm - settings.sockInMm;
  return bottomPiece(net, "sock", "sock leather", [`full length, ${drawnIn(-out)}`, "seen from above"], () => out, labels);
}

/** The outsole: the bottom, what lies between last and sole edge, and what is left for finishing, by zone. */
export function cutOutsole(net: NetBottom, settings: PieceSettings, labels: Labels): Draft {
  return bottomPiece(net, "outsole", "sole leather", ["with finishing margin", "seen from above,", "grain side down"], outsoleMargin(net, settings), labels);
}

/** How far the outsole reaches beyond the feather line at a running length of the bottom. */
export function outsoleMargin(net: NetBottom, settings: PieceSettings): (s: number) => number {
  const under = settings.upperThicknessMm + settings.liningThicknessMm;
  const forepart = under + settings.soleFinishForepartMm;
  const waist = under + settings.soleFinishWaistMm;
  const heel = under + settings.soleFinishHeelMm;
  const stations = inOrder([
    { s: 0, mm: heel },
    { s: net.breastLateral, mm: heel },
    { s: net.waistLateral, mm: waist },
    { s: net.jointLateral, mm: forepart },
    { s: net.toe - toeReachMm, mm: forepart },
    { s: net.toe, mm: forepart + settings.toePuffMm },
    { s: net.toe + toeReachMm, mm: forepart },
    { s: net.jointMedial, mm: forepart },
    { s: net.waistMedial, mm: waist },
    { s: net.breastMedial, mm: heel },
    { s: edgeLength(net.ring), mm: heel },
  ]);
  return (s) => widthAt(stations, s);
}

function bottomPiece(net: NetBottom, name: string, material: Material, notes: readonly string[], margin: (s: number) => number, labels: Labels): Draft {
  const widths = widthsAlong(net.ring.arc, margin).subarray(0, net.outline.xy.length / 2);
  const outline = offsetLoop(net.outline, widths);
  const marks = bottomMarks(net, outline, margin);
  const lines = pieceLines({ name, material, notes, count: 1, labels });
  return { name, material, net: widths.every((mm) => mm === 0), outline, marks, labels: bottomLabels(net, outline, marks, lines), directionDeg: 0 };
}

function bottomMarks(net: NetBottom, within: Outline, margin: (s: number) => number): Draft["marks"] {
  const beyond = (a: Xy, b: Xy): Xy => [b[0] + (b[0] - a[0]) * 0.2, b[1] + (b[1] - a[1]) * 0.2];
  const across = acrossAt(within, net.breastX);
  const jointX = (net.jointMedialPoint[0] + net.jointLateralPoint[0]) / 2;
  const jointMiddle: Xy = [jointX, (net.jointMedialPoint[1] + net.jointLateralPoint[1]) / 2];
  return [
    ...straightMarks("centre line", "centre", within, beyond(net.toePoint, [0, 0]), beyond([0, 0], net.toePoint)),
    ...straightMarks("joint line", "joint", within, beyond(net.jointMedialPoint, net.jointLateralPoint), beyond(net.jointLateralPoint, net.jointMedialPoint)),
    ...(across ? straightMarks("heel breast line", "heel", within, [net.breastX, across[0][1] - 1], [net.breastX, across[1][1] + 1]) : []),
    ...lengthwiseArrow(within, 0.4 * net.jointLateralPoint[1], jointX - 12, net.breastX + 20),
    ...centreNotch("toe centre", within, [net.breastX, 0], beyond([net.breastX, 0], net.toePoint), notchDepthMm),
    ...centreNotch("seat", within, [net.breastX, 0], [-net.breastX, 0], notchDepthMm),
    ...centreNotch("joint, inside", within, jointMiddle, beyond(net.jointLateralPoint, net.jointMedialPoint), notchDepthMm),
    ...centreNotch("joint, outside", within, jointMiddle, beyond(net.jointMedialPoint, net.jointLateralPoint), notchDepthMm),
    notchAt("inside", net.ring, net.waistMedial, margin(net.waistMedial), notchDepthMm),
  ];
}

/** The name on the medial half before the joint, and `inside` along the medial waist. */
function bottomLabels(net: NetBottom, within: Outline, marks: Draft["marks"], lines: LabelBlock["lines"]): readonly LabelBlock[] {
  const avoid = marks.flatMap((m) => (m.kind === "line" ? [m.line] : m.kind === "arrow" ? [{ xy: Float64Array.of(...m.from, ...m.to) }] : []));
  const name = placeBlock(lines, { within, avoid, near: [net.jointMedialPoint[0] + 24, 0.42 * net.jointMedialPoint[1]], angleDeg: 0 });
  const waist = acrossAt(within, (net.breastX + net.jointMedialPoint[0]) / 2);
  const near: Xy = waist ? [(net.breastX + net.jointMedialPoint[0]) / 2, 0.5 * waist[1][1]] : [net.breastX, 0];
  const inside = placeBlock([{ text: "inside", heightMm: 4 }], { within, avoid: [...avoid, blockOutline(name)], near, angleDeg: 0 });
  return [name, inside];
}

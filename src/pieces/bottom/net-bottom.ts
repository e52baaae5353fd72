import { nearestOn } from "#plane/along.ts";
import type { Outline } from "#plane/outline.ts";
import { breastShare } from "#last/heel-breast.ts";
import { medialSign, type Last } from "#last/last.ts";
import type { FlatBottom } from "#shell/shell.ts";
import { carryAlong, edgeLine } from "../carry.ts";
import { evenLoop } from "../even.ts";
import { acrossAt, ringEdge } from "../marks.ts";
import { edgeLength, withWaists, type Edge, type FeatherPlaces } from "../net-upper.ts";
import type { Xy } from "../piece.ts";

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

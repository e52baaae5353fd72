import { must } from "#base/bug.ts";
import type { Point3 } from "#last/last.ts";
import { nearestOnSegment } from "#last/surface-curve.ts";
import type { Polyline } from "#plane/outline.ts";
import type { LaidOnLast } from "#shell/lay-flat.ts";
import type { Xy } from "./piece.ts";

/** What is needed to carry a place: the surface's points and their flat places. */
type Carrier = { readonly positions: Float64Array; readonly uv: Float64Array };

const carrierOf = (flat: LaidOnLast): Carrier => ({ positions: flat.onLast.mesh.positions, uv: flat.uv });

/** A named edge of the flat shell as a polyline; `sign` −1 turns a left one into a right one. */
export function edgeLine(uv: Float64Array, vertices: Uint32Array, sign: 1 | -1): Polyline {
  const xy = new Float64Array(2 * vertices.length);
  for (let k = 0; k < vertices.length; k++) {
    xy[2 * k] = uv[2 * vertices[k]!]!;
    xy[2 * k + 1] = sign * uv[2 * vertices[k]! + 1]!;
  }
  return { xy };
}

/** Flat place of the point of an edge that is nearest, on the last, to a point. */
export function carriedTo(flat: LaidOnLast, vertices: Uint32Array, p: Point3, sign: 1 | -1): Xy {
  return carryAlong(carrierOf(flat), vertices, p, sign);
}

export function carryAlong({ positions, uv }: Carrier, vertices: Uint32Array, p: Point3, sign: 1 | -1): Xy {
  must(vertices.length >= 2, "an edge needs two points");
  let least = Infinity;
  let place: Xy = [0, 0];
  for (let k = 0; k + 1 < vertices.length; k++) {
    const { share, square } = nearestOnSegment(positions, vertices[k]!, vertices[k + 1]!, p);
    if (square < least) {
      least = square;
      place = between(uv, vertices[k]!, vertices[k + 1]!, share, sign);
    }
  }
  return place;
}

/** Flat place where an edge that runs seat → toe first reaches a share of its way along the last's axis. */
export function edgePlaceAtX(flat: LaidOnLast, vertices: Uint32Array, share: number, sign: 1 | -1): Xy {
  const { positions } = flat.onLast.mesh;
  const x = (k: number): number => positions[3 * vertices[k]!]!;
  const wanted = x(0) + share * (x(vertices.length - 1) - x(0));
  for (let k = 0; k + 1 < vertices.length; k++) {
    if (x(k) <= wanted && x(k + 1) > wanted) return between(flat.uv, vertices[k]!, vertices[k + 1]!, (wanted - x(k)) / (x(k + 1) - x(k)), sign);
  }
  return between(flat.uv, vertices[0]!, vertices[0]!, 0, sign);
}

function between(uv: Float64Array, a: number, b: number, t: number, sign: 1 | -1): Xy {
  const x = uv[2 * a]! + t * (uv[2 * b]! - uv[2 * a]!);
  const y = uv[2 * a + 1]! + t * (uv[2 * b + 1]! - uv[2 * a + 1]!);
  return [x, sign * y];
}

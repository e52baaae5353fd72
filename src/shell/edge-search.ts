import { distanceInSpace } from "#flatten/distance.ts";
import type { Point3 } from "#last/last.ts";
import { nearestOnSegment } from "#last/surface-curve.ts";

/** Looks for the place of an edge of the shell that is nearest to a point. */
export class EdgeSearch {
  /** x y z a place of the edge */
  readonly #p: Float64Array;
  readonly #arc: Float64Array;

  constructor(positions: Float64Array, ids: Uint32Array) {
    this.#p = new Float64Array(3 * ids.length);
    this.#arc = new Float64Array(ids.length);
    for (let k = 0; k < ids.length; k++) {
      for (let d = 0; d < 3; d++) this.#p[3 * k + d] = positions[3 * ids[k]! + d]!;
      if (k > 0) this.#arc[k] = this.#arc[k - 1]! + distanceInSpace(positions, ids[k - 1]!, ids[k]!);
    }
  }

  /** Distance as the crow flies and running length of the place, mm. */
  nearest(at: Point3): { readonly distance: number; readonly along: number } {
    const p = this.#p;
    const [ax, ay, az] = at;
    let best = 0, least = Infinity;
    for (let k = 0; k < p.length; k += 3) {
      const x = p[k]! - ax, y = p[k + 1]! - ay, z = p[k + 2]! - az;
      const square = x * x + y * y + z * z;
      if (square < least) {
        best = k / 3;
        least = square;
      }
    }
    let along = this.#arc[best]!;
    for (let k = Math.max(0, best - 1); k <= best && k + 1 < this.#arc.length; k++) {
      const { share, square } = nearestOnSegment(p, k, k + 1, at);
      if (square <= least) {
        along = this.#arc[k]! + share * (this.#arc[k + 1]! - this.#arc[k]!);
        least = square;
      }
    }
    return { distance: Math.sqrt(least), along };
  }
}

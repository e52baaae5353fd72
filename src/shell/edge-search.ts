import type { Point3 } from "#last/last.ts";
import { nearestOnSegment } from "#last/surface-curve.ts";
import { between } from "./edge-length.ts";

/** Looks for the place of an edge of the shell that is nearest to a point. */
export class EdgeSearch {
  readonly #p: Float64Array;
  readonly #ids: Uint32Array;
  readonly #arc: Float64Array;

  constructor(positions: Float64Array, ids: Uint32Array) {
    this.#p = positions;
    this.#ids = ids;
    this.#arc = new Float64Array(ids.length);
    for (let k = 1; k < ids.length; k++) this.#arc[k] = this.#arc[k - 1]! + between(positions, ids[k - 1]!, ids[k]!);
  }

  /** Distance as the crow flies and running length of the place, mm. */
  nearest(at: Point3): { readonly distance: number; readonly along: number } {
    const p = this.#p, ids = this.#ids;
    let best = 0, least = Infinity;
    for (let k = 0; k < ids.length; k++) {
      const v = 3 * ids[k]!;
      const x = p[v]! - at[0], y = p[v + 1]! - at[1], z = p[v + 2]! - at[2];
      const square = x * x + y * y + z * z;
      if (square < least) [best, least] = [k, square];
    }
    let along = this.#arc[best]!;
    for (const k of [best - 1, best]) {
      if (k < 0 || k + 1 >= ids.length) continue;
      const { share, square } = nearestOnSegment(p, ids[k]!, ids[k + 1]!, at);
      if (square <= least) [along, least] = [this.#arc[k]! + share * (this.#arc[k + 1]! - this.#arc[k]!), square];
    }
    return { distance: Math.sqrt(least), along };
  }
}

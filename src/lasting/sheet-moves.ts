import { ClosestPoint } from "#mesh/closest.ts";

/** Moves of the vertices of a flat sheet, for any place of the plane. */
export class SheetMoves {
  readonly #flat: Float64Array;
  readonly #triangles: Uint32Array;
  readonly #by: Float64Array;
  readonly #closest: ClosestPoint;

  /** `from` and `to`: the same sheet before and after, x0 y0 … mm. */
  constructor(triangles: Uint32Array, from: Float64Array, to: Float64Array) {
    this.#flat = from;
    this.#triangles = triangles;
    this.#by = to.map((x, i) => x - from[i]!);
    const positions = new Float64Array((from.length / 2) * 3);
    for (let v = 0; v < from.length / 2; v++) positions.set([from[2 * v]!, from[2 * v + 1]!], 3 * v);
    this.#closest = new ClosestPoint({ positions, triangles });
  }

  /** Another sheet of the same form in the same frame, however coarse, moved likewise. Beyond its rim a place moves as the nearest one. */
  moved(flat: Float64Array): Float64Array {
    const out = flat.slice(), q = new Float64Array(3), { length } = flat;
    for (let i = 0, near = -1; i < length; i += 2) {
      near = this.#closest.findInto(q, flat[i]!, flat[i + 1]!, 0, near);
      const [a, b, c] = [0, 1, 2].map((k) => 2 * this.#triangles[3 * near + k]!) as [number, number, number], f = this.#flat;
      const cross = (p: number, r: number): number => (f[p]! - q[0]!) * (f[r + 1]! - q[1]!) - (f[p + 1]! - q[1]!) * (f[r]! - q[0]!);
      const wa = cross(b, c), wb = cross(c, a), wc = cross(a, b), sum = wa + wb + wc;
      for (const d of [0, 1]) out[i + d] = flat[i + d]! + (wa * this.#by[a + d]! + wb * this.#by[b + d]! + wc * this.#by[c + d]!) / sum;
    }
    return out;
  }
}

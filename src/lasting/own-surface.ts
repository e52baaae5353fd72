import type { Point3 } from "#last/last.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { cornerWeights } from "#mesh/corner-weights.ts";
import type { LastGround } from "./ground-of.ts";

/** The way back from the surface over what lies beneath the upper to the last's own, where a maker's marks are: both have the same triangles. */
export class OwnSurface {
  readonly #ground: LastGround;
  readonly #closest: ClosestPoint;
  readonly #at = new Float64Array(3);
  #near = -1;

  constructor(ground: LastGround) {
    this.#ground = ground;
    this.#closest = new ClosestPoint(ground.over);
  }

  /** The place of the last beneath a point of the upper: the same place of the same triangle. */
  under(p: Point3): Point3 {
    const { over, onLast } = this.#ground, q = this.#at;
    this.#near = this.#closest.findInto(q, p[0], p[1], p[2], this.#near);
    const [a, b, c] = [0, 1, 2].map((k) => 3 * over.triangles[3 * this.#near + k]!) as [number, number, number];
    const [v, s, r] = cornerWeights(over, this.#near, [q[0]!, q[1]!, q[2]!]) ?? [1, 0, 0];
    const on = (d: number): number => v * onLast.positions[a + d]! + s * onLast.positions[b + d]! + r * onLast.positions[c + d]!;
    return [on(0), on(1), on(2)];
  }
}

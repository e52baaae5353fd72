import type { Point3 } from "#last/last.ts";
import { ClosestPoint } from "#mesh/closest.ts";
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
    const [s, r] = shares(over.positions, a, b, c, q);
    const on = (d: number): number => (1 - s - r) * onLast.positions[a + d]! + s * onLast.positions[b + d]! + r * onLast.positions[c + d]!;
    return [on(0), on(1), on(2)];
  }
}

/** Weights of the second and third corner at a point of a triangle. */
function shares(p: Float64Array, a: number, b: number, c: number, q: Float64Array): readonly [number, number] {
  let uu = 0, uv = 0, vv = 0, uw = 0, vw = 0;
  for (let d = 0; d < 3; d++) {
    const u = p[b + d]! - p[a + d]!, v = p[c + d]! - p[a + d]!, w = q[d]! - p[a + d]!;
    uu += u * u;
    uv += u * v;
    vv += v * v;
    uw += u * w;
    vw += v * w;
  }
  const det = uu * vv - uv * uv;
  return det > 0 ? [(vv * uw - uv * vw) / det, (uu * vw - uv * uw) / det] : [0, 0];
}

import type { Mesh } from "./mesh.ts";
import { nextCorner } from "./neighbours.ts";

type Vector = readonly [number, number, number];

/** A plane with the mesh that it cuts. A vertex exactly on it counts as above. */
export class CuttingPlane {
  readonly #mesh: Mesh;
  readonly #n: Vector;
  readonly #offset: number;
  constructor(mesh: Mesh, origin: Vector, normal: Vector) {
    this.#mesh = mesh;
    this.#n = normal;
    this.#offset = origin[0] * normal[0] + origin[1] * normal[1] + origin[2] * normal[2];
  }

  distance(v: number): number {
    const p = this.#mesh.positions;
    return p[3 * v]! * this.#n[0] + p[3 * v + 1]! * this.#n[1] + p[3 * v + 2]! * this.#n[2] - this.#offset;
  }

  above(v: number): boolean {
    return this.distance(v) >= 0;
  }

  meets(boxes: Float64Array, at: number): boolean {
    const [nx, ny, nz] = this.#n;
    const middle = boxes[at]! * nx + boxes[at + 1]! * ny + boxes[at + 2]! * nz - this.#offset;
    const reach = boxes[at + 3]! * Math.abs(nx) + boxes[at + 4]! * Math.abs(ny) + boxes[at + 5]! * Math.abs(nz);
    return Math.abs(middle) <= reach * (1 + 1e-9) + Math.abs(this.#offset) * 1e-12;
  }

  /** The half-edge of triangle `t` by which the cut enters (from above to below) or leaves (from below to above). */
  crossing(t: number, leave: boolean): number {
    const { triangles } = this.#mesh;
    for (let h = 3 * t; h < 3 * t + 2; h++) {
      const from = this.above(triangles[h]!);
      if (from !== leave && this.above(triangles[nextCorner(h)]!) === leave) return h;
    }
    return 3 * t + 2;
  }

  /** Adds the point on half-edge `h` unless it repeats the last one; the same bits from either side of the edge. */
  pointInto(out: number[], h: number): void {
    const { positions: p, triangles } = this.#mesh;
    const [v, w] = [triangles[h]!, triangles[nextCorner(h)]!];
    const [a, b] = v < w ? [v, w] : [w, v];
    const [da, db] = [this.distance(a), this.distance(b)];
    const s = da === 0 ? 0 : db === 0 ? 1 : da / (da - db);
    const at = (k: number): number => (s === 1 ? p[3 * b + k]! : p[3 * a + k]! + s * (p[3 * b + k]! - p[3 * a + k]!));
    const [x, y, z] = [at(0), at(1), at(2)];
    const n = out.length;
    if (n > 0 && out[n - 3] === x && out[n - 2] === y && out[n - 1] === z) return;
    out.push(x, y, z);
  }
}

import type { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { faceNormals } from "#mesh/normals.ts";
import type { Solid } from "./solid.ts";

/** Crossing points farther than this many steps from the surface lie where it has a hole. */
const BY_SURFACE = 0.75;
const ROUNDS = 10;

export interface Net {
  readonly mesh: Mesh;
  /** Per vertex 1 where it lies on the given surface, 0 where that has a hole. */
  readonly held: Uint8Array;
}

/**
 * The skin of a body on a grid as a closed mesh (surface nets, Gibson 1998): one vertex in each cell that has nodes on both sides, a quad
 * around each edge between unlike nodes. Vertices go where the planes of the given surface near their cell's edges meet, so that edges of
 * the body stay sharp (the plane fit of Ju et al. 2002, by plain steps), and then on to that surface itself. Tells how far it is.
 */
export function surfaceNet(solid: Solid, surface: ClosestPoint, tell: (fraction: number) => void): Net {
  const builder = new NetBuilder(solid, surface);
  builder.findCrossings((f) => tell(0.6 * f));
  const { positions, held } = builder.placeVertices();
  tell(0.8);
  return { mesh: { positions, triangles: builder.quads(positions, held) }, held };
}

class NetBuilder {
  readonly #solid: Solid;
  readonly #surface: ClosestPoint;
  readonly #normals: Float64Array;
  /** Vertex of each cell, named by its lowest node; −1 for none. */
  readonly #cell: Int32Array;
  readonly #cells: number[] = [];
  /** Edges between unlike nodes as node · 3 + axis, and what was found at each: the point (x y z), the surface's plane there (nx ny nz, zero where it has a hole). */
  readonly #edges: number[] = [];
  readonly #found: number[] = [];
  /** The triangle found last: most likely near the next question, which makes it quicker. */
  #last = -1;

  constructor(solid: Solid, surface: ClosestPoint) {
    this.#solid = solid;
    this.#surface = surface;
    this.#normals = faceNormals(surface.mesh);
    this.#cell = new Int32Array(solid.inside.length).fill(-1);
  }

  findCrossings(tell: (fraction: number) => void): void {
    const { nx, ny, nz, inside } = this.#solid;
    const strides = [1, nx, nx * ny];
    for (let k = 1; k + 1 < nz; k++) {
      tell(k / nz);
      for (let j = 1; j + 1 < ny; j++)
        for (let i = 1; i + 1 < nx; i++) {
          const n = i + nx * (j + ny * k);
          for (let axis = 0; axis < 3; axis++) {
            if (inside[n] === inside[n + strides[axis]!]) continue;
            this.#edges.push(3 * n + axis);
            this.#cross([i, j, k], axis);
            const [u, v] = [strides[(axis + 1) % 3]!, strides[(axis + 2) % 3]!];
            for (const c of [n, n - u, n - v, n - u - v]) if (this.#cell[c] === -1) this.#cell[c] = this.#cells.push(c) - 1;
          }
        }
    }
  }

  #cross(node: readonly [number, number, number], axis: number): void {
    const { step, origin } = this.#solid;
    const from = node.map((c, k) => origin[k]! + c * step) as [number, number, number];
    const to = from.slice() as [number, number, number];
    to[axis]! += step;
    const out = new Float64Array(3);
    const distance = (p: readonly [number, number, number]): number => {
      this.#ask(out, p[0], p[1], p[2]);
      return Math.sqrt(this.#surface.squaredDistance);
    };
    const [a, b] = [distance(from), distance(to)];
    const share = a + b > 0 && a + b < 2 * step ? a / (a + b) : 0.5;
    const at = from.slice() as [number, number, number];
    at[axis]! += share * step;
    const t = this.#ask(out, at[0], at[1], at[2]);
    const near = this.#surface.squaredDistance < (BY_SURFACE * step) ** 2;
    if (near) this.#found.push(out[0]!, out[1]!, out[2]!, this.#normals[3 * t]!, this.#normals[3 * t + 1]!, this.#normals[3 * t + 2]!);
    else this.#found.push(at[0], at[1], at[2], 0, 0, 0);
  }

  #ask(out: Float64Array, x: number, y: number, z: number): number {
    return (this.#last = this.#surface.findInto(out, x, y, z, this.#last));
  }

  placeVertices(): { positions: Float64Array; held: Uint8Array } {
    const { nx, ny, step, origin } = this.#solid;
    const strides = [1, nx, nx * ny];
    const lists: number[][] = this.#cells.map(() => []);
    this.#edges.forEach((e, q) => {
      const axis = e % 3;
      const n = (e - axis) / 3;
      const [u, v] = [strides[(axis + 1) % 3]!, strides[(axis + 2) % 3]!];
      for (const c of [n, n - u, n - v, n - u - v]) lists[this.#cell[c]!]!.push(q);
    });
    const positions = new Float64Array(this.#cells.length * 3);
    const held = new Uint8Array(this.#cells.length);
    const out = new Float64Array(3);
    lists.forEach((list, v) => {
      const c = this.#cells[v]!;
      const [i, j, k] = [c % nx, Math.floor(c / nx) % ny, Math.floor(c / (nx * ny))];
      const middle = [i, j, k].map((m, axis) => origin[axis]! + (m + 0.5) * step) as [number, number, number];
      const x = this.#meeting(list, middle);
      const hole = list.filter((q) => this.#isHole(q)).length;
      if (2 * hole < list.length) {
        this.#ask(out, x[0]!, x[1]!, x[2]!);
        if (this.#surface.squaredDistance < step * step) {
          held[v] = 1;
          x.splice(0, 3, out[0]!, out[1]!, out[2]!);
        }
      }
      positions.set(x, 3 * v);
    });
    return { positions, held };
  }

  #isHole(q: number): boolean {
    return this.#found[6 * q + 3] === 0 && this.#found[6 * q + 4] === 0 && this.#found[6 * q + 5] === 0;
  }

  /** Where the planes of a cell's crossings meet, sought from the middle of the crossings and not far outside the cell. */
  #meeting(list: readonly number[], middle: readonly [number, number, number]): number[] {
    const f = this.#found;
    const x = [0, 0, 0];
    for (const q of list) for (let k = 0; k < 3; k++) x[k]! += f[6 * q + k]! / list.length;
    for (let round = 0; round < ROUNDS; round++) {
      const move = [0, 0, 0];
      for (const q of list) {
        let off = 0;
        for (let k = 0; k < 3; k++) off += f[6 * q + 3 + k]! * (f[6 * q + k]! - x[k]!);
        for (let k = 0; k < 3; k++) move[k]! += (f[6 * q + 3 + k]! * off) / list.length;
      }
      for (let k = 0; k < 3; k++) x[k] = Math.min(middle[k]! + 0.6 * this.#solid.step, Math.max(middle[k]! - 0.6 * this.#solid.step, x[k]! + move[k]!));
    }
    return x;
  }

  /** Two triangles around each crossing, turned outward, cut along the diagonal that lies nearer to the surface. */
  quads(positions: Float64Array, held: Uint8Array): Uint32Array {
    const { nx, ny, inside } = this.#solid;
    const strides = [1, nx, nx * ny];
    const triangles = new Uint32Array(this.#edges.length * 6);
    const off = this.#middleOff(positions, held);
    this.#edges.forEach((e, q) => {
      const axis = e % 3;
      const n = (e - axis) / 3;
      const [u, v] = [strides[(axis + 1) % 3]!, strides[(axis + 2) % 3]!];
      const around = [n, n - u, n - u - v, n - v].map((c) => this.#cell[c]!) as [number, number, number, number];
      const [a, b, c, d] = inside[n] ? around : (around.reverse() as [number, number, number, number]);
      triangles.set(off(a, c) <= off(b, d) ? [a, b, c, a, c, d] : [a, b, d, b, c, d], 6 * q);
    });
    return triangles;
  }

  #middleOff(p: Float64Array, held: Uint8Array): (a: number, b: number) => number {
    const out = new Float64Array(3);
    return (a, b) => {
      if (!held[a] || !held[b]) return (p[3 * a]! - p[3 * b]!) ** 2 + (p[3 * a + 1]! - p[3 * b + 1]!) ** 2 + (p[3 * a + 2]! - p[3 * b + 2]!) ** 2;
      this.#ask(out, (p[3 * a]! + p[3 * b]!) / 2, (p[3 * a + 1]! + p[3 * b + 1]!) / 2, (p[3 * a + 2]! + p[3 * b + 2]!) / 2);
      return this.#surface.squaredDistance;
    };
  }
}

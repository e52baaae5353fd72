import { BoxTree } from "./box-tree.ts";
import type { Mesh } from "./mesh.ts";

/** Tells whether one sees out of a mesh from a place in a direction. */
export class Sight {
  readonly #mesh: Mesh;
  readonly #tree: BoxTree;
  readonly #stack = new Uint32Array(128);

  constructor(mesh: Mesh, tree: BoxTree = new BoxTree(mesh)) {
    this.#mesh = mesh;
    this.#tree = tree;
  }

  /** Whether the ray from (x, y, z) along (dx, dy, dz) meets no triangle. */
  free(x: number, y: number, z: number, dx: number, dy: number, dz: number): boolean {
    const { boxes, second, from, count, order } = this.#tree;
    const stack = this.#stack;
    const [ix, iy, iz] = [1 / dx, 1 / dy, 1 / dz];
    let top = 0;
    stack[top++] = 0;
    while (top > 0) {
      const node = stack[--top]!;
      const b = 6 * node;
      const x0 = (boxes[b]! - x) * ix, x1 = (boxes[b + 3]! - x) * ix;
      const y0 = (boxes[b + 1]! - y) * iy, y1 = (boxes[b + 4]! - y) * iy;
      const z0 = (boxes[b + 2]! - z) * iz, z1 = (boxes[b + 5]! - z) * iz;
      const enter = Math.max(Math.min(x0, x1), Math.min(y0, y1), Math.min(z0, z1), 0);
      const leave = Math.min(Math.max(x0, x1), Math.max(y0, y1), Math.max(z0, z1));
      if (!(enter <= leave)) continue;
      if (count[node] === 0) {
        stack[top++] = second[node]!;
        stack[top++] = node + 1;
      } else for (let i = from[node]!; i < from[node]! + count[node]!; i++) if (this.#meets(order[i]!, x, y, z, dx, dy, dz)) return false;
    }
    return true;
  }

  /** By Cramer's rule (Möller and Trumbore 1997). */
  #meets(t: number, x: number, y: number, z: number, dx: number, dy: number, dz: number): boolean {
    const { positions: p, triangles } = this.#mesh;
    const a = 3 * triangles[3 * t]!, b = 3 * triangles[3 * t + 1]!, c = 3 * triangles[3 * t + 2]!;
    const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
    const qx = dy * vz - dz * vy, qy = dz * vx - dx * vz, qz = dx * vy - dy * vx;
    const det = ux * qx + uy * qy + uz * qz;
    if (det === 0) return false;
    const sx = x - p[a]!, sy = y - p[a + 1]!, sz = z - p[a + 2]!;
    const beta = (sx * qx + sy * qy + sz * qz) / det;
    if (beta < 0 || beta > 1) return false;
    const rx = sy * uz - sz * uy, ry = sz * ux - sx * uz, rz = sx * uy - sy * ux;
    const gamma = (dx * rx + dy * ry + dz * rz) / det;
    if (gamma < 0 || beta + gamma > 1) return false;
    return (vx * rx + vy * ry + vz * rz) / det > 0;
  }
}

const G = (1 + Math.sqrt(5)) / 2;
/** The twenty corners of a dodecahedron, slightly turned so that no ray runs along the axes of a file; length √3. */
export const DIRECTIONS: readonly (readonly [number, number, number])[] = [
  ...[-1, 1].flatMap((a) => [-1, 1].flatMap((b) => [-1, 1].map((c) => [a, b, c] as const))),
  ...[-1, 1].flatMap((a) => [-1, 1].flatMap((b) => [[0, a / G, b * G], [a / G, b * G, 0], [a * G, 0, b / G]] as const)),
].map(([x, y, z]) => {
  // turned about z and x by angles whose cosine and sine are 0.96 and 0.28, 0.8 and 0.6
  const [u, v] = [0.96 * x - 0.28 * y, 0.28 * x + 0.96 * y];
  return [u, 0.8 * v - 0.6 * z, 0.6 * v + 0.8 * z] as const;
});

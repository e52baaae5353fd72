import { BoxTree } from "./box-tree.ts";
import type { Mesh } from "./mesh.ts";

export interface Hit {
  readonly point: readonly [number, number, number];
  readonly triangle: number;
  /** In lengths of the direction given. */
  readonly along: number;
}

type Vector = readonly [number, number, number];

/** Asks where straight lines first meet a mesh. */
export class Rays {
  readonly #tree: BoxTree;
  readonly #stack = new Uint32Array(128);
  constructor(mesh: Mesh, tree: BoxTree = new BoxTree(mesh)) {
    this.#tree = tree;
  }

  /** First point of the mesh from `origin` along `direction` (either face of a triangle counts), or undefined. */
  firstHit(origin: Vector, direction: Vector): Hit | undefined {
    const { boxes, second, from, count, order, mesh } = this.#tree;
    if (order.length === 0) return undefined;
    const inverse: Vector = [1 / direction[0], 1 / direction[1], 1 / direction[2]];
    const stack = this.#stack;
    let triangle = -1;
    let along = Infinity;
    let top = 0;
    stack[top++] = 0;
    while (top > 0) {
      const node = stack[--top]!;
      if (!(enterBox(boxes, node * 6, origin, inverse) < along)) continue;
      const leaf = count[node]!;
      if (leaf === 0) {
        stack[top++] = second[node]!;
        stack[top++] = node + 1;
        continue;
      }
      for (let i = from[node]!; i < from[node]! + leaf; i++) {
        const s = meetTriangle(mesh, order[i]!, origin, direction);
        if (s < along) [along, triangle] = [s, order[i]!];
      }
    }
    if (triangle < 0) return undefined;
    return { triangle, along, point: [origin[0] + along * direction[0], origin[1] + along * direction[1], origin[2] + along * direction[2]] };
  }
}

/** Where the line enters the box (0 when it starts inside), Infinity when it misses it. */
function enterBox(boxes: Float64Array, at: number, o: Vector, inverse: Vector): number {
  let near = 0;
  let far = Infinity;
  for (let k = 0; k < 3; k++) {
    if (!Number.isFinite(inverse[k]!)) {
      if (o[k]! < boxes[at + k]! || o[k]! > boxes[at + 3 + k]!) return Infinity;
      continue; // runs along the slab, and 0 · ∞ would say nothing
    }
    const a = (boxes[at + k]! - o[k]!) * inverse[k]!;
    const b = (boxes[at + 3 + k]! - o[k]!) * inverse[k]!;
    const low = a < b ? a : b;
    const high = a < b ? b : a;
    if (low > near) near = low;
    if (high < far) far = high;
  }
  return near <= far * (1 + 1e-12) ? near : Infinity;
}

/** Möller and Trumbore 1997; Infinity when the line misses the triangle or meets it behind its origin. */
function meetTriangle({ positions: p, triangles }: Mesh, t: number, o: Vector, d: Vector): number {
  const a = 3 * triangles[3 * t]!, b = 3 * triangles[3 * t + 1]!, c = 3 * triangles[3 * t + 2]!;
  const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
  const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
  const qx = d[1] * vz - d[2] * vy, qy = d[2] * vx - d[0] * vz, qz = d[0] * vy - d[1] * vx;
  const det = ux * qx + uy * qy + uz * qz;
  if (det === 0) return Infinity;
  const sx = o[0] - p[a]!, sy = o[1] - p[a + 1]!, sz = o[2] - p[a + 2]!;
  const r = (sx * qx + sy * qy + sz * qz) / det;
  const rx = sy * uz - sz * uy, ry = sz * ux - sx * uz, rz = sx * uy - sy * ux;
  const s = (d[0] * rx + d[1] * ry + d[2] * rz) / det;
  // a hair of slack, so that a line through a shared edge is not missed by both triangles
  if (r < -1e-12 || s < -1e-12 || r + s > 1 + 1e-12) return Infinity;
  const along = (vx * rx + vy * ry + vz * rz) / det;
  return along >= 0 ? along : Infinity;
}

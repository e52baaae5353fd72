import { must } from "#base/bug.ts";
import { BoxTree } from "./box-tree.ts";
import { triangleCount, type Mesh } from "./mesh.ts";

export interface Closest {
  readonly point: readonly [number, number, number];
  readonly triangle: number;
  readonly distance: number;
}

/** Finds the nearest point of a mesh. Keep one for many questions: building it costs far more than asking. */
export class ClosestPoint {
  readonly mesh: Mesh;
  readonly #tree: BoxTree;
  readonly #stack = new Uint32Array(128);
  readonly #found = new Float64Array(3);
  #square = 0;

  /** `tree` of the same mesh, when it is at hand. Throws a Bug on a mesh of no triangles. */
  constructor(mesh: Mesh, tree: BoxTree = new BoxTree(mesh)) {
    must(triangleCount(mesh) > 0, "nearest point of an empty mesh");
    this.mesh = mesh;
    this.#tree = tree;
  }

  find(p: readonly [number, number, number]): Closest {
    const out = new Float64Array(3);
    const triangle = this.findInto(out, p[0], p[1], p[2]);
    return { point: [out[0]!, out[1]!, out[2]!], triangle, distance: Math.sqrt(this.#square) };
  }

  /** Square of the distance that the last question found. */
  get squaredDistance(): number {
    return this.#square;
  }

  /** Writes the nearest point to out[0 … 2] and gives its triangle. `hint`: a triangle thought to be near, which makes it quicker. */
  findInto(out: Float64Array, x: number, y: number, z: number, hint = -1): number {
    const { boxes, second, from, count, order } = this.#tree;
    const stack = this.#stack;
    const found = this.#found;
    let best = -1;
    let least = Infinity;
    if (hint >= 0) {
      least = nearestOnTriangleInto(out, this.mesh, hint, x, y, z);
      best = hint;
    }
    let top = 0;
    stack[top++] = 0;
    while (top > 0) {
      const node = stack[--top]!;
      if (squareToBox(boxes, node * 6, x, y, z) >= least) continue;
      const leaf = count[node]!;
      if (leaf === 0) {
        const a = node + 1;
        const b = second[node]!;
        const nearA = squareToBox(boxes, a * 6, x, y, z) <= squareToBox(boxes, b * 6, x, y, z);
        stack[top++] = nearA ? b : a;
        stack[top++] = nearA ? a : b;
        continue;
      }
      for (let i = from[node]!; i < from[node]! + leaf; i++) {
        const square = nearestOnTriangleInto(found, this.mesh, order[i]!, x, y, z);
        if (square < least) {
          least = square;
          best = order[i]!;
          out[0] = found[0]!;
          out[1] = found[1]!;
          out[2] = found[2]!;
        }
      }
    }
    this.#square = least;
    return best;
  }
}

function squareToBox(boxes: Float64Array, at: number, x: number, y: number, z: number): number {
  const dx = Math.max(boxes[at]! - x, 0, x - boxes[at + 3]!);
  const dy = Math.max(boxes[at + 1]! - y, 0, y - boxes[at + 4]!);
  const dz = Math.max(boxes[at + 2]! - z, 0, z - boxes[at + 5]!);
  return dx * dx + dy * dy + dz * dz;
}

/**
 * Nearest point of triangle `t` to (x, y, z), written to out[0 … 2]; gives the squared distance. By the regions of the triangle
 * (Ericson 2005, Real-Time Collision Detection, 5.1.5; from memory).
 */
export function nearestOnTriangleInto(out: Float64Array, { positions: p, triangles }: Mesh, t: number, x: number, y: number, z: number): number {
  const ia = 3 * triangles[3 * t]!, ib = 3 * triangles[3 * t + 1]!, ic = 3 * triangles[3 * t + 2]!;
  const ax = p[ia]!, ay = p[ia + 1]!, az = p[ia + 2]!;
  const ux = p[ib]! - ax, uy = p[ib + 1]! - ay, uz = p[ib + 2]! - az;
  const vx = p[ic]! - ax, vy = p[ic + 1]! - ay, vz = p[ic + 2]! - az;
  const px = x - ax, py = y - ay, pz = z - az;
  const uu = ux * ux + uy * uy + uz * uz, vv = vx * vx + vy * vy + vz * vz, uv = ux * vx + uy * vy + uz * vz;
  const d1 = ux * px + uy * py + uz * pz, d2 = vx * px + vy * py + vz * pz;
  const d3 = d1 - uu, d4 = d2 - uv, d5 = d1 - uv, d6 = d2 - vv;
  let s = 0, r = 0; // the point is a + s u + r v
  const vc = d1 * d4 - d3 * d2, vb = d5 * d2 - d1 * d6, va = d3 * d6 - d5 * d4;
  if (d1 <= 0 && d2 <= 0) s = r = 0;
  else if (d3 >= 0 && d4 <= d3) s = 1;
  else if (d6 >= 0 && d5 <= d6) r = 1;
  else if (vc <= 0 && d1 >= 0 && d3 <= 0) s = d1 / (d1 - d3);
  else if (vb <= 0 && d2 >= 0 && d6 <= 0) r = d2 / (d2 - d6);
  else if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    r = (d4 - d3) / (d4 - d3 + (d5 - d6));
    s = 1 - r;
  } else {
    const whole = 1 / (va + vb + vc);
    s = vb * whole;
    r = vc * whole;
    // s belongs to u, r to v
  }
  const qx = ax + s * ux + r * vx, qy = ay + s * uy + r * vy, qz = az + s * uz + r * vz;
  out[0] = qx;
  out[1] = qy;
  out[2] = qz;
  return (x - qx) ** 2 + (y - qy) ** 2 + (z - qz) ** 2;
}

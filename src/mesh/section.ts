import { CuttingPlane } from "./cutting-plane.ts";
import { triangleCount, type Mesh } from "./mesh.ts";
import { neighbours } from "./neighbours.ts";
import { spatialOrder } from "./spatial-order.ts";

type Vector = readonly [number, number, number];

/**
 * One connected cut of a plane through a mesh: x0 y0 z0 …, in order; a closed one does not repeat its first point. Seen from the tip of
 * the normal it runs counter-clockwise around the body when the mesh faces outward.
 */
export interface Section {
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** Cuts once. For many cuts of one mesh keep a {@link Sectioner}. */
export function planeSections(mesh: Mesh, origin: Vector, normal: Vector): Section[] {
  return new Sectioner(mesh).cut(origin, normal);
}

const BLOCK = 32;

/**
 * Cuts one mesh by many planes. Triangles are kept in spatial order in blocks with a box each, so that a cut looks at few of them.
 * A vertex exactly on the plane counts as above it, so every triangle gives one segment or none and closed meshes give closed curves.
 */
export class Sectioner {
  readonly mesh: Mesh;
  readonly #twin: Int32Array;
  readonly #order: Uint32Array;
  /** Middle and half size of each block's box: cx cy cz hx hy hz … */
  readonly #boxes: Float64Array;
  readonly #done: Uint32Array;
  #run = 0;

  /** `twin` as of `neighbours(mesh)`, when it is at hand. */
  constructor(mesh: Mesh, twin: Int32Array = neighbours(mesh).twin) {
    this.mesh = mesh;
    this.#twin = twin;
    this.#order = spatialOrder(mesh);
    this.#boxes = blockBoxes(mesh, this.#order);
    this.#done = new Uint32Array(triangleCount(mesh));
  }

  /** Sections by the plane through `origin` across `normal` (any length above zero). Order is that of the mesh, not of size. */
  cut(origin: Vector, normal: Vector): Section[] {
    const run = ++this.#run;
    const plane = new CuttingPlane(this.mesh, origin, normal);
    const { triangles } = this.mesh;
    const sections: Section[] = [];
    for (let block = 0; block < this.#boxes.length / 6; block++) {
      if (!plane.meets(this.#boxes, block * 6)) continue;
      const end = Math.min((block + 1) * BLOCK, this.#order.length);
      for (let i = block * BLOCK; i < end; i++) {
        const t = this.#order[i]!;
        if (this.#done[t] === run) continue;
        const a = plane.above(triangles[3 * t]!);
        if (a === plane.above(triangles[3 * t + 1]!) && a === plane.above(triangles[3 * t + 2]!)) continue;
        const section = this.#trace(plane, t, run);
        if (section) sections.push(section);
      }
    }
    return sections;
  }

  /** Follows the cut back to its start (or once around), then forward. */
  #trace(plane: CuttingPlane, seed: number, run: number): Section | undefined {
    const twin = this.#twin;
    let enter = plane.crossing(seed, false);
    let closed = false;
    for (let out = twin[enter]!; out >= 0; out = twin[enter]!) {
      const t = (out - (out % 3)) / 3;
      if (t === seed) {
        closed = true;
        break;
      }
      enter = plane.crossing(t, false);
    }
    const points: number[] = [];
    if (!closed) plane.pointInto(points, enter);
    for (let t = (enter - (enter % 3)) / 3; ; ) {
      this.#done[t] = run;
      const leave = plane.crossing(t, true);
      plane.pointInto(points, leave);
      const over = twin[leave]!;
      if (over < 0) break;
      t = (over - (over % 3)) / 3;
      if (this.#done[t] === run) break;
    }
    const n = points.length;
    if (closed && n > 3 && points[0] === points[n - 3] && points[1] === points[n - 2] && points[2] === points[n - 1]) points.length = n - 3;
    return points.length >= (closed ? 9 : 6) ? { points: Float64Array.from(points), closed } : undefined;
  }
}

function blockBoxes({ positions: p, triangles }: Mesh, order: Uint32Array): Float64Array {
  const blocks = Math.ceil(order.length / BLOCK);
  const boxes = new Float64Array(blocks * 6);
  for (let block = 0; block < blocks; block++) {
    for (let k = 0; k < 3; k++) {
      let low = Infinity;
      let high = -Infinity;
      for (let i = block * BLOCK; i < Math.min((block + 1) * BLOCK, order.length); i++) {
        for (let c = 0; c < 3; c++) {
          const x = p[3 * triangles[3 * order[i]! + c]! + k]!;
          if (x < low) low = x;
          if (x > high) high = x;
        }
      }
      boxes[block * 6 + k] = (low + high) / 2;
      boxes[block * 6 + 3 + k] = (high - low) / 2;
    }
  }
  return boxes;
}

/** Length along the section, in the mesh's unit; a closed one is closed up. */
export function sectionLength({ points: p, closed }: Section): number {
  let sum = 0;
  const n = p.length;
  for (let i = closed ? 0 : 3, j = closed ? n - 3 : 0; i < n; j = i, i += 3) sum += Math.sqrt((p[i]! - p[j]!) ** 2 + (p[i + 1]! - p[j + 1]!) ** 2 + (p[i + 2]! - p[j + 2]!) ** 2);
  return sum;
}

/**
 * What a tape pulled tight around points of one plane reads: the perimeter of their convex hull (Andrew 1979, monotone chain).
 * `points` x0 y0 z0 …, `normal` of the plane (any length above zero).
 */
export function hullGirth(points: Float64Array, normal: Vector): number {
  const { u, v } = planeAxes(normal);
  const n = points.length / 3;
  const xs = new Float64Array(n);
  const ys = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const [x, y, z] = [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!];
    xs[i] = x * u[0] + y * u[1] + z * u[2];
    ys[i] = x * v[0] + y * v[1] + z * v[2];
  }
  const order = Uint32Array.from({ length: n }, (_, i) => i).sort((i, j) => xs[i]! - xs[j]! || ys[i]! - ys[j]!);
  const hull = hullChain(xs, ys, order);
  let sum = 0;
  for (let k = 0, last = hull[hull.length - 1]!; k < hull.length; last = hull[k]!, k++) sum += Math.sqrt((xs[hull[k]!]! - xs[last]!) ** 2 + (ys[hull[k]!]! - ys[last]!) ** 2);
  return sum;
}

function hullChain(xs: Float64Array, ys: Float64Array, order: Uint32Array): number[] {
  if (order.length < 3) return [...order];
  const turn = (a: number, b: number, c: number): number => (xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (ys[b]! - ys[a]!) * (xs[c]! - xs[a]!);
  const half = (indices: Iterable<number>): number[] => {
    const chain: number[] = [];
    for (const i of indices) {
      while (chain.length > 1 && turn(chain[chain.length - 2]!, chain[chain.length - 1]!, i) <= 0) chain.pop();
      chain.push(i);
    }
    chain.pop();
    return chain;
  };
  return [...half(order), ...half(order.slice().reverse())];
}

/** Two unit axes of the plane across `normal`, right-handed with it. */
export function planeAxes(normal: Vector): { readonly u: Vector; readonly v: Vector } {
  const length = Math.sqrt(normal[0] ** 2 + normal[1] ** 2 + normal[2] ** 2);
  const [x, y, z] = [normal[0] / length, normal[1] / length, normal[2] / length];
  // across the axis that the normal follows least, so that the cross product is well away from zero
  const [ax, ay, az] = Math.abs(x) <= Math.abs(y) && Math.abs(x) <= Math.abs(z) ? [1, 0, 0] : Math.abs(y) <= Math.abs(z) ? [0, 1, 0] : [0, 0, 1];
  const [ux, uy, uz] = [ay * z - az * y, az * x - ax * z, ax * y - ay * x];
  const s = 1 / Math.sqrt(ux * ux + uy * uy + uz * uz);
  const u: Vector = [ux * s, uy * s, uz * s];
  return { u, v: [y * u[2] - z * u[1], z * u[0] - x * u[2], x * u[1] - y * u[0]] };
}

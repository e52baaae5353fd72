import { BoxTree } from "./box-tree.ts";
import { triangleCount, type Mesh } from "./mesh.ts";
import { nextCorner, vertexRings, type Groups } from "./neighbours.ts";

/** A point nearer to a triangle's plane or edge than this share of the triangle's size touches it, which is no crossing. */
const TOUCH = 1e-9;

/** Triangles that can be reached over so few edges are near along the surface. */
const NEAR_EDGES = 5;

/**
 * Marks (1) the triangles that a part of the surface runs through which is not near along the surface: a fold between neighbours is
 * roughness, not a surface that runs through itself. Touching is no crossing. All pairs of boxes of a tree that overlap are looked at. `fresh`: the first
 * triangle of those that are new since there was no crossing; only pairs with one of them are asked.
 */
export function crossingTriangles(mesh: Mesh, fresh = 0): { readonly crossing: Uint8Array; readonly count: number } {
  const crossing = new Uint8Array(triangleCount(mesh));
  if (crossing.length === 0) return { crossing, count: 0 };
  let near: NearAlong | undefined;
  const tree = new BoxTree(mesh);
  const { boxes, second, from, count, order } = tree;
  const asked = branchesWith(tree, fresh);
  const stack: number[] = [0, 0];
  while (stack.length > 0) {
    const b = stack.pop()!;
    const a = stack.pop()!;
    if (!asked[a] && !asked[b]) continue;
    if (a !== b && !boxesMeet(boxes, 6 * a, 6 * b)) continue;
    const [leafA, leafB] = [count[a]!, count[b]!];
    if (leafA > 0 && leafB > 0) {
      for (let i = from[a]!; i < from[a]! + leafA; i++) {
        for (let j = a === b ? i + 1 : from[b]!; j < from[b]! + leafB; j++) {
          const [s, t] = [order[i]!, order[j]!];
          if ((s < fresh && t < fresh) || (crossing[s] && crossing[t]) || !cross(mesh, s, t)) continue;
          near ??= new NearAlong(mesh);
          if (!near.joins(s, t)) crossing[s] = crossing[t] = 1;
        }
      }
    } else if (a === b) {
      const [first, other] = [a + 1, second[a]!];
      stack.push(first, first, other, other, first, other);
    } else if (leafA > 0 || (leafB === 0 && size(boxes, 6 * b) > size(boxes, 6 * a))) stack.push(a, b + 1, a, second[b]!);
    else stack.push(a + 1, b, second[a]!, b);
  }
  let total = 0;
  for (const c of crossing) total += c;
  return { crossing, count: total };
}

/** Marks the branches of the tree that hold triangle `fresh` or a later one. */
function branchesWith({ second, from, count, order }: BoxTree, fresh: number): Uint8Array {
  const marked = new Uint8Array(count.length);
  if (fresh === 0) return marked.fill(1);
  for (let node = count.length - 1; node >= 0; node--) {
    if (count[node]! > 0) {
      for (let i = from[node]!; i < from[node]! + count[node]!; i++) if (order[i]! >= fresh) marked[node] = 1;
    } else if (second[node]! > 0) marked[node] = marked[node + 1]! | marked[second[node]!]!;
  }
  return marked;
}

/** Tells whether two triangles hang together over a few edges. */
class NearAlong {
  readonly #triangles: Uint32Array;
  readonly #rings: Groups;
  constructor(mesh: Mesh) {
    this.#triangles = mesh.triangles;
    this.#rings = vertexRings(mesh);
  }

  joins(s: number, t: number): boolean {
    const { start, items } = this.#rings;
    const goal = this.#triangles.subarray(3 * t, 3 * t + 3);
    const seen = new Set<number>(this.#triangles.subarray(3 * s, 3 * s + 3));
    let front = [...seen];
    for (let ring = 0; ring < NEAR_EDGES; ring++) {
      const next: number[] = [];
      for (const v of front) {
        for (let i = start[v]!; i < start[v + 1]!; i++) {
          const w = items[i]!;
          if (seen.has(w)) continue;
          seen.add(w);
          next.push(w);
        }
      }
      front = next;
      if (goal.some((v) => seen.has(v))) return true;
    }
    return false;
  }
}

function boxesMeet(boxes: Float64Array, a: number, b: number): boolean {
  return (
    boxes[a]! <= boxes[b + 3]! && boxes[b]! <= boxes[a + 3]! &&
    boxes[a + 1]! <= boxes[b + 4]! && boxes[b + 1]! <= boxes[a + 4]! &&
    boxes[a + 2]! <= boxes[b + 5]! && boxes[b + 2]! <= boxes[a + 5]!
  );
}

const size = (boxes: Float64Array, a: number): number => boxes[a + 3]! - boxes[a]! + boxes[a + 4]! - boxes[a + 1]! + boxes[a + 5]! - boxes[a + 2]!;

function cross(mesh: Mesh, s: number, t: number): boolean {
  const { triangles } = mesh;
  const a = triangles[3 * s], b = triangles[3 * s + 1], c = triangles[3 * s + 2];
  const d = triangles[3 * t], e = triangles[3 * t + 1], f = triangles[3 * t + 2];
  if (a === d || a === e || a === f || b === d || b === e || b === f || c === d || c === e || c === f) return false;
  if (!trianglesBoxesMeet(mesh, s, t)) return false;
  return edgeThrough(mesh, s, t) || edgeThrough(mesh, t, s);
}

function trianglesBoxesMeet({ positions: p, triangles }: Mesh, s: number, t: number): boolean {
  const i = 3 * triangles[3 * s]!, j = 3 * triangles[3 * s + 1]!, k = 3 * triangles[3 * s + 2]!;
  const l = 3 * triangles[3 * t]!, m = 3 * triangles[3 * t + 1]!, n = 3 * triangles[3 * t + 2]!;
  for (let x = 0; x < 3; x++) {
    const a = p[i + x]!, b = p[j + x]!, c = p[k + x]!;
    const d = p[l + x]!, e = p[m + x]!, f = p[n + x]!;
    if (Math.max(a, b, c) < Math.min(d, e, f) || Math.max(d, e, f) < Math.min(a, b, c)) return false;
  }
  return true;
}

/** Whether an edge of triangle s runs through triangle t from one side to the other. */
function edgeThrough({ positions: p, triangles }: Mesh, s: number, t: number): boolean {
  const a = 3 * triangles[3 * t]!, b = 3 * triangles[3 * t + 1]!, c = 3 * triangles[3 * t + 2]!;
  const ax = p[a]!, ay = p[a + 1]!, az = p[a + 2]!;
  const ux = p[b]! - ax, uy = p[b + 1]! - ay, uz = p[b + 2]! - az;
  const vx = p[c]! - ax, vy = p[c + 1]! - ay, vz = p[c + 2]! - az;
  const nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
  const square = nx * nx + ny * ny + nz * nz;
  if (square === 0) return false;
  const touch = TOUCH * square;
  const least = TOUCH * square ** 0.75; // the normal has the length of an area, heights are told times that
  const height = (v: number): number => nx * (p[v]! - ax) + ny * (p[v + 1]! - ay) + nz * (p[v + 2]! - az);
  const q = [3 * triangles[3 * s]!, 3 * triangles[3 * s + 1]!, 3 * triangles[3 * s + 2]!] as const;
  const h = [height(q[0]), height(q[1]), height(q[2])] as const;
  for (let k = 0; k < 3; k++) {
    const [from, to] = [h[k]!, h[nextCorner(k)]!];
    if (!((from > least && to < -least) || (from < -least && to > least))) continue;
    const w = from / (from - to);
    const [i, j] = [q[k]!, q[nextCorner(k)]!];
    const x = p[i]! + w * (p[j]! - p[i]!) - ax, y = p[i + 1]! + w * (p[j + 1]! - p[i + 1]!) - ay, z = p[i + 2]! + w * (p[j + 2]! - p[i + 2]!) - az;
    // shares of the corners at that point, times the square of the normal
    const beta = nx * (y * vz - z * vy) + ny * (z * vx - x * vz) + nz * (x * vy - y * vx);
    const gamma = nx * (uy * z - uz * y) + ny * (uz * x - ux * z) + nz * (ux * y - uy * x);
    if (beta >= -touch && gamma >= -touch && square - beta - gamma >= -touch) return true; // edge through edge is a crossing, too
  }
  return false;
}

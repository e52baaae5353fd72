import { must } from "#base/bug.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { normalSums } from "#mesh/normals.ts";

/** Pairs of vertices that lie in one place though the surface is open between them: a0 b0 a1 b1 … */
export type Twins = ArrayLike<number>;

/** How often normals are evened with their neighbours': a rough scan would else throw its grain outward, magnified. */
const evenings = 3;
/** A triangle that turns by more than this against itself is folded: cosine of 60 degrees. */
const foldCosine = 0.5;
/** How often the lift is evened round a fold before it is told. */
const unfoldings = 6;

/** A surface pushed outward. */
export interface Lifted {
  /** x y z a vertex, mm */
  readonly positions: Float64Array;
  /** Triangles that lie folded, since a hollow is tighter than what lies in it is thick. */
  readonly folded: readonly number[];
}

/**
 * Pushes every vertex outward along the surface's normal by its height, mm. Normals are means of the triangles round a vertex, weighted
 * by their angle in it, and evened; at the rim along the rim alone, so that an edge is not drawn toward the inside. Where a triangle
 * would fold over, the push is evened round it.
 */
export function lifted(mesh: Mesh, height: Float64Array, twins: Twins = []): Lifted {
  must(height.length === mesh.positions.length / 3, "a height for every vertex");
  const near = neighbourhood(mesh);
  const push = evenedNormals(mesh, near, twins);
  for (let v = 0; v < height.length; v++) for (let d = 3 * v; d < 3 * v + 3; d++) push[d]! *= height[v]!;
  const { positions } = mesh;
  let out = sum(positions, push);
  let folded = foldsIn(mesh, out);
  for (let round = 0; folded.length > 0 && round < unfoldings; round++) {
    evenRound(mesh, folded, near, push, twins);
    out = sum(positions, push);
    folded = foldsIn(mesh, out);
  }
  return { positions: out, folded };
}

function sum(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length);
  for (let i = 0; i < out.length; i++) out[i] = a[i]! + b[i]!;
  return out;
}

interface Near {
  readonly start: Uint32Array;
  readonly items: Uint32Array;
}

/** Neighbours of each vertex; of one on the rim those along the rim alone. */
function neighbourhood({ positions, triangles: t }: Mesh): Near {
  const n = positions.length / 3;
  const { ends, times } = edgesOf(n, t);
  const onRim = new Uint8Array(n);
  for (let e = 0; e < times.length; e++) if (times[e] === 1) onRim[ends[2 * e]!] = onRim[ends[2 * e + 1]!] = 1;
  const start = new Uint32Array(n + 1);
  const each = (visit: (v: number, w: number) => void): void => {
    for (let e = 0; e < times.length; e++) {
      const a = ends[2 * e]!, b = ends[2 * e + 1]!;
      if (times[e] === 1 || !onRim[a]) visit(a, b);
      if (times[e] === 1 || !onRim[b]) visit(b, a);
    }
  };
  each((v) => start[v + 1]!++);
  for (let v = 0; v < n; v++) start[v + 1]! += start[v]!;
  const items = new Uint32Array(start[n]!);
  const at = start.slice();
  each((v, w) => (items[at[v]!++] = w));
  return { start, items };
}

/** Edges in the order in which the triangles bring them, the lower end first, and how many triangles each has. */
function edgesOf(n: number, t: Uint32Array): { readonly ends: Uint32Array; readonly times: Uint32Array } {
  // Edges found so far are kept under their lower end; no end has more of them than corners that are the lower one of their edge.
  const from = new Uint32Array(n + 1);
  const next = (k: number): number => t[k % 3 === 2 ? k - 2 : k + 1]!;
  for (let k = 0; k < t.length; k++) from[Math.min(t[k]!, next(k)) + 1]!++;
  for (let v = 0; v < n; v++) from[v + 1]! += from[v]!;
  const to = from.slice();
  const found = new Uint32Array(t.length);
  const ends = new Uint32Array(2 * t.length), times = new Uint32Array(t.length);
  let count = 0;
  for (let k = 0; k < t.length; k++) {
    const a = t[k]!, b = next(k);
    const low = a < b ? a : b, high = a < b ? b : a;
    let i = from[low]!;
    while (i < to[low]! && ends[2 * found[i]! + 1] !== high) i++;
    if (i === to[low]!) {
      found[to[low]!++] = count;
      ends[2 * count] = low;
      ends[2 * count + 1] = high;
      count++;
    }
    times[found[i]!]!++;
  }
  return { ends: ends.subarray(0, 2 * count), times: times.subarray(0, count) };
}

/** Unit normals of the vertices. */
function evenedNormals(mesh: Mesh, near: Near, twins: Twins): Float64Array {
  let now = unit(together(normalSums(mesh), twins));
  for (let round = 0; round < evenings; round++) {
    const next = now.slice();
    for (let v = 0; v + 1 < near.start.length; v++) addMean(next, now, v, near);
    now = unit(together(next, twins));
  }
  return now;
}

/** Adds the mean of the neighbours' vectors to one's own. */
function addMean(into: Float64Array, from: Float64Array, v: number, { start, items }: Near): void {
  const count = start[v + 1]! - start[v]!;
  for (let i = start[v]!; i < start[v + 1]!; i++) for (let d = 0; d < 3; d++) into[3 * v + d]! += from[3 * items[i]! + d]! / count;
}

/** Gives both of a pair the sum of theirs. */
function together(vectors: Float64Array, twins: Twins): Float64Array {
  for (let k = 0; k + 1 < twins.length; k += 2)
    for (let d = 0; d < 3; d++) {
      const a = 3 * twins[k]! + d, b = 3 * twins[k + 1]! + d;
      if (a !== b) vectors[a] = vectors[b] = (vectors[a]! + vectors[b]!) / 2;
    }
  return vectors;
}

function unit(vectors: Float64Array): Float64Array {
  for (let i = 0; i < vectors.length; i += 3) {
    const size = Math.sqrt(vectors[i]! ** 2 + vectors[i + 1]! ** 2 + vectors[i + 2]! ** 2);
    for (let d = 0; d < 3; d++) vectors[i + d] = size > 0 ? vectors[i + d]! / size : 0;
  }
  return vectors;
}

/** The pushes of folded triangles' corners become the mean of theirs and their neighbours'. */
function evenRound({ triangles }: Mesh, folded: readonly number[], near: Near, push: Float64Array, twins: Twins): void {
  const before = push.slice();
  const corners = new Set(folded.flatMap((f) => [triangles[3 * f]!, triangles[3 * f + 1]!, triangles[3 * f + 2]!]));
  for (const v of corners) {
    addMean(push, before, v, near);
    for (let d = 0; d < 3; d++) push[3 * v + d]! /= 2;
  }
  together(push, twins);
}

function foldsIn({ positions: p, triangles: t }: Mesh, q: Float64Array): number[] {
  const found: number[] = [];
  const n = new Float64Array(3), m = new Float64Array(3);
  for (let f = 0; 3 * f < t.length; f++) {
    acrossInto(n, p, t, f);
    acrossInto(m, q, t, f);
    const ax = n[0]!, ay = n[1]!, az = n[2]!, bx = m[0]!, by = m[1]!, bz = m[2]!;
    const cosine = (ax * bx + ay * by + az * bz) / Math.sqrt((ax * ax + ay * ay + az * az) * (bx * bx + by * by + bz * bz));
    if (!(cosine > foldCosine)) found.push(f);
  }
  return found;
}

function acrossInto(out: Float64Array, p: Float64Array, t: Uint32Array, f: number): void {
  const a = 3 * t[3 * f]!, b = 3 * t[3 * f + 1]!, c = 3 * t[3 * f + 2]!;
  const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
  const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
  out[0] = uy * vz - uz * vy;
  out[1] = uz * vx - ux * vz;
  out[2] = ux * vy - uy * vx;
}

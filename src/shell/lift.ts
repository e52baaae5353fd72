import { must } from "#base/bug.ts";
import type { Mesh } from "#mesh/mesh.ts";

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
  for (let i = 0; i < push.length; i++) push[i]! *= height[Math.floor(i / 3)]!;
  const { positions } = mesh;
  let out = positions.map((p, i) => p + push[i]!);
  let folded = foldsIn(mesh, out);
  for (let round = 0; folded.length > 0 && round < unfoldings; round++) {
    evenRound(mesh, folded, near, push, twins);
    out = positions.map((p, i) => p + push[i]!);
    folded = foldsIn(mesh, out);
  }
  return { positions: out, folded };
}

interface Near {
  readonly start: Uint32Array;
  readonly items: Uint32Array;
}

/** Neighbours of each vertex; of one on the rim those along the rim alone. */
function neighbourhood({ positions, triangles: t }: Mesh): Near {
  const n = positions.length / 3;
  const seen = new Map<number, number>();
  const key = (a: number, b: number): number => (a < b ? a * n + b : b * n + a);
  for (let k = 0; k < t.length; k++) {
    const e = key(t[k]!, t[k % 3 === 2 ? k - 2 : k + 1]!);
    seen.set(e, (seen.get(e) ?? 0) + 1);
  }
  const onRim = new Uint8Array(n);
  for (const [e, times] of seen) if (times === 1) onRim[Math.floor(e / n)] = onRim[e % n] = 1;
  const lists: number[][] = Array.from({ length: n }, () => []);
  for (const [e, times] of seen) {
    const a = Math.floor(e / n), b = e % n;
    if (times === 1 || !onRim[a]) lists[a]!.push(b);
    if (times === 1 || !onRim[b]) lists[b]!.push(a);
  }
  const start = new Uint32Array(n + 1);
  for (let v = 0; v < n; v++) start[v + 1] = start[v]! + lists[v]!.length;
  return { start, items: Uint32Array.from(lists.flat()) };
}

/** Unit normals of the vertices. */
function evenedNormals(mesh: Mesh, near: Near, twins: Twins): Float64Array {
  let now = unit(together(vertexNormals(mesh), twins));
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

/** Sum of the normals of the triangles round each vertex, each times about its angle there (sine over two sides, Max 1999). */
function vertexNormals({ positions: p, triangles: t }: Mesh): Float64Array {
  const out = new Float64Array(p.length);
  for (let k = 0; k < t.length; k++) {
    const f = k - (k % 3);
    const a = 3 * t[k]!, b = 3 * t[f + ((k + 1) % 3)]!, c = 3 * t[f + ((k + 2) % 3)]!;
    const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
    const w = (ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz);
    if (!(w > 0)) continue;
    out[a]! += (uy * vz - uz * vy) / w;
    out[a + 1]! += (uz * vx - ux * vz) / w;
    out[a + 2]! += (ux * vy - uy * vx) / w;
  }
  return out;
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
  for (let f = 0; 3 * f < t.length; f++) {
    const [ax, ay, az] = across(p, t, f), [bx, by, bz] = across(q, t, f);
    const cosine = (ax * bx + ay * by + az * bz) / Math.sqrt((ax * ax + ay * ay + az * az) * (bx * bx + by * by + bz * bz));
    if (!(cosine > foldCosine)) found.push(f);
  }
  return found;
}

function across(p: Float64Array, t: Uint32Array, f: number): readonly [number, number, number] {
  const a = 3 * t[3 * f]!, b = 3 * t[3 * f + 1]!, c = 3 * t[3 * f + 2]!;
  const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
  const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

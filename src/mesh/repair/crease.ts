import type { Mesh } from "#mesh/mesh.ts";
import { nextCorner, previousCorner } from "#mesh/neighbours.ts";

/** Normals on both sides of an edge of the body differ by more than this: cos 42°. */
const SHARP = 0.74;
/** Neighbours that look so much alike are averaged: cos 25°. */
const ALIKE = 0.9;
/** Edges of the loop on each side that decide whether its normals jump there, and the fewest edges of an arc between two jumps. */
const WINDOW = 4;
const SHORTEST = 6;
/** An arc whose normals are all within this of their mean belongs to one face of the body: cos 40°. One of the two must; the other may bend round. */
const ONE_FACE = 0.77;
/** … and to a flat one within this: cos 8°. */
const FLAT = 0.99;

/** Cosine of the widest angle between an edge's direction at one end and the way to the other: round the end of a comb it turns by 90°. */
const SIDEWAYS = -0.3;

type Vec = readonly [number, number, number];

/** Where an edge of the body runs into a hole and out again. */
export interface Crease {
  /** Places in the loop where it enters and leaves. */
  readonly from: number;
  readonly to: number;
  /** Points between the two, x0 y0 z0 …, about as far apart as those of the loop. */
  readonly points: Float64Array;
}

/**
 * Tells whether one sharp edge of the body crosses a hole, as a comb edge does, and draws it across: the curve that leaves both ends in the
 * direction of the edge there (cubic, Hermite), in the plane of the flat side if one is flat. `loop`: open half-edges in order, the hole on
 * their right.
 */
export function creaseAcross(mesh: Mesh, twin: Int32Array, loop: Int32Array): Crease | undefined {
  const n = loop.length;
  if (n < 2 * SHORTEST + 2) return undefined;
  const normals = Array.from(loop, (h) => normalAround(mesh, twin, (h - (h % 3)) / 3));
  const jumps = Array.from({ length: n }, (_, i) => dot(mean(normals, i - WINDOW, WINDOW), mean(normals, i, WINDOW)));
  const ends = jumps.flatMap((c, i) => (c < SHARP && isLeast(jumps, i) ? [i] : []));
  if (ends.length !== 2) return undefined;
  const [i, j] = [ends[0]!, ends[1]!];
  if (j - i < SHORTEST || n - (j - i) < SHORTEST) return undefined;
  const inner = faceOf(normals, i + 1, j - i - 2);
  const outer = faceOf(normals, j + 1, n - (j - i) - 2);
  if (Math.max(inner.least, outer.least) < ONE_FACE) return undefined;
  const at = (k: number): Vec => point(mesh, mesh.triangles[loop[k]!]!);
  const [a, b] = [at(i), at(j)];
  // at both ends the edge of the body heads into the hole; it runs along both faces that meet there
  const middle = middleOf(mesh, loop);
  const inward = (k: number, end: Vec): Vec => {
    const d = unit(cross(mean(normals, k - WINDOW, WINDOW), mean(normals, k, WINDOW)));
    return dot(d, [middle[0] - end[0], middle[1] - end[1], middle[2] - end[2]]) < 0 ? [-d[0], -d[1], -d[2]] : d;
  };
  const chord: Vec = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const back = inward(j, b);
  const [da, db]: [Vec, Vec] = [inward(i, a), [-back[0], -back[1], -back[2]]];
  const length = Math.sqrt(dot(chord, chord));
  const [ca, cb] = [dot(da, chord) / length, dot(db, chord) / length];
  if (!(Math.min(ca, cb) > SIDEWAYS)) return undefined;
  // as long at the ends as the arc of a circle asks that leaves the chord by that angle
  const [ta, tb] = [(2 * length) / (1 + ca), (2 * length) / (1 + cb)];
  const flat = inner.least > FLAT ? inner.normal : outer.least > FLAT ? outer.normal : undefined;
  return { from: i, to: j, points: hermite([a, b], [times(da, ta), times(db, tb)], (ta + tb) / 2, loopStep(mesh, loop), flat) };
}

/** The curve between two ends that leaves them along two tangents, at about the given step, without its ends. */
function hermite([a, b]: readonly [Vec, Vec], [da, db]: readonly [Vec, Vec], length: number, step: number, flat: Vec | undefined): Float64Array {
  const count = Math.max(1, Math.round(length / step) - 1);
  const points = new Float64Array(3 * count);
  for (let q = 0; q < count; q++) {
    const s = (q + 1) / (count + 1);
    const [s2, s3] = [s * s, s * s * s];
    const x = [0, 1, 2].map((k) => (2 * s3 - 3 * s2 + 1) * a[k]! + (s3 - 2 * s2 + s) * da[k]! + (3 * s2 - 2 * s3) * b[k]! + (s3 - s2) * db[k]!) as [number, number, number];
    // into the plane through both ends
    const off = flat ? dot(flat, x) - (1 - s) * dot(flat, a) - s * dot(flat, b) : 0;
    for (let k = 0; k < 3; k++) points[3 * q + k] = x[k]! - off * (flat?.[k] ?? 0);
  }
  return points;
}

function middleOf(mesh: Mesh, loop: Int32Array): Vec {
  const sum: [number, number, number] = [0, 0, 0];
  for (const h of loop) for (let k = 0; k < 3; k++) sum[k]! += mesh.positions[3 * mesh.triangles[h]! + k]! / loop.length;
  return sum;
}

/** Mean normal of triangle t and those reached from it over two edges that look nearly the same way. */
function normalAround(mesh: Mesh, twin: Int32Array, t: number): Vec {
  const own = areaVector(mesh, t);
  const base = unit(own);
  const seen = new Set([t]);
  let front = [t];
  const sum: [number, number, number] = [own[0], own[1], own[2]];
  for (let ring = 0; ring < 3; ring++) {
    const next: number[] = [];
    for (const u of front)
      for (let h = 3 * u; h < 3 * u + 3; h++) {
        const g = twin[h]!;
        const w = (g - (g % 3)) / 3;
        if (g < 0 || seen.has(w)) continue;
        seen.add(w);
        const v = areaVector(mesh, w);
        if (dot(unit(v), base) < ALIKE) continue;
        for (let k = 0; k < 3; k++) sum[k]! += v[k]!;
        next.push(w);
      }
    front = next;
  }
  return unit(sum);
}

function faceOf(normals: readonly Vec[], from: number, count: number): { normal: Vec; least: number } {
  const normal = mean(normals, from, count);
  let least = 1;
  for (let q = 0; q < count; q++) least = Math.min(least, dot(normal, normals[(from + q) % normals.length]!));
  return { normal, least };
}

/** Least within a window of the loop, the first of equals. */
function isLeast(values: readonly number[], i: number): boolean {
  const n = values.length;
  for (let d = 1; d <= WINDOW; d++) if (values[(i + d) % n]! < values[i]! || values[(i - d + n) % n]! <= values[i]!) return false;
  return true;
}

function mean(normals: readonly Vec[], from: number, count: number): Vec {
  const n = normals.length;
  const sum: [number, number, number] = [0, 0, 0];
  for (let q = 0; q < count; q++) for (let k = 0; k < 3; k++) sum[k]! += normals[(from + q + n) % n]![k]!;
  return unit(sum);
}

function loopStep(mesh: Mesh, loop: Int32Array): number {
  let sum = 0;
  for (const h of loop) {
    const [p, q] = [point(mesh, mesh.triangles[h]!), point(mesh, mesh.triangles[nextCorner(h)]!)];
    sum += Math.sqrt((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2);
  }
  return sum / loop.length;
}

function areaVector(mesh: Mesh, t: number): Vec {
  const [a, b, c] = [point(mesh, mesh.triangles[3 * t]!), point(mesh, mesh.triangles[3 * t + 1]!), point(mesh, mesh.triangles[previousCorner(3 * t)]!)];
  return cross([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);
}

const point = ({ positions: p }: Mesh, v: number): Vec => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];
const times = (v: Vec, s: number): Vec => [v[0] * s, v[1] * s, v[2] * s];
const dot = (u: Vec, v: Vec): number => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
const cross = (u: Vec, v: Vec): Vec => [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
function unit(v: Vec): Vec {
  const s = 1 / Math.max(Math.sqrt(dot(v, v)), 1e-300);
  return [v[0] * s, v[1] * s, v[2] * s];
}

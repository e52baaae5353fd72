import Delaunator from "delaunator";
import Constrainautor from "@kninnug/constrainautor";
import { must } from "#base/bug.ts";

/** A plane mesh: xy x0 y0 …, triangles counter-clockwise. */
export interface PlaneMesh {
  readonly xy: Float64Array;
  readonly triangles: Uint32Array;
}

export interface FillInput {
  /** Closed outline, counter-clockwise, first point not repeated; its points keep their places and come first in the result. */
  readonly outline: Float64Array;
  /** Lines inside the outline that must be edges of the mesh: each a list of points; they come next in the result. */
  readonly lines: readonly { readonly xy: Float64Array; readonly startsAt?: number; readonly endsAt?: number }[];
  /** Wanted edge length. */
  readonly spacing: number;
}

/**
 * Even triangles inside an outline: a hexagonal lattice (symmetric about y = 0, so that a mirrored outline gives a mirrored
 * mesh but for ties) joined to the outline by a constrained Delaunay triangulation, then relaxed.
 * `startsAt` and `endsAt` of a line name outline points to which its ends are tied.
 */
export function fillOutline({ outline, lines, spacing }: FillInput): PlaneMesh {
  const fixed: number[] = Array.from(outline);
  const constraints: [number, number][] = [];
  const n = outline.length / 2;
  for (let i = 0; i < n; i++) constraints.push([i, (i + 1) % n]);
  for (const line of lines) {
    let before = line.startsAt;
    for (let k = 0; k < line.xy.length; k += 2) {
      const id = fixed.length / 2;
      fixed.push(line.xy[k]!, line.xy[k + 1]!);
      if (before !== undefined) constraints.push([before, id]);
      before = id;
    }
    if (before !== undefined && line.endsAt !== undefined) constraints.push([before, line.endsAt]);
  }
  const lattice = latticeInside(outline, fixed, spacing);
  const xy = Float64Array.from([...fixed, ...lattice]);
  let triangles = triangulate(xy, n, constraints);
  for (let round = 0; round < 2; round++) {
    relaxInto(xy, triangles, fixed.length / 2);
    triangles = triangulate(xy, n, constraints);
  }
  return { xy, triangles };
}

/** Lattice points inside the outline that keep 0.65 spacing from every fixed point. */
function latticeInside(outline: Float64Array, fixed: readonly number[], spacing: number): number[] {
  let minX = Infinity, maxX = -Infinity, maxAbsY = 0;
  for (let i = 0; i < outline.length; i += 2) {
    minX = Math.min(minX, outline[i]!);
    maxX = Math.max(maxX, outline[i]!);
    maxAbsY = Math.max(maxAbsY, Math.abs(outline[i + 1]!));
  }
  const clear = keepsClear(fixed, spacing, 0.65 * spacing);
  const rowHeight = (spacing * Math.sqrt(3)) / 2;
  const rows = Math.ceil(maxAbsY / rowHeight);
  const points: number[] = [];
  for (let row = -rows; row <= rows; row++) {
    const y = row * rowHeight;
    const crossings = crossingsAt(outline, y);
    const shift = row % 2 === 0 ? 0 : spacing / 2;
    for (let c = 0; c + 1 < crossings.length; c += 2) {
      const from = Math.ceil((crossings[c]! - shift) / spacing), to = Math.floor((crossings[c + 1]! - shift) / spacing);
      for (let i = from; i <= to; i++) {
        const x = i * spacing + shift;
        if (clear(x, y)) points.push(x, y);
      }
    }
  }
  return points;
}

/** Tells whether a point keeps `least` from all fixed points; `cell` ≥ `least` is the width of the buckets they are sorted into. */
function keepsClear(fixed: readonly number[], cell: number, least: number): (x: number, y: number) => boolean {
  let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
  for (let i = 0; i < fixed.length; i += 2) {
    minX = Math.min(minX, fixed[i]!);
    maxX = Math.max(maxX, fixed[i]!);
    minY = Math.min(minY, fixed[i + 1]!);
    maxY = Math.max(maxY, fixed[i + 1]!);
  }
  // One empty bucket all round, so that the neighbours of every bucket exist.
  const columns = Math.floor((maxX - minX) / cell) + 3, rows = Math.floor((maxY - minY) / cell) + 3;
  const column = (x: number) => Math.floor((x - minX) / cell) + 1;
  const row = (y: number) => Math.floor((y - minY) / cell) + 1;
  const first = new Int32Array(columns * rows).fill(-1);
  const next = new Int32Array(fixed.length / 2);
  for (let i = 0; i < next.length; i++) {
    const bucket = row(fixed[2 * i + 1]!) * columns + column(fixed[2 * i]!);
    next[i] = first[bucket]!;
    first[bucket] = i;
  }
  const square = least * least;
  return (x, y) => {
    const i0 = Math.max(0, column(x) - 1), i1 = Math.min(columns - 1, column(x) + 1);
    const j0 = Math.max(0, row(y) - 1), j1 = Math.min(rows - 1, row(y) + 1);
    for (let j = j0; j <= j1; j++)
      for (let i = i0; i <= i1; i++)
        for (let k = first[j * columns + i]!; k >= 0; k = next[k]!) if ((fixed[2 * k]! - x) ** 2 + (fixed[2 * k + 1]! - y) ** 2 < square) return false;
    return true;
  };
}

/** Sorted x of the places where the outline crosses the line at y. */
function crossingsAt(outline: Float64Array, y: number): number[] {
  const xs: number[] = [];
  const n = outline.length;
  for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
    const y0 = outline[j + 1]!, y1 = outline[i + 1]!;
    if (y0 > y !== y1 > y) xs.push(outline[j]! + ((y - y0) / (y1 - y0)) * (outline[i]! - outline[j]!));
  }
  return xs.sort((a, b) => a - b);
}

function triangulate(xy: Float64Array, outlinePoints: number, constraints: readonly [number, number][]): Uint32Array {
  const delaunay = new Delaunator(xy);
  new Constrainautor(delaunay).constrainAll(constraints as [number, number][]).delaunify(true);
  const t = delaunay.triangles;
  const inside = insideOf(delaunay, outlinePoints);
  const kept = new Uint32Array(t.length);
  let count = 0;
  for (let f = 0; f < t.length; f += 3) {
    const a = t[f]!, b = t[f + 1]!, c = t[f + 2]!;
    const turned = turn(xy, a, b, c);
    // Three points in line make no triangle. Delaunator winds with y down; turn to counter-clockwise with y up.
    if (turned === 0 || inside[f / 3] !== 1) continue;
    kept[count++] = a;
    kept[count++] = turned > 0 ? b : c;
    kept[count++] = turned > 0 ? c : b;
  }
  must(count > 0, "outline without inside");
  return kept.slice(0, count);
}

/**
 * Which triangles lie inside the outline, 1 for each: found by walking from the hull inward, for the outline consists of edges and
 * only they part inside from outside.
 */
function insideOf({ triangles: t, halfedges }: Delaunator<Float64Array>, outlinePoints: number): Int8Array {
  const parts = (e: number): boolean => {
    const a = t[e]!, b = t[e - (e % 3) + ((e + 1) % 3)]!;
    if (a >= outlinePoints || b >= outlinePoints) return false;
    const apart = Math.abs(a - b);
    return apart === 1 || apart === outlinePoints - 1;
  };
  const inside = new Int8Array(t.length / 3).fill(-1);
  const open: number[] = [];
  for (let e = 0; e < t.length; e++) {
    const f = Math.floor(e / 3);
    if (halfedges[e] !== -1 || inside[f] !== -1) continue;
    inside[f] = parts(e) ? 1 : 0;
    open.push(f);
  }
  for (let f = open.pop(); f !== undefined; f = open.pop())
    for (let e = 3 * f; e < 3 * f + 3; e++) {
      const beyond = halfedges[e]!;
      const g = Math.floor(beyond / 3);
      if (beyond < 0 || inside[g] !== -1) continue;
      inside[g] = parts(e) ? 1 - inside[f]! : inside[f]!;
      open.push(g);
    }
  return inside;
}

const turn = (xy: Float64Array, a: number, b: number, c: number): number =>
  (xy[2 * b]! - xy[2 * a]!) * (xy[2 * c + 1]! - xy[2 * a + 1]!) - (xy[2 * b + 1]! - xy[2 * a + 1]!) * (xy[2 * c]! - xy[2 * a]!);

/** Moves each free point half way to the middle of its neighbours. */
function relaxInto(xy: Float64Array, triangles: Uint32Array, fixedCount: number): void {
  const n = xy.length / 2;
  const sum = new Float64Array(xy.length), count = new Uint32Array(n);
  for (let f = 0; f < triangles.length; f += 3)
    for (let k = 0; k < 3; k++) {
      const v = triangles[f + k]!, w = triangles[f + ((k + 1) % 3)]!;
      sum[2 * v]! += xy[2 * w]!;
      sum[2 * v + 1]! += xy[2 * w + 1]!;
      count[v]!++;
    }
  for (let v = fixedCount; v < n; v++) {
    if (count[v] === 0) continue;
    xy[2 * v] = 0.5 * (xy[2 * v]! + sum[2 * v]! / count[v]!);
    xy[2 * v + 1] = 0.5 * (xy[2 * v + 1]! + sum[2 * v + 1]! / count[v]!);
  }
}

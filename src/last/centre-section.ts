import type { Section } from "#mesh/section.ts";
import type { Point3, SurfaceCurve } from "./last.ts";
import { nearestOnSegment } from "./surface-curve.ts";
import { distance, mix, pointAt } from "./vector.ts";

/** The section with y = 0 as one ring. Where the scan is open the ring goes straight over the gap. */
export interface CentreRing {
  readonly points: Float64Array;
  /** Longest stretch that goes over a gap: from point i to the next; undefined when there is none over 3 mm. */
  readonly gap: { readonly from: number; readonly length: number } | undefined;
}

/** Joins the pieces of the centre section end to end, nearest ends first. Pieces shorter than 8 mm are crumbs and left out. */
export function centreRing(sections: readonly Section[]): CentreRing {
  const closed = sections.filter((s) => s.closed).sort((a, b) => b.points.length - a.points.length);
  const open = sections.filter((s) => !s.closed && runLength(s.points) > 8).map((s) => s.points);
  const biggest = closed.reduce((best: Section | undefined, s) => (!best || runLength(s.points) > runLength(best.points) ? s : best), undefined);
  const openLength = open.reduce((sum, p) => sum + runLength(p), 0);
  if (biggest && runLength(biggest.points) > openLength) return { points: biggest.points, gap: undefined };
  return openRing(open);
}

function runLength(points: Float64Array): number {
  let sum = 0;
  for (let i = 1; i < points.length / 3; i++) sum += distance(pointAt(points, i - 1), pointAt(points, i));
  return sum;
}

function openRing(pieces: readonly Float64Array[]): CentreRing {
  const left = [...pieces].sort((a, b) => runLength(b) - runLength(a));
  let ring: Float64Array = left.shift() ?? new Float64Array(0);
  let gap: CentreRing["gap"];
  const note = (from: number, length: number): void => {
    if (length > 3 && length > (gap?.length ?? 0)) gap = { from, length };
  };
  while (left.length > 0) {
    const end = pointAt(ring, ring.length / 3 - 1);
    // Sections of an oriented mesh all run the same way round: the next piece begins nearest to this one's end.
    let best = 0;
    for (let i = 1; i < left.length; i++) if (distance(end, pointAt(left[i]!, 0)) < distance(end, pointAt(left[best]!, 0))) best = i;
    const next = left.splice(best, 1)[0]!;
    note(ring.length / 3 - 1, distance(end, pointAt(next, 0)));
    const joined = new Float64Array(ring.length + next.length);
    joined.set(ring);
    joined.set(next, ring.length);
    ring = joined;
  }
  if (ring.length > 0) note(ring.length / 3 - 1, distance(pointAt(ring, ring.length / 3 - 1), pointAt(ring, 0)));
  return { points: ring, gap };
}

/** Place on a ring nearest to p: index with fraction. */
export function nearestOnRing(ring: Float64Array, p: Point3): number {
  const n = ring.length / 3;
  let least = Infinity;
  let at = 0;
  for (let i = 0; i < n; i++) {
    const { share, square } = nearestOnSegment(ring, i, (i + 1) % n, p);
    if (square < least) {
      least = square;
      at = i + share;
    }
  }
  return at;
}

/** The run of a ring from one place to another, in the ring's direction (+1) or against it (−1). */
export function runOfRing(ring: Float64Array, from: number, to: number, direction: 1 | -1): Point3[] {
  const n = ring.length / 3;
  const at = (index: number): Point3 => {
    const i = Math.floor(index);
    return mix(pointAt(ring, ((i % n) + n) % n), pointAt(ring, (((i + 1) % n) + n) % n), index - i);
  };
  const out: Point3[] = [at(from)];
  const span = direction > 0 ? (((to - from) % n) + n) % n : (((from - to) % n) + n) % n;
  let i = direction > 0 ? Math.floor(from) + 1 : Math.ceil(from) - 1;
  for (; Math.abs(i - from) < span; i += direction) out.push(at(i));
  out.push(at(to));
  return out;
}

/** A polyline with its running length, resampled at even steps of about `step` mm. */
export function evenCurve(points: readonly Point3[], step = 1): SurfaceCurve {
  const arc = [0];
  for (let i = 1; i < points.length; i++) arc.push(arc[i - 1]! + distance(points[i - 1]!, points[i]!));
  const total = arc[arc.length - 1]!;
  const count = Math.max(2, Math.round(total / step) + 1);
  const out = new Float64Array(3 * count);
  const along = new Float64Array(count);
  let k = 0;
  for (let i = 0; i < count; i++) {
    const s = (total * i) / (count - 1);
    while (k < points.length - 2 && arc[k + 1]! < s) k++;
    const d = arc[k + 1]! - arc[k]!;
    out.set(mix(points[k]!, points[k + 1]!, d > 0 ? Math.min(1, (s - arc[k]!) / d) : 0), 3 * i);
    along[i] = s;
  }
  return { points: out, arc: along };
}

/**
 * A curve with its wiggle taken out, ends held: least Σ |q − p|² + λ Σ |second difference of q|² by relaxation, λ^(1/4) = `widthMm`.
 * A tape lies over roughness, it does not follow it.
 */
export function smoothCurve({ points, arc }: SurfaceCurve, widthMm: number): SurfaceCurve {
  const n = arc.length;
  const step = arc[n - 1]! / (n - 1);
  const lambda = (widthMm / step) ** 4;
  const q = points.slice();
  // Gauss-Seidel on the five-point rows; next to the ends the second difference takes what points there are.
  for (let round = 0; round < 400; round++) {
    for (let i = 3; i < q.length - 3; i++) {
      const wide = i >= 6 && i < q.length - 6;
      const near = q[i - 3]! + q[i + 3]!;
      const side = wide ? 4 * near - q[i - 6]! - q[i + 6]! : near;
      q[i] = (points[i]! + lambda * side) / (1 + lambda * (wide ? 6 : 2));
    }
  }
  return evenCurve(Array.from({ length: n }, (_, i) => pointAt(q, i)), step);
}

import { must } from "#base/bug.ts";
import type { Point3 } from "./last.ts";
import { pointAt, sub, unit } from "./vector.ts";

// Closed polylines: flat x y z …, first point not repeated.

/** Running length at every point, and the whole length last: n + 1 values. */
export function closedArc(points: Float64Array): Float64Array {
  const n = points.length / 3;
  const arc = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const a = 3 * i;
    const b = 3 * ((i + 1) % n);
    const dx = points[b]! - points[a]!;
    const dy = points[b + 1]! - points[a + 1]!;
    const dz = points[b + 2]! - points[a + 2]!;
    arc[i + 1] = arc[i]! + Math.sqrt(dx * dx + dy * dy + dz * dz);
  }
  return arc;
}

/** Index (with fraction) of the place at arc length s, which may lie before the start or past the end. */
export function indexAtArc(arc: Float64Array, s: number): number {
  const n = arc.length - 1;
  const total = arc[n]!;
  const at = s - Math.floor(s / total) * total;
  let low = 0;
  let high = n;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (arc[middle]! <= at) low = middle;
    else high = middle;
  }
  const step = arc[low + 1]! - arc[low]!;
  return low + (step > 0 ? Math.min(1, (at - arc[low]!) / step) : 0);
}

/** The value of a per-point quantity of `width` numbers at an index with fraction, linear between points. */
export function valueAt(values: Float64Array, width: number, index: number): number[] {
  const n = values.length / width;
  const i = Math.floor(index);
  const t = index - i;
  const a = width * (((i % n) + n) % n);
  const b = width * ((((i + 1) % n) + n) % n);
  return Array.from({ length: width }, (_, k) => values[a + k]! * (1 - t) + values[b + k]! * t);
}

export function pointAtIndex(points: Float64Array, index: number): Point3 {
  const [x, y, z] = valueAt(points, 3, index);
  return [x!, y!, z!];
}

/** `count` points at equal steps of arc length, the first at arc length `from`; `values` (one a point) go along. */
export function resampleClosed(points: Float64Array, values: Float64Array, count: number, from: number): { points: Float64Array; values: Float64Array } {
  const arc = closedArc(points);
  const total = arc[arc.length - 1]!;
  const out = new Float64Array(3 * count);
  const carried = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const index = indexAtArc(arc, from + (total * k) / count);
    out.set(pointAtIndex(points, index), 3 * k);
    carried[k] = valueAt(values, 1, index)[0]!;
  }
  return { points: out, values: carried };
}

/** Unit tangent at every point from the neighbours `reach` points away. */
export function closedTangents(points: Float64Array, reach: number): Float64Array {
  const n = points.length / 3;
  const out = new Float64Array(3 * n);
  for (let i = 0; i < n; i++) out.set(unit(sub(pointAt(points, (i + reach) % n), pointAt(points, (i - reach + n) % n))), 3 * i);
  return out;
}

/**
 * Closed smoothing spline on even steps: least Σ w|q − p|² + λ Σ |second difference of q|², solved by conjugate gradients.
 * `widthMm` is λ^(1/4) in length: bends tighter than it are rounded, and a bend of radius R moves inward by width⁴ / R³.
 * Source: the discrete form of Reinsch's smoothing spline (Numerische Mathematik 10, 1967).
 */
export function smoothClosed(points: Float64Array, weights: Float64Array, stepMm: number, widthMm: number): Float64Array {
  const n = weights.length;
  must(points.length === 3 * n, "one weight a point");
  const lambda = (widthMm / stepMm) ** 4;
  const out = points.slice();
  const apply = (q: Float64Array, r: Float64Array): void => {
    for (let i = 0; i < n; i++) {
      const [a, b, d, e] = [(i + n - 2) % n, (i + n - 1) % n, (i + 1) % n, (i + 2) % n];
      r[i] = weights[i]! * q[i]! + lambda * (q[a]! - 4 * q[b]! + 6 * q[i]! - 4 * q[d]! + q[e]!);
    }
  };
  for (let axis = 0; axis < 3; axis++) {
    const b = Float64Array.from({ length: n }, (_, i) => weights[i]! * points[3 * i + axis]!);
    const x = Float64Array.from({ length: n }, (_, i) => points[3 * i + axis]!);
    conjugateGradients(apply, b, x);
    for (let i = 0; i < n; i++) out[3 * i + axis] = x[i]!;
  }
  return out;
}

/** Solves A x = b for a positive definite A given by `apply`; x is the start and the result. */
function conjugateGradients(apply: (q: Float64Array, r: Float64Array) => void, b: Float64Array, x: Float64Array): void {
  const n = b.length;
  const ax = new Float64Array(n);
  apply(x, ax);
  const r = b.map((v, i) => v - ax[i]!);
  const p = r.slice();
  let rr = r.reduce((sum, v) => sum + v * v, 0);
  const stop = 1e-12 * n;
  for (let round = 0; round < 2000 && rr > stop; round++) {
    apply(p, ax);
    let pap = 0;
    for (let i = 0; i < n; i++) pap += p[i]! * ax[i]!;
    const alpha = rr / pap;
    let next = 0;
    for (let i = 0; i < n; i++) {
      x[i] = x[i]! + alpha * p[i]!;
      r[i] = r[i]! - alpha * ax[i]!;
      next += r[i]! * r[i]!;
    }
    const beta = next / rr;
    rr = next;
    for (let i = 0; i < n; i++) p[i] = r[i]! + beta * p[i]!;
  }
}

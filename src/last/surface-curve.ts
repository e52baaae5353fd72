import type { Point3, SurfaceCurve } from "./last.ts";

/** A surface curve from its points x0 y0 z0 …, with the running length worked out. */
export function curveOf(points: ArrayLike<number>): SurfaceCurve {
  const xyz = Float64Array.from(points);
  const arc = new Float64Array(xyz.length / 3);
  for (let i = 1; i < arc.length; i++) {
    const a = 3 * i;
    arc[i] = arc[i - 1]! + Math.sqrt((xyz[a]! - xyz[a - 3]!) ** 2 + (xyz[a + 1]! - xyz[a - 2]!) ** 2 + (xyz[a + 2]! - xyz[a - 1]!) ** 2);
  }
  return { points: xyz, arc };
}

/** Length of the whole curve, mm. */
export const curveLength = (c: SurfaceCurve): number => c.arc[c.arc.length - 1]!;

/** The point at a length along the curve, clamped to its ends. */
export function pointOn({ points: p, arc }: SurfaceCurve, at: number): Point3 {
  let lo = 0, hi = arc.length - 1;
  if (hi === 0 || at <= 0) return [p[0]!, p[1]!, p[2]!];
  if (at >= arc[hi]!) return [p[3 * hi]!, p[3 * hi + 1]!, p[3 * hi + 2]!];
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1;
    if (arc[mid]! <= at) lo = mid;
    else hi = mid;
  }
  const step = arc[hi]! - arc[lo]!;
  const t = step > 0 ? (at - arc[lo]!) / step : 0;
  const a = 3 * lo, b = 3 * hi;
  return [p[a]! + t * (p[b]! - p[a]!), p[a + 1]! + t * (p[b + 1]! - p[a + 1]!), p[a + 2]! + t * (p[b + 2]! - p[a + 2]!)];
}

/** Place on a segment: share of the way from its first point to its second, and the square of its distance from what was asked. */
export interface OnSegment {
  readonly share: number;
  readonly square: number;
}

/** The place nearest to a point on the segment between points i and j of a list x0 y0 z0 …. */
export function nearestOnSegment(p: Float64Array, i: number, j: number, [x, y, z]: Point3): OnSegment {
  const a = 3 * i, b = 3 * j;
  const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
  const wx = x - p[a]!, wy = y - p[a + 1]!, wz = z - p[a + 2]!;
  const uu = ux * ux + uy * uy + uz * uz;
  const share = uu > 0 ? Math.min(1, Math.max(0, (ux * wx + uy * wy + uz * wz) / uu)) : 0;
  return { share, square: (wx - share * ux) ** 2 + (wy - share * uy) ** 2 + (wz - share * uz) ** 2 };
}

/** The length along the curve of the place nearest to a point. */
export function arcNearest({ points, arc }: SurfaceCurve, p: Point3): number {
  let best = 0, least = Infinity;
  for (let i = 0; i + 1 < arc.length; i++) {
    const { share, square } = nearestOnSegment(points, i, i + 1, p);
    if (square < least) {
      least = square;
      best = arc[i]! + share * (arc[i + 1]! - arc[i]!);
    }
  }
  return best;
}

/** The part of a curve from its start to a length along it, both ends included. */
export function upTo(c: SurfaceCurve, length: number): SurfaceCurve {
  const out: number[] = [];
  for (let i = 0; i < c.arc.length && c.arc[i]! < length; i++) out.push(c.points[3 * i]!, c.points[3 * i + 1]!, c.points[3 * i + 2]!);
  out.push(...pointOn(c, length));
  return curveOf(out);
}

export const distanceSquared = (a: Point3, b: Point3): number => (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2;

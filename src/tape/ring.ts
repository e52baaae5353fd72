import { must } from "#base/bug.ts";
import { signedArea } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";

export type Xy = readonly [number, number];

/** A closed line walked counter-clockwise, with the running length at each of its points and once round; mm. */
export interface Ring {
  readonly xy: Float64Array;
  readonly arc: Float64Array;
  readonly lap: number;
}

/** Steps of a ring, mm: finer than a knife follows a line, coarse enough to look at every pair of places. */
const longestMm = 0.5;
const shortestMm = 0.05;

/** The outline as a ring: no step longer than half a millimetre, points closer than a twentieth left out. */
export function ringOf(outline: Outline): Ring {
  const xy = signedArea(outline) >= 0 ? outline.xy : backwards(outline.xy);
  const n = xy.length / 2;
  must(n >= 3, "a ring needs three points");
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    const x = xy[2 * i]!, y = xy[2 * i + 1]!;
    const m = out.length;
    if (m > 0 && Math.hypot(x - out[m - 2]!, y - out[m - 1]!) < shortestMm) continue;
    if (m > 0) fill(out, [x, y]);
    out.push(x, y);
  }
  fill(out, [out[0]!, out[1]!]);
  return measured(Float64Array.from(out));
}

/** Points between the last one and the next, so that no step is too long. */
function fill(out: number[], [x, y]: Xy): void {
  const fromX = out[out.length - 2]!, fromY = out[out.length - 1]!;
  const parts = Math.ceil(Math.hypot(x - fromX, y - fromY) / longestMm);
  for (let k = 1; k < parts; k++) out.push(fromX + ((x - fromX) * k) / parts, fromY + ((y - fromY) * k) / parts);
}

function measured(xy: Float64Array): Ring {
  const n = xy.length / 2;
  const arc = new Float64Array(n);
  const step = (i: number): number => Math.hypot(xy[(2 * i + 2) % xy.length]! - xy[2 * i]!, xy[(2 * i + 3) % xy.length]! - xy[2 * i + 1]!);
  for (let i = 1; i < n; i++) arc[i] = arc[i - 1]! + step(i - 1);
  return { xy, arc, lap: arc[n - 1]! + step(n - 1) };
}

function backwards(xy: Float64Array): Float64Array {
  return xy.map((_, i) => xy[xy.length - 2 - i + 2 * (i % 2)]!);
}

const wrapped = (s: number, lap: number): number => ((s % lap) + lap) % lap;

/** From one running length forward to another, mm. */
export const forward = ({ lap }: Ring, from: number, to: number): number => wrapped(to - from, lap);

/** The last point at or before a running length. */
function indexAt({ arc }: Ring, s: number): number {
  let lo = 0, hi = arc.length - 1;
  while (lo < hi) {
    const mid = (lo + hi + 1) >> 1;
    if (arc[mid]! <= s) lo = mid;
    else hi = mid - 1;
  }
  return lo;
}

/** The point at a running length, which may lie beyond either end. */
export function pointOn(ring: Ring, at: number): Xy {
  const s = wrapped(at, ring.lap);
  const { xy, arc, lap } = ring;
  const i = indexAt(ring, s), j = (i + 1) % arc.length;
  const span = (j === 0 ? lap : arc[j]!) - arc[i]!;
  const t = span > 0 ? (s - arc[i]!) / span : 0;
  return [xy[2 * i]! + t * (xy[2 * j]! - xy[2 * i]!), xy[2 * i + 1]! + t * (xy[2 * j + 1]! - xy[2 * i + 1]!)];
}

/** The stretch that begins at one running length and is walked forward to another. */
export function stretch(ring: Ring, from: number, to: number): Polyline {
  const length = forward(ring, from, to);
  const start = wrapped(from, ring.lap);
  const n = ring.arc.length;
  const out: number[] = [...pointOn(ring, from)];
  for (let k = indexAt(ring, start) + 1; ; k++) {
    const s = ring.arc[k % n]! + Math.floor(k / n) * ring.lap - start;
    if (s >= length - 1e-6) break;
    if (s > 1e-6) out.push(ring.xy[2 * (k % n)]!, ring.xy[2 * (k % n) + 1]!);
  }
  out.push(...pointOn(ring, to));
  return { xy: Float64Array.from(out) };
}

/** Nearest place of the ring to a point. */
export function nearestPlace({ xy, arc, lap }: Ring, [px, py]: Xy): { readonly s: number; readonly distance: number } {
  const n = arc.length;
  let best = { s: 0, distance: Infinity };
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const x = xy[2 * i]!, y = xy[2 * i + 1]!;
    const dx = xy[2 * j]! - x, dy = xy[2 * j + 1]! - y;
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / square)) : 0;
    const distance = Math.hypot(px - x - t * dx, py - y - t * dy);
    if (distance < best.distance) best = { s: arc[i]! + t * ((j === 0 ? lap : arc[j]!) - arc[i]!), distance };
  }
  return best;
}

/** The ring with stretches from one of its points forward to another, none within another, replaced by straight lines. */
export function bridged({ xy, arc }: Ring, gaps: readonly { readonly from: number; readonly to: number }[]): Ring {
  const n = arc.length;
  const over = new Map(gaps.map(({ from, to }) => [from, to]));
  const start = gaps[0]?.from ?? 0;
  const out: number[] = [];
  for (let k = start; ; ) {
    out.push(xy[2 * k]!, xy[2 * k + 1]!);
    const to = over.get(k);
    const next = to ?? (k + 1) % n;
    if (to !== undefined) fill(out, [xy[2 * to]!, xy[2 * to + 1]!]);
    k = next;
    if (k === start) break;
  }
  return measured(Float64Array.from(out));
}

/** How far a corner's sides are looked at, from and to, mm: beyond the rounding of a knife and of a picture. */
const sideMm = [0.8, 7] as const;

/** The sharp corner near a running length: where parabolas through both sides meet, for knives and pictures round it off. */
export function sharpened(ring: Ring, s: number): Xy {
  const before = parabola(ring, s, -1), after = parabola(ring, s, 1);
  const blunt = pointOn(ring, s);
  let u = 0, v = 0;
  for (let k = 0; k < 6; k++) {
    const [px, py, pdx, pdy] = before(u), [qx, qy, qdx, qdy] = after(v);
    const cross = qdx * pdy - pdx * qdy;
    if (Math.abs(cross) < 0.3) return blunt;
    const x = qx - px, y = qy - py;
    u += (qdx * y - x * qdy) / cross;
    v += (pdx * y - x * pdy) / cross;
    if (Math.abs(u) > 3 || Math.abs(v) > 3) return blunt;
  }
  const [x, y] = before(u);
  return Math.hypot(x - blunt[0], y - blunt[1]) <= 2 ? [x, y] : blunt;
}

/** One side of a corner as a parabola of the running length away from it (least squares): place and slope. */
function parabola(ring: Ring, s: number, way: 1 | -1): (u: number) => readonly [number, number, number, number] {
  const count = 16;
  const half = (sideMm[1] - sideMm[0]) / 2, middle = (sideMm[1] + sideMm[0]) / 2;
  // Even places t = -1 … 1, on which 1, t and t² - m2 are orthogonal.
  const t = Array.from({ length: count }, (_, k) => -1 + (2 * k) / (count - 1));
  const m2 = t.reduce((sum, x) => sum + x * x, 0) / count;
  const bent = t.map((x) => x * x - m2);
  const norm = bent.reduce((sum, b) => sum + b * b, 0);
  const points = t.map((x) => pointOn(ring, s + way * (middle + half * x)));
  const fit = (c: 0 | 1) => {
    const mean = points.reduce((sum, p) => sum + p[c], 0) / count;
    const slope = points.reduce((sum, p, k) => sum + p[c] * t[k]!, 0) / (m2 * count);
    const bend = points.reduce((sum, p, k) => sum + p[c] * bent[k]!, 0) / norm;
    return { at: (x: number) => mean + slope * x + bend * (x * x - m2), along: (x: number) => (slope + 2 * bend * x) / half };
  };
  const [x, y] = [fit(0), fit(1)];
  return (u) => {
    const at = (u - middle) / half;
    return [x.at(at), y.at(at), x.along(at), y.along(at)];
  };
}

/** A straight line: one of its points and its unit direction. */
export interface Line {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** The line of least squared distance to points. */
export function nearestLine(points: readonly Xy[]): Line {
  let x = 0, y = 0;
  for (const p of points) {
    x += p[0] / points.length;
    y += p[1] / points.length;
  }
  let xx = 0, xy = 0, yy = 0;
  for (const p of points) {
    xx += (p[0] - x) ** 2;
    xy += (p[0] - x) * (p[1] - y);
    yy += (p[1] - y) ** 2;
  }
  // Half-angle form without trigonometry: the larger eigenvector of the 2 x 2 spread.
  const half = (xx - yy) / 2;
  const root = Math.sqrt(half * half + xy * xy);
  const [dx, dy] = half >= 0 ? [half + root, xy] : [xy, root - half];
  const size = Math.hypot(dx, dy);
  return size > 0 ? { x, y, dx: dx / size, dy: dy / size } : { x, y, dx: 1, dy: 0 };
}

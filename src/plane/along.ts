import { must } from "#base/bug.ts";
import type { Polyline } from "./outline.ts";

/** Place on a polyline: running length from its first point, the point itself and how far it is from what was asked. */
export interface Foot {
  readonly s: number;
  readonly x: number;
  readonly y: number;
  readonly distance: number;
}

/** Running length at each point of an open polyline, mm; the first is 0. */
export function arcLengths({ xy }: Polyline): Float64Array {
  const n = xy.length / 2;
  const s = new Float64Array(n);
  for (let i = 1; i < n; i++) {
    const dx = xy[2 * i]! - xy[2 * i - 2]!;
    const dy = xy[2 * i + 1]! - xy[2 * i - 1]!;
    s[i] = s[i - 1]! + Math.sqrt(dx * dx + dy * dy);
  }
  return s;
}

/** Index of the segment that holds running length s, clamped to the ends. */
export function segmentAt(arc: Float64Array, s: number): number {
  let lo = 0;
  let hi = arc.length - 2;
  while (lo < hi) {
    const mid = (lo + hi + 1) >> 1;
    if (arc[mid]! <= s) lo = mid;
    else hi = mid - 1;
  }
  return lo;
}

/** Point at running length s, clamped to the ends. `arc` from {@link arcLengths}. */
export function pointAt({ xy }: Polyline, arc: Float64Array, s: number): readonly [number, number] {
  must(arc.length >= 2, "a line needs two points");
  const i = segmentAt(arc, s);
  const span = arc[i + 1]! - arc[i]!;
  const t = span > 0 ? Math.min(1, Math.max(0, (s - arc[i]!) / span)) : 0;
  const x = xy[2 * i]!;
  const y = xy[2 * i + 1]!;
  return [x + t * (xy[2 * i + 2]! - x), y + t * (xy[2 * i + 3]! - y)];
}

/** Unit direction at running length s: the chord from half a millimetre before to half a millimetre after. */
export function directionAt(line: Polyline, arc: Float64Array, s: number, reach = 0.5): readonly [number, number] {
  const end = arc[arc.length - 1]!;
  const a = pointAt(line, arc, Math.max(0, Math.min(s, end) - reach));
  const b = pointAt(line, arc, Math.min(end, Math.max(s, 0) + reach));
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.sqrt(dx * dx + dy * dy);
  must(length > 0, "a line has no direction where it has no length");
  return [dx / length, dy / length];
}

/** Nearest place of an open polyline to a point. */
export function nearestOn({ xy }: Polyline, arc: Float64Array, px: number, py: number): Foot {
  let best: Foot = { s: 0, x: xy[0]!, y: xy[1]!, distance: Infinity };
  for (let i = 0; i + 3 < xy.length; i += 2) {
    const x = xy[i]!;
    const y = xy[i + 1]!;
    const dx = xy[i + 2]! - x;
    const dy = xy[i + 3]! - y;
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / square)) : 0;
    const fx = x + t * dx;
    const fy = y + t * dy;
    const distance = Math.sqrt((px - fx) * (px - fx) + (py - fy) * (py - fy));
    if (distance < best.distance) best = { s: arc[i / 2]! + t * (arc[i / 2 + 1]! - arc[i / 2]!), x: fx, y: fy, distance };
  }
  return best;
}

/** The same line with points evenly spaced along it, at most `step` mm apart; both ends are kept exactly. */
export function resample(line: Polyline, step: number): Polyline {
  const arc = arcLengths(line);
  const total = arc[arc.length - 1]!;
  const pieces = Math.max(1, Math.ceil(total / step - 1e-9));
  const out = new Float64Array(2 * (pieces + 1));
  for (let k = 0; k <= pieces; k++) {
    const [x, y] = pointAt(line, arc, (total * k) / pieces);
    out[2 * k] = x;
    out[2 * k + 1] = y;
  }
  out.set(line.xy.subarray(0, 2), 0);
  out.set(line.xy.subarray(line.xy.length - 2), 2 * pieces);
  return { xy: out };
}

/** The part of a line between two running lengths, its own points between them kept. */
export function partBetween(line: Polyline, arc: Float64Array, from: number, to: number): Polyline {
  const out: number[] = [...pointAt(line, arc, from)];
  for (let i = 0; i < arc.length; i++) {
    if (arc[i]! > from + 1e-9 && arc[i]! < to - 1e-9) out.push(line.xy[2 * i]!, line.xy[2 * i + 1]!);
  }
  out.push(...pointAt(line, arc, to));
  return { xy: Float64Array.from(out) };
}

/** The last `mm` of a line, or all of it where it is shorter. */
export function endPart(line: Polyline, mm: number): Polyline {
  const arc = arcLengths(line);
  const end = arc[arc.length - 1]!;
  return mm >= end ? line : partBetween(line, arc, end - mm, end);
}

/** The same line walked the other way. */
export function reversed({ xy }: Polyline): Polyline {
  const out = new Float64Array(xy.length);
  for (let i = 0, j = xy.length - 2; j >= 0; i += 2, j -= 2) {
    out[i] = xy[j]!;
    out[i + 1] = xy[j + 1]!;
  }
  return { xy: out };
}

/** Lines end to start in one; a point that repeats the one before (within a nanometre) is dropped. */
export function joined(lines: readonly Polyline[]): Polyline {
  const out: number[] = [];
  for (const { xy } of lines) {
    for (let i = 0; i < xy.length; i += 2) {
      const n = out.length;
      if (n >= 2 && Math.abs(out[n - 2]! - xy[i]!) < 1e-6 && Math.abs(out[n - 1]! - xy[i + 1]!) < 1e-6) continue;
      out.push(xy[i]!, xy[i + 1]!);
    }
  }
  return { xy: Float64Array.from(out) };
}

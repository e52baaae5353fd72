import { must } from "#base/bug.ts";
import { withoutLoops } from "./crossing.ts";
import type { Outline, Polyline } from "./outline.ts";

/**
 * Offsets an open smooth line point by point along its normals. Positive widths lie to the right of the direction of travel,
 * which is outside where the line is part of a counter-clockwise outline. Loops in hollows tighter than the width are cut out.
 * `widths` mm, one a point; they must change slowly along the line, since a point lies exactly at its width only square to it.
 */
export function offsetEdge(line: Polyline, widths: Float64Array): Polyline {
  const widest = widths.reduce((a, w) => Math.max(a, Math.abs(w)), 0);
  return withoutLoops(rawOffset(line.xy, widths, false), 8 * widest);
}

/** Offsets a closed smooth outline; positive widths grow a counter-clockwise one. */
export function offsetLoop(outline: Outline, widths: Float64Array): Outline {
  return rawOffset(outline.xy, widths, true);
}

/** One width for every point of a line. */
export function evenWidth(line: Polyline | Outline, mm: number): Float64Array {
  return new Float64Array(line.xy.length / 2).fill(mm);
}

function rawOffset(xy: Float64Array, widths: Float64Array, closed: boolean): Polyline {
  const n = xy.length / 2;
  must(widths.length === n && n >= 3, "an offset needs a width for each of at least three points");
  const out = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const [nx, ny] = rightNormal(xy, i, closed);
    out[2 * i] = xy[2 * i]! + nx * widths[i]!;
    out[2 * i + 1] = xy[2 * i + 1]! + ny * widths[i]!;
  }
  return { xy: out };
}

const lengthBetween = (xy: Float64Array, i: number, j: number): number => Math.sqrt((xy[j]! - xy[i]!) ** 2 + (xy[j + 1]! - xy[i + 1]!) ** 2);

/** Unit normal to the right at point i: from the parabola through it and its neighbours, one-sided at the ends. */
export function rightNormal(xy: Float64Array, i: number, closed: boolean): readonly [number, number] {
  const n = xy.length / 2;
  const x = xy[2 * i]!;
  const y = xy[2 * i + 1]!;
  let dx: number;
  let dy: number;
  if (closed || (i > 0 && i < n - 1)) {
    const a = 2 * (i > 0 ? i - 1 : n - 1);
    const b = 2 * (i < n - 1 ? i + 1 : 0);
    const ax = x - xy[a]!;
    const ay = y - xy[a + 1]!;
    const bx = xy[b]! - x;
    const by = xy[b + 1]! - y;
    const before = ax * ax + ay * ay;
    const after = bx * bx + by * by;
    // Slope of the parabola: each chord's direction weighted by the other chord's length.
    dx = ax * after + bx * before;
    dy = ay * after + by * before;
  } else {
    const way = i === 0 ? 2 : -2;
    const q = 2 * i + way;
    const r = q + way;
    const near = lengthBetween(xy, 2 * i, q);
    const next = lengthBetween(xy, q, r);
    if (Math.abs(near - next) <= 0.1 * near) {
      dx = (way * (-3 * x + 4 * xy[q]! - xy[r]!)) / 2;
      dy = (way * (-3 * y + 4 * xy[q + 1]! - xy[r + 1]!)) / 2;
    } else {
      // The same parabola through points that stand unevenly, as where a line was cut off between two of them.
      const [a, b] = [next * (2 * near + next), near * near];
      dx = way * (a * (xy[q]! - x) - b * (xy[r]! - xy[q]!));
      dy = way * (a * (xy[q + 1]! - y) - b * (xy[r + 1]! - xy[q + 1]!));
    }
  }
  const length = Math.sqrt(dx * dx + dy * dy);
  must(length > 0, "a line that turns back has no normal");
  return [dy / length, -dx / length];
}

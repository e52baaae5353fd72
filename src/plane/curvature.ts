import { resample } from "./along.ts";
import type { Polyline } from "./outline.ts";

/** Signed curvature (1/mm, positive to the left) at the inner points of a line resampled evenly: circle through three points. */
export function curvatures(line: Polyline, stepMm = 2): Float64Array {
  const { xy } = resample(line, stepMm);
  const n = xy.length / 2;
  const out = new Float64Array(Math.max(0, n - 2));
  for (let i = 1; i < n - 1; i++) {
    const ax = xy[2 * i]! - xy[2 * i - 2]!;
    const ay = xy[2 * i + 1]! - xy[2 * i - 1]!;
    const bx = xy[2 * i + 2]! - xy[2 * i]!;
    const by = xy[2 * i + 3]! - xy[2 * i + 1]!;
    const cx = ax + bx;
    const cy = ay + by;
    const sides = Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by) * (cx * cx + cy * cy));
    out[i - 1] = sides > 0 ? (2 * (ax * by - ay * bx)) / sides : 0;
  }
  return out;
}

/**
 * How often a line changes from bending left to bending right. Bends flatter than `flattest` (radius 2 m where not said)
 * count as straight: no hand can see or cut them. So do those whose bow is less than `leastBowMm`: between two places where the
 * bend changes, the line rises above its chord by about turn · length / 8.
 */
export function bendChanges(line: Polyline, flattest = 1 / 2000, stepMm = 2, leastBowMm = 0): number {
  let changes = 0;
  let last = 0;
  let way = 0;
  let turn = 0;
  let length = 0;
  const endOfBend = (): void => {
    if (way === 0 || (turn * length) / 8 < leastBowMm) return;
    if (last !== 0 && way !== last) changes++;
    last = way;
  };
  for (const k of curvatures(line, stepMm)) {
    if (Math.abs(k) < flattest) continue;
    const now = k > 0 ? 1 : -1;
    if (now !== way) {
      endOfBend();
      way = now;
      turn = length = 0;
    }
    turn += Math.abs(k) * stepMm;
    length += stepMm;
  }
  endOfBend();
  return changes;
}

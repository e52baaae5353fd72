import Flatbush from "flatbush";
import { orient2d } from "robust-predicates";
import { lengthOf } from "./measure.ts";
import type { Outline, Polyline } from "./outline.ts";

/** Where segment i and segment j of a line cross; segment k runs from point k to point k+1. */
export interface Crossing {
  readonly i: number;
  readonly j: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Whether two segments have a point in common, by exact orientation signs; touching counts. Where they lie on one line the
 * answer is by overlap of their boxes.
 */
export function segmentsMeet(ax: number, ay: number, bx: number, by: number, cx: number, cy: number, dx: number, dy: number): boolean {
  if (Math.max(ax, bx) < Math.min(cx, dx) || Math.max(cx, dx) < Math.min(ax, bx)) return false;
  if (Math.max(ay, by) < Math.min(cy, dy) || Math.max(cy, dy) < Math.min(ay, by)) return false;
  const c = orient2d(ax, ay, bx, by, cx, cy);
  const d = orient2d(ax, ay, bx, by, dx, dy);
  if ((c > 0 && d > 0) || (c < 0 && d < 0)) return false;
  const a = orient2d(cx, cy, dx, dy, ax, ay);
  const b = orient2d(cx, cy, dx, dy, bx, by);
  return !((a > 0 && b > 0) || (a < 0 && b < 0));
}

/** Point common to the lines through two segments that meet; the middle of the shorter way where they are parallel. */
export function meetingPoint(ax: number, ay: number, bx: number, by: number, cx: number, cy: number, dx: number, dy: number): readonly [number, number] {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = dx - cx;
  const vy = dy - cy;
  const cross = ux * vy - uy * vx;
  if (cross === 0) return [(bx + cx) / 2, (by + cy) / 2];
  const t = Math.min(1, Math.max(0, ((cx - ax) * vy - (cy - ay) * vx) / cross));
  return [ax + t * ux, ay + t * uy];
}

/** First crossing of a closed outline with itself in the order of its segments, or undefined where it is simple. */
export function selfCrossing(outline: Outline): Crossing | undefined {
  return firstCrossing(outline.xy, true);
}

/** First crossing of an open polyline with itself. */
export function selfCrossingOpen(line: Polyline): Crossing | undefined {
  return firstCrossing(line.xy, false);
}

function firstCrossing(xy: Float64Array, closed: boolean): Crossing | undefined {
  const n = xy.length / 2;
  const segments = closed ? n : n - 1;
  if (segments < 3) return undefined;
  const index = segmentIndex(xy, segments);
  for (let i = 0; i < segments; i++) {
    const [ax, ay, bx, by] = segment(xy, i);
    let found: Crossing | undefined;
    for (const j of index.search(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by))) {
      // Neighbours share an end; they can only fold back, which has no inside and is no crossing.
      if (j <= i + 1 || (closed && i === 0 && j === segments - 1)) continue;
      if (found && j >= found.j) continue;
      const [cx, cy, dx, dy] = segment(xy, j);
      if (!segmentsMeet(ax, ay, bx, by, cx, cy, dx, dy)) continue;
      const [x, y] = meetingPoint(ax, ay, bx, by, cx, cy, dx, dy);
      found = { i, j, x, y };
    }
    if (found) return found;
  }
  return undefined;
}

/** Boxes of the segments in a tree; segment `segments - 1` closes the outline where there are as many as points. */
function segmentIndex(xy: Float64Array, segments: number): Flatbush {
  const index = new Flatbush(segments);
  for (let i = 0; i < segments; i++) {
    const [ax, ay, bx, by] = segment(xy, i);
    index.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
  }
  index.finish();
  return index;
}

function segment(xy: Float64Array, i: number): readonly [number, number, number, number] {
  const k = 2 * i;
  const l = k + 2 < xy.length ? k + 2 : 0;
  return [xy[k]!, xy[k + 1]!, xy[l]!, xy[l + 1]!];
}

/**
 * An open polyline with its own small loops cut out: where it crosses itself within `longestMm` of running length, the way
 * between is dropped and the crossing point put in its place. What an offset of a hollow tighter than its width needs; a
 * crossing of far parts is a fault of the design and is left for the check to find.
 */
export function withoutLoops(line: Polyline, longestMm = Infinity): Polyline {
  let current = line;
  // Each round drops at least two points for one, so this ends.
  for (let crossing = selfCrossingOpen(current); crossing; crossing = selfCrossingOpen(current)) {
    const { i, j, x, y } = crossing;
    if (lengthOf({ xy: current.xy.subarray(2 * i, 2 * j + 4) }) > longestMm) return current;
    const kept = new Float64Array(current.xy.length - 2 * (j - i - 1));
    kept.set(current.xy.subarray(0, 2 * i + 2), 0);
    kept[2 * i + 2] = x;
    kept[2 * i + 3] = y;
    kept.set(current.xy.subarray(2 * j + 2), 2 * i + 4);
    current = { xy: kept };
  }
  return current;
}

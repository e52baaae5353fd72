import { closedArc, closedTangents, indexAtArc, pointAtIndex } from "./closed-curve.ts";
import type { Point3 } from "./last.ts";
import { dot, sub, unit } from "./vector.ts";

/** Where the axis meets the feather line, as indices with fraction. */
export interface AxisEnds {
  readonly seat: number;
  readonly toe: number;
}

/** Toe and seat point lie midway between the places where the outline, seen from above, has turned this far off square. */
const turnedSine = 0.5; // 30 degrees

/**
 * Seat and toe point of a closed feather line that runs counter-clockwise from above (z up; `toward` points roughly to the toe).
 * Each is the middle, along the line, of the stretch within 30 degrees of square to the axis: the tip of a round, almond or
 * pointed toe and the middle of a square one. The axis joins them, so it is found by going round: six times settle it far below
 * 0.01 mm.
 */
export function axisEnds(points: Float64Array, toward: Point3): AxisEnds {
  const tangents = closedTangents(points, 2);
  const arc = closedArc(points);
  let along: Point3 = unit([toward[0], toward[1], 0]);
  let ends: AxisEnds = { seat: 0, toe: 0 };
  for (let round = 0; round < 6; round++) {
    ends = { seat: tip(points, tangents, arc, [-along[0], -along[1], 0]), toe: tip(points, tangents, arc, along) };
    const d = sub(pointAtIndex(points, ends.toe), pointAtIndex(points, ends.seat));
    along = unit([d[0], d[1], 0]);
  }
  return ends;
}

/** Middle of the stretch, about the farthest point along `ahead`, that runs within 30 degrees of square to it. */
function tip(points: Float64Array, tangents: Float64Array, arc: Float64Array, ahead: Point3): number {
  const n = points.length / 3;
  let farthest = 0;
  let reach = -Infinity;
  for (let i = 0; i < n; i++) {
    const d = points[3 * i]! * ahead[0] + points[3 * i + 1]! * ahead[1];
    if (d > reach) {
      reach = d;
      farthest = i;
    }
  }
  // Counter-clockwise, the line runs square to `ahead` there; before it still goes ahead (positive), after it goes back.
  const rise = (i: number): number => {
    const k = 3 * (((i % n) + n) % n);
    const t: Point3 = unit([tangents[k]!, tangents[k + 1]!, 0]);
    return dot(t, ahead);
  };
  const before = edge(rise, farthest, -1, turnedSine, n);
  const after = edge(rise, farthest, 1, -turnedSine, n);
  const total = arc[n]!;
  const lap = (index: number): number => arcAt(arc, index, n) + Math.floor(index / n) * total;
  return indexAtArc(arc, (lap(before) + lap(after)) / 2);
}

function arcAt(arc: Float64Array, index: number, n: number): number {
  const i = Math.floor(index);
  const k = ((i % n) + n) % n;
  return arc[k]! + (index - i) * (arc[k + 1]! - arc[k]!);
}

/** First index with fraction, going from `start` by `step`, where `rise` crosses `limit`. */
function edge(rise: (i: number) => number, start: number, step: 1 | -1, limit: number, n: number): number {
  let here = rise(start);
  for (let i = start; Math.abs(i - start) < n / 2; i += step) {
    const next = rise(i + step);
    if ((next - limit) * step <= 0) {
      const share = here === next ? 0 : (here - limit) / (here - next);
      return i + step * Math.max(0, Math.min(1, share));
    }
    here = next;
  }
  return start;
}

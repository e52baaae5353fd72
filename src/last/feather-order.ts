import { axisEnds } from "./axis.ts";
import { closedArc, resampleClosed } from "./closed-curve.ts";
import type { FoundFeather } from "./feather.ts";
import type { FeatherLine, Side } from "./last.ts";

/** Points of a feather line: about every 1.2 mm. */
const featherPoints = 480;

/**
 * Puts a line that runs counter-clockwise from above, told in the last's frame, into the order of {@link FeatherLine}: even steps,
 * from the seat point over the medial side to the toe point and back.
 */
export function orderFeather({ points, confidence }: Pick<FoundFeather, "points" | "confidence">, side: Side): FeatherLine {
  const ends = axisEnds(points, [1, 0, 0]);
  const arc = closedArc(points);
  const at = (index: number): number => {
    const i = Math.min(Math.floor(index), arc.length - 2);
    return arc[i]! + (index - i) * (arc[i + 1]! - arc[i]!);
  };
  const even = resampleClosed(points, confidence, featherPoints, at(ends.seat));
  const total = arc[arc.length - 1]!;
  const share = (((at(ends.toe) - at(ends.seat)) / total) % 1 + 1) % 1;
  // Medial is on the left (+y) of a right last: counter-clockwise leaves the seat on the other side, so turn it round.
  const turned = side === "right" ? reversed(even.points, even.values) : even;
  const toeNear = featherPoints * (side === "right" ? 1 - share : share);
  return { points: turned.points, confidence: turned.values, toeIndex: onAxis(turned.points, toeNear) };
}

/** The same ring the other way round, from the same first point. */
function reversed(points: Float64Array, values: Float64Array): { points: Float64Array; values: Float64Array } {
  const n = values.length;
  const out = { points: new Float64Array(3 * n), values: new Float64Array(n) };
  for (let i = 0; i < n; i++) {
    const k = (n - i) % n;
    out.values[i] = values[k]!;
    out.points.set(points.subarray(3 * k, 3 * k + 3), 3 * i);
  }
  return out;
}

/** The index, near one given, at which the line crosses y = 0 exactly. */
export function onAxis(points: Float64Array, near: number): number {
  const y = (i: number): number => points[3 * i + 1]!;
  const first = Math.round(near);
  for (let k = 0; k < 12; k++)
    for (const i of [first - k - 1, first + k]) {
      if (y(i) === 0) return i;
      if (y(i) > 0 !== y(i + 1) > 0) return i + y(i) / (y(i) - y(i + 1));
    }
  return near;
}

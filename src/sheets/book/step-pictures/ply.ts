import { offsetEdge } from "#plane/edge-offset.ts";
import type { Xy } from "./sketch.ts";

/** The closed outline of a sheet cut across, flat x y …: its middle line, and how thick it is at each of its points. */
export function plyOf(middle: readonly Xy[], thickMm: number | ((i: number) => number)): number[] {
  const line = { xy: Float64Array.from(middle.flat()) };
  const half = Float64Array.from(middle, (_, i) => (typeof thickMm === "number" ? thickMm : thickMm(i)) / 2);
  const right = offsetEdge(line, half).xy, left = offsetEdge(line, half.map((v) => -v)).xy;
  const back: number[] = [];
  for (let i = left.length - 2; i >= 0; i -= 2) back.push(left[i]!, left[i + 1]!);
  return [...right, ...back];
}

/** Points of an arc about a centre, from one angle to another, degrees. */
export function arcPoints([cx, cy]: Xy, radius: number, fromDeg: number, toDeg: number, parts = 8): readonly Xy[] {
  return Array.from({ length: parts + 1 }, (_, k): Xy => {
    const a = ((fromDeg + ((toDeg - fromDeg) * k) / parts) * Math.PI) / 180;
    return [cx + radius * Math.cos(a), cy + radius * Math.sin(a)];
  });
}

/** Points of a straight way, both ends and some between. */
export const straightPoints = (from: Xy, to: Xy, parts = 4): readonly Xy[] => Array.from({ length: parts + 1 }, (_, k): Xy => [from[0] + ((to[0] - from[0]) * k) / parts, from[1] + ((to[1] - from[1]) * k) / parts]);

/** A line with all its lengths times a scale. */
export const scaled = (xy: ArrayLike<number>, scale: number): number[] => Array.from(xy, (v) => scale * v);

/** The same of a single point. */
export const scaledPoint = ([x, y]: Xy, scale: number): Xy => [scale * x, scale * y];

import type { Outline } from "#plane/outline.ts";
import type { Column, LoftShape } from "./loft-shape.ts";

/** Heights tried on a wall for where it stands out most. */
const tried = 14;

/**
 * Where the wall at one column is seen from above, on a side: writes x and y to `out`. It is the point that lies farthest out square to
 * the outline, whose direction is that of an ellipse at the rounded ends; by trial at even heights up to two and a half times where walls
 * usually stand out most, and the parabola through the best three.
 */
export function planPointInto(out: Float64Array, shape: LoftShape, column: Column, side: 1 | -1): void {
  const p = new Float64Array(3);
  const top = Math.min(shape.top(column), 2.5 * column.standOutAt);
  const ny = side * Math.sqrt(column.ends);
  const nx = Math.sqrt(1 - column.ends) * (column.x > shape.numbers.lengthMm / 2 ? 1 : -1);
  const outward = (w: number): number => {
    shape.wallInto(p, 0, column, w, side);
    return nx * p[0]! + ny * p[1]!;
  };
  const step = top / tried;
  let [best, most] = [0, -Infinity];
  for (let k = 0; k <= tried; k++) {
    const here = outward(k * step);
    if (here > most) [best, most] = [k, here];
  }
  let w = best * step;
  if (best > 0 && best < tried) {
    const [a, c] = [outward(w - step), outward(w + step)];
    const bend = a - 2 * most + c;
    if (bend < 0) w -= (step * (c - a)) / (2 * bend);
  }
  shape.wallInto(p, 0, column, w, side);
  out[0] = p[0]!;
  out[1] = p[1]!;
}

/** Height of the lowest point of the bottom in one column. */
export function lowestOf(shape: LoftShape, column: Column): number {
  const p = new Float64Array(3);
  const { middle, half } = shape.outline(column);
  let low = Infinity;
  for (let k = -4; k <= 4; k++) {
    shape.bottomInto(p, 0, column, middle + (half * k) / 4);
    low = Math.min(low, p[2]!);
  }
  return low;
}

/** Silhouette from above, counter-clockwise from the seat point along −y; x from the seat point. */
export function planSilhouette(shape: LoftShape): Outline {
  return around(shape, (out, column, side) => planPointInto(out, shape, column, side === "low" ? -1 : 1));
}

/** Silhouette from the side, toe at greater x, counter-clockwise; heights over the ground. Rounds the back only as columns do. */
export function sideSilhouette(shape: LoftShape): Outline {
  const p = new Float64Array(3);
  const front = around(shape, (out, column, side) => {
    shape.wallInto(p, 0, column, shape.top(column), 1);
    out[0] = side === "low" ? column.x : p[0]!;
    out[1] = side === "low" ? lowestOf(shape, column) : p[2]!;
  });
  const back = shape.column(0);
  const top = shape.top(back);
  const curve: number[] = [];
  for (let k = 30; k > 0; k--) {
    shape.wallInto(p, 0, back, (top * k) / 30, 1);
    curve.push(p[0]!, p[2]!);
  }
  return { xy: Float64Array.from([...front.xy, ...curve]) };
}

function around(shape: LoftShape, pointInto: (out: Float64Array, column: Column, side: "low" | "high") => void): Outline {
  const steps = 90;
  const { lengthMm } = shape.numbers;
  const p = new Float64Array(2);
  const low: number[] = [];
  const high: number[] = [];
  for (let i = 0; i <= steps; i++) {
    const q = i / steps;
    const column = shape.column(lengthMm * q * q * (3 - 2 * q));
    pointInto(p, column, "low");
    low.push(p[0]!, p[1]!);
    pointInto(p, column, "high");
    high.unshift(p[0]!, p[1]!);
  }
  return { xy: Float64Array.from([...low, ...high]) };
}

import type { Sheet } from "#wrap/sheet.ts";
import type { Unsettled } from "./settled.ts";

/** The triangle of largest principal stretch, where that is beyond what the sheet bears. */
export function tornAt(most: Float64Array, breakStretch: number): Unsettled | undefined {
  let triangle = 0;
  for (let t = 1; t < most.length; t++) if (most[t]! > most[triangle]!) triangle = t;
  return most[triangle]! > breakStretch ? { what: "torn", triangle, stretch: most[triangle]! } : undefined;
}

/** The point that has gone farthest from its start, x y z … of all points, where that is farther than it may. */
export function awayFrom(x: Float64Array, start: Float64Array, farthestMm: number, { pointOf }: Pick<Sheet, "pointOf">): Unsettled | undefined {
  let point = 0, most = 0;
  for (let i = 0; i < x.length; i += 3) {
    const square = (x[i]! - start[i]!) ** 2 + (x[i + 1]! - start[i + 1]!) ** 2 + (x[i + 2]! - start[i + 2]!) ** 2;
    if (square > most) [point, most] = [i / 3, square];
  }
  return most > farthestMm * farthestMm ? { what: "away", vertex: pointOf.indexOf(point), byMm: Math.sqrt(most) } : undefined;
}

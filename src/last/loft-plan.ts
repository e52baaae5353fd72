import { form, toeWall, type LoftNumbers } from "./loft-numbers.ts";
import { LoftShape } from "./loft-shape.ts";
import type { LastMeasurements } from "./measured.ts";

/** Stick length at which all scales are 1. */
const baseLength = 253;

/**
 * Meets everything that does not depend on the girths: stick length, ball and seat width, heel height, toe spring, and the tread on
 * the ground. Each is worked out on the form itself in turn; four rounds settle them far below 0.01 mm.
 */
export function plannedNumbers(m: LastMeasurements): LoftNumbers {
  const scale = m.stickLengthMm / baseLength;
  const broad = m.ballWidthMm / 76;
  let numbers: LoftNumbers = {
    toe: m.toe,
    lengthMm: m.stickLengthMm - 6,
    ballScale: broad,
    seatScale: m.seatWidthMm / 52,
    heelHeightMm: m.heelHeightMm,
    toeSpringMm: m.toeSpringMm,
    treadMm: 2,
    backScale: scale,
    rise: [broad, broad, (broad + scale) / 2],
    fullnessMm: [0, 0, 0],
    shankMm: 0,
    squareness: [0, 0, 0, 0],
  };
  for (let round = 0; round < 4; round++) numbers = widthsMet(lengthMet(numbers, m), m);
  return standing(numbers);
}

/** Length between the feather points so that heel bulge and toe overhang make it up to the stick length. */
export function lengthMet(numbers: LoftNumbers, m: LastMeasurements): LoftNumbers {
  const shape = new LoftShape(numbers);
  return { ...numbers, lengthMm: m.stickLengthMm - shape.heelBulge - toeOverhang(shape) };
}

/** Scales ball and seat so that both widths are as asked. */
export function widthsMet(numbers: LoftNumbers, m: LastMeasurements): LoftNumbers {
  const { ball, seat } = widthsOf(new LoftShape(numbers));
  return { ...numbers, ballScale: (numbers.ballScale * m.ballWidthMm) / ball, seatScale: (numbers.seatScale * m.seatWidthMm) / seat };
}

/** Lets the tread down, or lifts it, until the lowest point of the bottom is on the ground. */
export function standing(numbers: LoftNumbers): LoftNumbers {
  let now = numbers;
  for (let round = 0; round < 6; round++) now = { ...now, treadMm: now.treadMm - lowest(new LoftShape(now)) };
  return now;
}

/** Greatest width of the bottom at the joints and at the seat, as {@link import("./measure.ts").measureLast} takes them. */
export function widthsOf(shape: LoftShape): { readonly ball: number; readonly seat: number } {
  const { lengthMm } = shape.numbers;
  const y = (x: number, side: 1 | -1): number => {
    const { middle, half } = shape.outline(shape.column(x));
    return half + side * middle;
  };
  const greatest = (from: number, to: number, side: 1 | -1): number => {
    let best = from;
    for (let x = from; x <= to; x += 1) if (y(x, side) > y(best, side)) best = x;
    const [a, b, c] = [y(best - 1, side), y(best, side), y(best + 1, side)];
    const bend = a - 2 * b + c;
    return best > from && best + 1 <= to && bend < 0 ? b - (a - c) ** 2 / (8 * bend) : b;
  };
  const across = (from: number, to: number): number => greatest(from * lengthMm, to * lengthMm, 1) + greatest(from * lengthMm, to * lengthMm, -1);
  return { ball: across(0.5, 0.93), seat: across(0.01, 0.25) };
}

/** How far the toe wall stands out before the toe point. */
function toeOverhang(shape: LoftShape): number {
  const { lengthMm } = shape.numbers;
  const p = new Float64Array(3);
  let most = 0;
  for (let q = 0; q <= 1; q += 0.01) {
    const column = shape.column(lengthMm - toeWall.noseLength * q * q);
    shape.wallInto(p, 0, column, column.ridge, 1);
    most = Math.max(most, p[0]! - lengthMm);
  }
  return most;
}

function lowest(shape: LoftShape): number {
  const { lengthMm } = shape.numbers;
  const p = new Float64Array(3);
  const steps = 20 * form.spans;
  let low = Infinity;
  for (let i = 0; i <= steps; i++) {
    const column = shape.column((lengthMm * i) / steps);
    const { middle, half } = shape.outline(column);
    for (let k = -4; k <= 4; k++) {
      shape.bottomInto(p, 0, column, middle + (half * k) / 4);
      low = Math.min(low, p[2]!);
    }
  }
  return low;
}

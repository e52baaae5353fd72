import type { FittedModel } from "./fit-model.ts";
import { stripWays, type StripWay } from "./leather.ts";
import { logStretch, modelSize, numbersOf } from "./strip-model.ts";

/** A stretch with the band it lies in nine times of ten; shares. */
export interface Banded {
  readonly stretch: number;
  readonly low: number;
  readonly high: number;
}

/** Pull (N per mm of width, rising from 0) and the stretch it gives, for one way; arrays of one length. */
export interface StripCurve {
  readonly way: StripWay;
  readonly pull: Float64Array;
  readonly stretch: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Below the lightest load nothing was read, and there the slopes overshoot: they know no end of a soft beginning. The band keeps the share
 * that it has at that load, taken as 2 to 6 N on 20 mm and as 3 N without readings; N per mm.
 */
const shareFrom = ({ lightest = 3 / 20 }: FittedModel): number => Math.max(2 / 20, Math.min(lightest, 6 / 20));
/** Half of the band of nine in ten, in standard deviations of a normal spread. */
const ninety = 1.645;

/** How the logarithm of a strip's stretch answers to each of the model's numbers, by central differences. */
function slopes(model: Float64Array, way: StripWay, pull: number): Float64Array {
  const h = 1e-4;
  return Float64Array.from({ length: modelSize }, (_, i) => {
    const more = model.slice(), less = model.slice();
    more[i] = model[i]! + h;
    less[i] = model[i]! - h;
    return (logStretch(numbersOf(more), way, pull) - logStretch(numbersOf(less), way, pull)) / (2 * h);
  });
}

function product(covariance: Float64Array, a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < modelSize; i++) for (let j = 0; j < modelSize; j++) sum += a[i]! * b[j]! * covariance[i * modelSize + j]!;
  return sum;
}

/** Covariance of the logarithms of the stretch along, across and at 45 degrees under one pull: 3 × 3, row by row. */
export function stretchCovariance({ model, covariance }: FittedModel, pull: number): Float64Array {
  const of = stripWays.map((way) => slopes(model, way, pull));
  return Float64Array.from({ length: 9 }, (_, i) => product(covariance, of[Math.floor(i / 3)]!, of[i % 3]!));
}

/** Stretch of a strip under a pull in N per mm of width, with its band. */
export function bandedStretch(fitted: FittedModel, way: StripWay, pull: number): Banded {
  const { model, covariance } = fitted;
  const slope = slopes(model, way, Math.max(pull, shareFrom(fitted)));
  const middle = logStretch(numbersOf(model), way, pull);
  const half = ninety * Math.sqrt(product(covariance, slope, slope));
  return { stretch: Math.exp(middle), low: Math.exp(middle - half), high: Math.exp(middle + half) };
}

/** The curve of one way up to `most` N per mm of width; closer steps at the beginning, where it bends most. */
export function curveOf(fitted: FittedModel, way: StripWay, most: number, steps = 48): StripCurve {
  const pull = Float64Array.from({ length: steps + 1 }, (_, i) => most * (i / steps) ** 2);
  const rows = Array.from(pull, (p) => (p > 0 ? bandedStretch(fitted, way, p) : { stretch: 0, low: 0, high: 0 }));
  const column = (key: keyof Banded): Float64Array => Float64Array.from(rows, (row) => row[key]);
  return { way, pull, stretch: column("stretch"), low: column("low"), high: column("high") };
}

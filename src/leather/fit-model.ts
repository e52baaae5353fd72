import { covarianceAt, leastSquares, type LeastSquaresProblem } from "#solve/least-squares.ts";
import { firmPull, knownNumbers, knownSpread, usualEarly, usualToe } from "./known-leathers.ts";
import type { KnownLeather, StripWay } from "./leather.ts";
import { logStretch, modelSize, numbersOf, usualSlip } from "./strip-model.ts";
import { thicker } from "./toe-law.ts";
import { stretchAt } from "./uniaxial.ts";

/** One reading as the fit sees it: pull in N per mm of width, lengths in mm. */
export interface ModelReading {
  /** Which strip it was read on, counted from 0; its marks are as far apart as they are for all its readings. */
  readonly strip: number;
  readonly way: StripWay;
  readonly pull: number;
  readonly gauge: number;
  readonly length: number;
}

export interface FittedModel {
  /** See src/leather/strip-model.ts. */
  readonly model: Float64Array;
  /** Covariance of the model's numbers, row by row. */
  readonly covariance: Float64Array;
  /** How far each strip's marks are found to lie farther apart than they were read, mm. */
  readonly slips: Float64Array;
  /** The lightest pull that was read, N per mm; nothing without readings. */
  readonly lightest?: number;
}

/** Standard deviation of a length read with a rule, and of the length between the marks as drawn, mm. */
const readingError = 0.5;
const markError = 0.3;
/** Of the pull, as a share: filling of the bottles and width of the strip. */
const pullError = 0.03;

/** Deviations of what strips tell least well: log of the stiffness in slip, of the toe, log odds of the early share. Ours. */
export const slipDeviation = 0.5;
const toeDeviation = 1.2;
const earlyDeviation = 2;
const priors = 5;

/**
 * The numbers that agree best with the readings and with what is usual for such a leather, each weighed by how sure it is (maximum a
 * posteriori), and their covariance there. Without readings: what is usual, with its wide band.
 * @param thick how many times as thick as usual it is; it is expected to resist in proportion
 */
export function fitModel(readings: readonly ModelReading[], known: KnownLeather, thick = 1): FittedModel {
  const strips = readings.reduce((most, { strip }) => Math.max(most, strip + 1), 0);
  const usual = thicker(knownNumbers(known), thick);
  const start = new Float64Array(modelSize + strips);
  start.set([Math.log(usual.along), Math.log(usual.across), Math.log(usualSlip(usual.along, usual.across)), Math.log(usual.toe), odds(usual.early)]);
  const scales = new Float64Array(modelSize + strips).fill(0.3).fill(markError, modelSize);
  const prior = priorOf(known, thick);
  const problem: LeastSquaresProblem = {
    start,
    scales,
    residuals: priors + strips + readings.length,
    residualsInto: (x, out) => {
      prior(x, out);
      for (let s = 0; s < strips; s++) out[priors + s] = x[modelSize + s]! / markError;
      const numbers = numbersOf(x);
      readings.forEach((r, i) => {
        const length = (r.gauge + x[modelSize + r.strip]!) * stretchAt(numbers, r.way, r.pull);
        out[priors + strips + i] = (length - r.length) / deviationOf(r);
      });
    },
  };
  const x = leastSquares(problem);
  const all = covarianceAt(problem, x);
  const n = modelSize + strips;
  const covariance = new Float64Array(modelSize * modelSize);
  for (let i = 0; i < modelSize; i++) for (let j = 0; j < modelSize; j++) covariance[i * modelSize + j] = all[i * n + j]!;
  return { model: x.slice(0, modelSize), covariance, slips: x.slice(modelSize), ...(readings.length > 0 && { lightest: Math.min(...readings.map(({ pull }) => pull)) }) };
}

/** Standard deviation of a length as read, mm. A strip past its soft beginning stretches by less than in proportion to the pull. */
export function deviationOf({ gauge, length }: ModelReading): number {
  return Math.hypot(readingError, pullError * Math.max(0, length - gauge));
}

/** Writes how far a model lies from what is usual, each in its own standard deviation: five numbers. */
function priorOf(known: KnownLeather, thick: number): (x: Float64Array, out: Float64Array) => void {
  const usual = thicker(knownNumbers(known), thick);
  const pull = firmPull * thick;
  const { common, own } = knownSpread(known);
  const along = logStretch(usual, "along", pull), across = logStretch(usual, "across", pull);
  const sum = Math.sqrt(2 * own * own + 4 * common * common), difference = Math.SQRT2 * own;
  return (x, out) => {
    const numbers = numbersOf(x);
    const byAlong = logStretch(numbers, "along", pull), byAcross = logStretch(numbers, "across", pull);
    const more1 = byAlong - along, more2 = byAcross - across;
    out[0] = (more1 + more2) / sum;
    out[1] = (more1 - more2) / difference;
    out[2] = (x[2]! - Math.log(usualSlip(numbers.along, numbers.across))) / slipDeviation;
    out[3] = (x[3]! - Math.log(usualToe) - byAlong) / toeDeviation;
    out[4] = (x[4]! - odds(usualEarly)) / earlyDeviation;
    for (let i = 0; i < priors; i++) out[i] = yielding(out[i]!);
  };
}

/**
 * A deviation that counts in full where it is small and ever less where it is large, as of a t distribution with four degrees of freedom
 * (Lange, Little and Taylor, J. Am. Stat. Assoc. 84 (1989) 881; from memory): a leather unlike all known ones is believed when strips say so.
 */
function yielding(z: number): number {
  return Math.sign(z) * Math.sqrt(4 * Math.log(1 + (z * z) / 4));
}

const odds = (share: number): number => Math.log(share / (1 - share));

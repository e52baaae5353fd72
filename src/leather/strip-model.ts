// What the strips are fitted with: five numbers that can take any value and always make a possible leather.
import type { StripWay } from "./leather.ts";
import type { LeatherNumbers } from "./toe-law.ts";
import { stretchAt } from "./uniaxial.ts";

/** How many: logarithms of the stiffness along, across and in slip, of the toe, and the log odds of the early share. */
export const modelSize = 5;

/**
 * How much a strip gets narrower, the two ways taken together: √(ν₁₂ ν₂₁). Below 1 for every possible leather; no reading of a strip's
 * length tells it. From memory: figures for leather run from 0.3 to 0.6.
 */
export const narrowing = 0.35;

/** Narrowing of a strip along, so that both ways together come to {@link narrowing}: ν₁₂ = ν̄ √(k₁/k₂), always possible. */
const poissonFor = (along: number, across: number): number => narrowing * Math.sqrt(along / across);

/** Stiffness at 45 degrees for a stiffness in slip; 4/k₄₅ = 1/G + 1/k₁ + 1/k₂ − 2ν/k₁. */
const biasFor = (along: number, across: number, slip: number): number => 4 / (1 / slip + 1 / along + 1 / across - (2 * poissonFor(along, across)) / along);

/** The stiffest that a strip at 45 degrees can be beside the other two, with a fiftieth of room: its stiffness in slip would have no end. */
export const stiffestBias = (along: number, across: number, poisson: number): number => 0.98 * (4 / (1 / along + 1 / across - (2 * poisson) / along));

/** The usual stiffness in slip of a sheet whose two ways are known: G = √(k₁k₂)/(2(1 + ν̄)) (Huber 1923; from memory). */
export const usualSlip = (along: number, across: number): number => Math.sqrt(along * across) / (2 * (1 + narrowing));

export function numbersOf(model: ArrayLike<number>): LeatherNumbers {
  const along = Math.exp(model[0]!), across = Math.exp(model[1]!), slip = Math.exp(model[2]!);
  return { along, across, bias: biasFor(along, across, slip), poisson: poissonFor(along, across), toe: Math.exp(model[3]!), early: 1 / (1 + Math.exp(-model[4]!)) };
}

/** The numbers of a leather whose strips along and across stretch by so much under `pull` (N per mm); the rest is as usual. */
export function numbersGiving(stretch: { readonly along: number; readonly across: number }, pull: number, toe: number, early: number): LeatherNumbers {
  const along = stiffnessGiving(stretch.along, pull, toe, early);
  const across = stiffnessGiving(stretch.across, pull, toe, early, along);
  return { along, across, bias: biasFor(along, across, usualSlip(along, across)), poisson: poissonFor(along, across), toe, early };
}

/** Stiffness k with which a strip stretches by so much under `pull`; `along` where that is another way's. */
export function stiffnessGiving(stretch: number, pull: number, toe: number, early: number, along?: number): number {
  const e = stretch + 0.5 * stretch * stretch;
  const of = (k: number): number => (1 + stretch) * k * e * (1 - ((1 - early) * toe) / Math.sqrt((k / (along ?? k)) * e * e + toe * toe));
  let low = pull / ((1 + stretch) * e), high = low / early;
  for (let round = 0; round < 60; round++) {
    const middle = Math.sqrt(low * high);
    if (of(middle) < pull) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/** Logarithm of the stretch (0.1 is 10 %) of a strip under a pull in N per mm of its width. */
export const logStretch = (numbers: LeatherNumbers, way: StripWay, pull: number): number => Math.log(stretchAt(numbers, way, pull) - 1);

/** Ten digits of each number, so that logarithms, which differ in their last digit between machines, do not show. */
export function alike({ along, across, bias, poisson, toe, early }: LeatherNumbers): LeatherNumbers {
  const ten = (value: number): number => Number(value.toPrecision(10));
  return { along: ten(along), across: ten(across), bias: ten(bias), poisson: ten(poisson), toe: ten(toe), early: ten(early) };
}

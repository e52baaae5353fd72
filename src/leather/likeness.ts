import { firmPull, knownNumbers, knownSpread } from "./known-leathers.ts";
import { knownLeathers, type KnownLeather } from "./leather.ts";
import { logStretch } from "./strip-model.ts";
import type { LeatherNumbers } from "./toe-law.ts";

/** What a leather is like among those that are known, by how much strips give under a firm pull by hand. */
export interface Likeness {
  readonly nearest: KnownLeather;
  /** How many times as much as the leather it was said to be like it gives along and across. */
  readonly along: number;
  readonly across: number;
  /** It lies outside of what such a leather usually does: beyond nine in ten. */
  readonly unlike: boolean;
}

export function likenessOf(numbers: LeatherNumbers, said: KnownLeather): Likeness {
  const own = { along: logStretch(numbers, "along", firmPull), across: logStretch(numbers, "across", firmPull) };
  const beside = (known: KnownLeather): { readonly along: number; readonly across: number; readonly far: number } => {
    const usual = knownNumbers(known);
    const along = own.along - logStretch(usual, "along", firmPull), across = own.across - logStretch(usual, "across", firmPull);
    return { along, across, far: Math.hypot(along, across) };
  };
  const { along, across } = beside(said);
  // The kind she named wins where another is no nearer.
  const nearest = knownLeathers.reduce((best, known) => (beside(known).far < beside(best).far - 1e-9 ? known : best), said);
  const { common, own: alone } = knownSpread(said);
  const half = 1.645 * Math.hypot(common, alone);
  return { nearest, along: Math.exp(along), across: Math.exp(across), unlike: Math.abs(along) > half || Math.abs(across) > half };
}

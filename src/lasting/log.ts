import type { Side } from "#last/last.ts";

/** What was measured on one shoe after lasting; what was not measured is left out. Lengths as a tape lies, mm. */
export interface Measured {
  readonly throatDepthMm?: number;
  readonly backHeightMm?: number;
  /** At the lowest place of each side. */
  readonly innerHeightMm?: number;
  readonly outerHeightMm?: number;
  /** Lasting margin left inside the feather line, by number of the draft. */
  readonly marginsMm?: Readonly<Record<string, number>>;
  /** How far the sole stands out, and the height of the heel. */
  readonly soleMarginMm?: number;
  readonly heelHeightMm?: number;
}

/** One shoe of the log, with what it was made from and what had been foretold of it when it was written down. */
export interface ShoeEntry {
  /** 1 for the first pair that is written down, and so on. */
  readonly pair: number;
  readonly side: Side;
  readonly last: string;
  readonly leather: string;
  readonly measured: Measured;
  /** The throat as it was foretold, and by how much it moves for a leather that gives a tenth more, mm. */
  readonly foretold?: { readonly throatDepthMm: number; readonly perTenthMm: number };
  readonly note?: string;
}

// What a strip, its loads and its lengths can be: one set of limits for tables, for fields and for what is found later.
import { knownFigures } from "./known-leathers.ts";
import type { KnownLeather } from "./leather.ts";

export interface Limits {
  readonly least: number;
  readonly most: number;
}

/** Width of a strip, and the length between its marks before any load, mm. */
export const stripWidths: Limits = { least: 4, most: 100 };
export const stripGauges: Limits = { least: 20, most: 500 };

/** What a reading may be short of before it counts as wrong: three times what a rule is misread by, mm. */
export const slack = 1.5;
/** A length after a minute may be read so much longer than the one under load, mm. */
const afterSlack = 0.5;
/** More than any upper leather bears, N per mm of width: 25 N/mm² on 2 mm. */
const mostPull = 50;

/** Loads in N that a strip of this width bears; above `least`, below `most`. */
export const loadsOn = (widthMm: number): Limits => ({ least: 0, most: mostPull * widthMm });

/** Lengths between the marks under load, mm: not shorter than without, and not beyond where the last of such leathers tears. */
export const lengthsOf = (gaugeMm: number, known: KnownLeather): Limits => ({ least: gaugeMm - slack, most: gaugeMm * (1 + knownFigures[known].breaks[1]) });

/** Lengths between the marks a minute after the load is off, mm. */
export const aftersOf = (gaugeMm: number, lengthMm: number): Limits => ({ least: gaugeMm - slack, most: lengthMm + afterSlack });

/** Whether a length is so short that it must be by how much the strip grew. */
export const isGrowth = (gaugeMm: number, lengthMm: number): boolean => lengthMm < 0.6 * gaugeMm;

// Strips as someone with a rule would read them, of leathers that are known exactly.
import { chance } from "#base/seeded.ts";
import { stripWays, type Strip, type StripWay } from "#leather/leather.ts";
import type { LeatherNumbers } from "#leather/toe-law.ts";
import { stretchAt } from "#leather/uniaxial.ts";

export interface Reader {
  /** Standard deviation of a length read, and of the length between the marks as drawn, mm. */
  readonly errorMm: number;
  readonly markErrorMm?: number;
  readonly seed: number;
  readonly widthMm?: number;
  readonly gaugeMm?: number;
  /** How often each length is read. */
  readonly times?: number;
  readonly loadsN?: readonly number[];
  readonly ways?: readonly StripWay[];
}

export function readStrips(truth: LeatherNumbers, reader: Reader): Strip[] {
  const { errorMm, markErrorMm = 0, seed, widthMm = 20, gaugeMm = 100, times = 1, loadsN = [5, 10, 15, 20, 30], ways = stripWays } = reader;
  const { normal } = chance(seed);
  return ways.map((way) => {
    const between = gaugeMm + markErrorMm * normal();
    const loads = loadsN.flatMap((load) => new Array<number>(times).fill(load));
    return { way, widthMm, gaugeMm, readings: loads.map((loadN) => ({ loadN, lengthMm: between * stretchAt(truth, way, loadN / widthMm) + errorMm * normal() })) };
  });
}

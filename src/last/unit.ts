import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Placement } from "./last.ts";

export type FileUnit = Placement["unit"];

/** File units in one millimetre. */
export const unitPerMm: Readonly<Record<FileUnit, number>> = { m: 0.001, dm: 0.01, cm: 0.1, mm: 1, in: 1 / 25.4 };

/** Adults' lasts are 180 … 330 mm long (range of the trade); beyond it down to a child's and up to a giant's still a last. */
const usualMm = [180, 330] as const;
const possibleMm = [120, 400] as const;
const middleMm = 250;

export const isLastsLength = (mm: number): boolean => mm >= possibleMm[0] && mm <= possibleMm[1];

/** Whether a scan of this extent is a last in some unit, without a word of the maker's. */
export const hasUnit = (length: number): boolean => Object.values(unitPerMm).some((per) => isLastsLength(length / per));

export interface UnitGuess {
  readonly unit: FileUnit;
  readonly unitPerMm: number;
  /** Another unit in which the length would be possible, if there is one. */
  readonly other: FileUnit | undefined;
}

/**
 * The unit in which the longest extent of the scan is that of a last. STL, PLY and OBJ carry no unit, so the length is all
 * there is to go by: of the units that make it 120 … 400 mm long the one nearest to 250 mm; or, where the maker has measured
 * her last, the one nearest to that, whatever it is.
 * @param length along the long axis, in the file's own unit
 * @param saidMm the stick length by the maker's own rule
 * @throws Refusal when no unit makes a last of it
 */
export function guessUnit(length: number, saidMm?: number): UnitGuess {
  const units = Object.keys(unitPerMm) as FileUnit[];
  const asMm = (u: FileUnit): number => length / unitPerMm[u];
  const middle = saidMm ?? middleMm;
  const far = (u: FileUnit): number => Math.max(asMm(u) / middle, middle / asMm(u));
  const nearest = [...units].sort((a, b) => far(a) - far(b));
  if (saidMm !== undefined) return { unit: nearest[0]!, unitPerMm: unitPerMm[nearest[0]!], other: undefined };
  const possible = nearest.filter((u) => isLastsLength(asMm(u)));
  const best = possible[0];
  if (best === undefined) throw new Refusal(finding("last-size-absurd", { length, asMm: asMm(nearest[0]!) }));
  return { unit: best, unitPerMm: unitPerMm[best], other: possible[1] };
}

/** What to say of the unit, once the length is measured exactly. */
export function unitFinding({ unit, other }: UnitGuess, lengthMm: number): Finding {
  if (lengthMm < usualMm[0] || lengthMm > usualMm[1]) return finding("last-unusual-length", { unit, lengthMm });
  if (other !== undefined) return finding("unit-doubtful", { unit, lengthMm, other, otherMm: (lengthMm * unitPerMm[unit]) / unitPerMm[other] });
  return finding("unit-read", { unit, lengthMm });
}

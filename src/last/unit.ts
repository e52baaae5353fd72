import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Placement } from "./last.ts";

export type FileUnit = Placement["unit"];

/** File units in one millimetre. */
export const unitPerMm: Readonly<Record<FileUnit, number>> = { m: 0.001, dm: 0.01, cm: 0.1, mm: 1, in: 1 / 25.4 };

/** Adults' lasts are 180 … 330 mm long (range of the trade); beyond it down to a child's and up to a giant's still a last. */
const usualMm = [180, 330] as const;
const possibleMm = [100, 400] as const;
const middleMm = 250;

export interface UnitGuess {
  readonly unit: FileUnit;
  readonly unitPerMm: number;
  readonly findings: readonly Finding[];
}

/**
 * The unit in which the longest extent of the scan is that of a last. STL, PLY and OBJ carry no unit, so the length is all
 * there is to go by. One unit with a usual length wins; of several possible ones the nearest to 250 mm, which is said.
 * @param length along the long axis, in the file's own unit
 * @throws Refusal when no unit makes a last of it
 */
export function guessUnit(length: number): UnitGuess {
  const units = Object.keys(unitPerMm) as FileUnit[];
  const asMm = (u: FileUnit): number => length / unitPerMm[u];
  const far = (u: FileUnit): number => Math.max(asMm(u) / middleMm, middleMm / asMm(u));
  const possible = units.filter((u) => asMm(u) >= possibleMm[0] && asMm(u) <= possibleMm[1]).sort((a, b) => far(a) - far(b));
  const best = possible[0];
  if (best === undefined) throw new Refusal(finding("last-size-absurd", { length, asMm: asMm(units.sort((a, b) => far(a) - far(b))[0]!) }));
  const lengthMm = asMm(best);
  const usual = lengthMm >= usualMm[0] && lengthMm <= usualMm[1];
  const other = possible[1];
  const findings: Finding[] = [];
  if (!usual) findings.push(finding("last-unusual-length", { unit: best, lengthMm }));
  else if (other !== undefined) findings.push(finding("unit-doubtful", { unit: best, lengthMm, other, otherMm: asMm(other) }));
  else findings.push(finding("unit-read", { unit: best, lengthMm }));
  return { unit: best, unitPerMm: unitPerMm[best], findings };
}

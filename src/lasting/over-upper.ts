import type { Half } from "#lines/feather.ts";
import type { BeneathRow } from "#shell/girths.ts";
import { endNames, type Asked, type EndName, type Measured } from "./log.ts";

/** By how much a tape over the lasted upper reads more than on the bare last, mm; sides at their lowest place. */
export interface OverUpper {
  readonly throatMm: number;
  readonly backMm: number;
  readonly lowestMm: Readonly<Record<Half, number>>;
}

export function overUpperOf(rows: readonly BeneathRow[]): OverUpper {
  const more = (key: BeneathRow["key"], half?: Half): number =>
    rows.filter((row) => row.key === key && row.half === half).reduce((sum, { tapeMoreMm, overMm, onLastMm }) => sum + (tapeMoreMm ?? overMm - onLastMm), 0);
  return { throatMm: more("centre"), backMm: more("back"), lowestMm: { medial: more("lowest", "medial"), lateral: more("lowest", "lateral") } };
}

/** By the names of the log, to a tenth: no tape reads finer, and it is written down with the shoe. */
export function overByName({ throatMm, backMm, lowestMm: { medial, lateral } }: OverUpper): Readonly<Record<EndName, number>> {
  const tenths = (mm: number): number => Math.round(10 * mm) / 10;
  return { throatDepthMm: tenths(throatMm), backHeightMm: tenths(backMm), innerHeightMm: tenths(medial), outerHeightMm: tenths(lateral) };
}

/** What was read over the lasted upper as it lies on the bare last, where all is asked and foretold. */
export function onBareLast(measured: Measured, over: { readonly [K in EndName]?: number } = {}): Measured {
  const bare = endNames.flatMap((what) => (measured[what] === undefined ? [] : [[what, measured[what] - (over[what] ?? 0)] as const]));
  return { ...measured, ...Object.fromEntries(bare) };
}

/** What was asked on the bare last as a tape reads it over the lasted upper: to a tenth, as it is shown and judged. */
export function askedOver(asked: Asked, over: { readonly [K in EndName]?: number } = {}): Asked {
  return Object.fromEntries(endNames.flatMap((what) => (asked[what] === undefined ? [] : [[what, Math.round(10 * asked[what]) / 10 + (over[what] ?? 0)] as const])));
}

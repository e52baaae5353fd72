import { fitStrips } from "#leather/fit-strips.ts";
import { usualLeather } from "#leather/leather-from.ts";
import type { LeatherSaid, UpperLayer } from "#leather/leather.ts";
import type { StripFit } from "#leather/strip-fit.ts";

/** One leather as it is reckoned with, at the thickness of its strips: by what was read on them, else the known one. */
export const leatherNow = (said: LeatherSaid | undefined, layer: UpperLayer): StripFit => fitStrips({ ...said, known: said?.known ?? usualLeather[layer] });

/** Readings of all its strips. */
export const readingsIn = (said: LeatherSaid | undefined): number => (said?.strips ?? []).reduce((n, s) => n + s.readings.length, 0);

import type { Rule } from "#lines/lines.ts";
import { possible as beneathPossible } from "#shell/possible.ts";
import { bottomPossible } from "./bottom/bottom-possible.ts";
import { liningPossible } from "./lining/possible.ts";

/** Most that any allowance may be at all, mm; a longer part, such as a shank, twice the most that is usual. */
const mostAllowanceMm = 100;

/** A gore without depth has no sides for its elastic to lap. */
const gorePossible = { goreDeepMm: [2, mostAllowanceMm] } as const;

const tables: Readonly<Record<string, readonly [least: number, most: number]>> = { ...gorePossible, ...liningPossible, ...bottomPossible, ...beneathPossible };

/** The least and the most that a number of the pieces may be at all, mm: one range for whoever asks, by the table of its part or else by its rule. */
export const possibleRange = (key: string, rule: Pick<Rule, "min" | "max">): readonly [least: number, most: number] => tables[key] ?? [Math.min(0, rule.min), Math.max(mostAllowanceMm, 2 * rule.max)];

import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Rule } from "#lines/lines.ts";

/** The least and the most that settings may be at all, mm. */
export type Possible<K extends string> = Partial<Readonly<Record<K, readonly [least: number, most: number]>>>;

/** @throws Refusal `piece-setting-impossible` at the first setting that is no number or outside what is possible, by its rule's name */
export function refuseBeyond<K extends string>(possible: Possible<K>, rules: Readonly<Record<K, Pick<Rule, "name">>>, settings: Readonly<Record<K, number>>): void {
  for (const key of Object.keys(possible) as K[]) {
    const value = settings[key], [least, most] = possible[key]!;
    if (!(value >= least && value <= most)) throw new Refusal(finding("piece-setting-impossible", { name: rules[key].name, value, least, most }));
  }
}

import type { Calendar, Stint } from "./calendar.ts";
import { dateWords } from "./dates.ts";

/** Kept on one line: "pair 1 of" and "3" do not part. */
const unbroken = (words: string): string => words.replaceAll(" ", "\u00a0");

/** "pairs 1 and 2 of 5", "pairs 1 to 3 of 5", "pair 5 of 5"; nothing where all of them are meant. */
export function whichPairs({ first, pairs }: Pick<Stint, "first" | "pairs">, all: number): string {
  if (first === undefined || pairs === undefined) return "";
  const last = first + pairs - 1;
  return unbroken(`${pairs === 1 ? `pair ${first}` : `pairs ${first} ${pairs === 2 ? "and" : "to"} ${last}`} of ${all}`);
}

/** What stands behind a step's title: which pairs, and which part where the work is cut. Nothing where all of it is done in one go. */
export function stintWords({ part, parts, ...which }: Stint, all: number): string {
  return [whichPairs(which, all), ...(parts > 1 ? [unbroken(`part ${part} of ${parts}`)] : [])].filter((words) => words !== "").join(", ");
}

/** "Thu 21 January 2027", "Tuesday of week 10": the day; nobody plans a pair to the minute. */
export const readyWords = ({ ready }: Pick<Calendar, "ready">): string => dateWords(ready.date).replace(/^(week \d+), (\p{L}+)$/u, "$2 of $1");

/** "5 pairs on 2 pairs of lasts: what is done on them goes in 3 rounds." Nothing where every pair has its own. */
export function roundsWords({ rounds, lasts }: Calendar, pairs: number): string {
  return rounds === undefined ? "" : `${pairs} pairs on ${lasts === 1 ? "one pair" : `${lasts} pairs`} of lasts: what is done on them goes in ${rounds} rounds.`;
}

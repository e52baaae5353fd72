import type { RefusedNumber } from "../desktop.ts";
import { say } from "./numbers.ts";
import { unusedKeys, unusedWords, type Unused } from "./unused.ts";

/** All numbers that stand in their fields without being those of the work, each with what is told beside it. */
export function refusedNumbers(refused: RefusedNumber | undefined, unused: Unused | undefined, standing: readonly RefusedNumber[] = []): readonly RefusedNumber[] {
  const kept = unused ? unusedKeys(unused).map((key): RefusedNumber => ({ spot: `last ${key}`, sentence: unusedWords(unused, key), text: say(unused.numbers[key]!, 1), kept: true })) : [];
  const first = refused ? [refused, ...kept] : kept;
  return [...first, ...standing.filter((s) => first.every((r) => r.spot !== s.spot))];
}

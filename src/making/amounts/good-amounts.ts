import type { GoodId, Measure } from "../goods.ts";
import { amountWords } from "./units.ts";

/** What is sold for a right and a left shoe together. */
const inPairs: readonly GoodId[] = ["shanks", "fastenings"];

/** An amount of a good in words: as its measure is told, shanks by the pair, and what is counted in whole pieces. */
export function goodAmount(good: GoodId, value: number, measure: Measure): string {
  if (measure !== "count") return amountWords(value, measure);
  const count = Math.ceil(value - 1e-9), pairs = count / 2;
  if (!inPairs.includes(good) || !Number.isInteger(pairs)) return count.toFixed(0);
  return `${pairs} ${pairs === 1 ? "pair" : "pairs"}`;
}

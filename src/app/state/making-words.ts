import { minutesWords } from "#making/amounts/time-words.ts";
import type { Making } from "#making/making.ts";
import { moneyWords } from "#making/amounts/decimal.ts";
import { say } from "./numbers.ts";

/** An amount of money, as bench book and command line tell it too: "12.50 EUR". */
export const money = moneyWords;

/** Minutes as hours and minutes: "40 min", "11 h", "11 h 20 min". */
export const hours = (minutes: number): string => minutesWords(minutes, "\u00a0");

/** The state of the station: "26 things to buy · 58 EUR and 11 h a pair". */
export function makingWords(making: Making | undefined): string {
  if (!making) return " ";
  const { cost, toBuy } = making;
  const things = toBuy.filter((b) => b.short > 0).length;
  const h = `${say(cost.minutes / 60, 0)}\u00a0h`;
  const buy = things === 0 ? "nothing to buy" : things === 1 ? "one thing to buy" : `${things} things to buy`;
  if (cost.lines.every((l) => l.cost === undefined)) return `${buy}, no prices yet · ${h} a pair`;
  const rough = `${say(cost.material, 0)}${cost.currency && "\u00a0"}${cost.currency}`;
  return `${buy} · ${rough} and ${h} a pair`;
}

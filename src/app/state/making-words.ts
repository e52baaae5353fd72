import type { Making } from "#making/making.ts";
import { say } from "./numbers.ts";

/** An amount of money as it is spoken of: whole above a hundred, with cents below. */
export function money(value: number, currency: string): string {
  const amount = say(value, 2);
  const cents = /\.\d$/.test(amount) ? `${amount}0` : amount;
  return currency === "" ? cents : `${currency}\u00a0${cents}`;
}

/** Minutes as hours and minutes: "40 min", "11 h", "11 h 20 min". */
export function hours(minutes: number): string {
  const whole = Math.round(minutes), h = Math.floor(whole / 60), min = whole % 60;
  if (h === 0) return `${min}\u00a0min`;
  return min === 0 ? `${h}\u00a0h` : `${h}\u00a0h ${min}\u00a0min`;
}

/** The state of the station: "26 things to buy · EUR 58 and 11 h a pair". */
export function makingWords(making: Making | undefined): string {
  if (!making) return " ";
  const { cost, toBuy } = making;
  const things = toBuy.filter((b) => b.short > 0).length;
  const h = `${say(cost.minutes / 60, 0)}\u00a0h`;
  const buy = things === 0 ? "nothing to buy" : things === 1 ? "one thing to buy" : `${things} things to buy`;
  if (cost.lines.every((l) => l.cost === undefined)) return `${buy}, no prices yet · ${h} a pair`;
  const rough = `${cost.currency}${cost.currency && "\u00a0"}${say(cost.material, 0)}`;
  return `${buy} · ${rough} and ${h} a pair`;
}

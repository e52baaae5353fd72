import { capital } from "#base/listed.ts";
import type { ToBuy } from "#making/money/cost.ts";
import { outOfWords } from "#making/money/out-of-lining.ts";
import type { Making } from "#making/making.ts";
import type { Need } from "#making/need.ts";
import { amountWords } from "#making/amounts/units.ts";
import { byGoodGroup } from "./good-words.ts";
import { money } from "./making-words.ts";

/** One thing on the list: what a pair takes of it, and what has to be bought for all. */
export interface ListLine {
  readonly good: Need["good"];
  readonly need: Need;
  readonly buy: ToBuy;
}

export function listLines({ needs, toBuy }: Pick<Making, "needs" | "toBuy">): readonly ListLine[] {
  return needs.flatMap((need) => {
    const buy = toBuy.find((b) => b.good === need.good);
    return buy ? [{ good: need.good, need, buy }] : [];
  });
}

/** An amount of a good, pieces as such: "18.4 dm² (2.0 ft²)", "44 pieces". */
export function amountOf({ measure }: Pick<Need, "measure">, amount: number): string {
  const words = amountWords(amount, measure);
  return measure === "count" ? `${words} ${words === "1" ? "piece" : "pieces"}` : words;
}

/** What to buy: whole packs where those are known. */
export function buyWords({ need, buy }: ListLine): string {
  if (buy.outOf) return outOfWords(buy.outOf);
  if (buy.short <= 0) return "nothing";
  return buy.whole ? buy.whole.words : amountOf(need, buy.short);
}

/** Whether some of it is left when all pairs are made: more than a hand would notice. */
export const leftOver = ({ buy }: Pick<ListLine, "buy">): boolean => buy.left > 0.0005 * buy.needed;

/** What is paid in the shop this time; nothing where no price is known. */
export function paidWords(making: Pick<Making, "needs" | "toBuy" | "cost">): string | undefined {
  const short = listLines(making).filter(({ buy }) => buy.short > 0), unpriced = short.filter(({ buy }) => buy.paid === undefined).length;
  if (unpriced === short.length) return undefined;
  const without = unpriced === 0 ? "" : `, without ${unpriced === 1 ? "one thing that has" : `${unpriced} things that have`} no price yet`;
  return `In the shop this time: ${money(making.cost.shopping, making.cost.currency)}${without}.`;
}

export const toolsApart = "Tools are not in this list.";

/** The list as plain text, for a message or a note: what has to be bought, group by group, and what lies on the shelf already. */
export function listAsText(title: string, making: Making): string {
  const lines = listLines(making);
  const line = (l: ListLine): string => {
    const paid = l.buy.paid === undefined || l.buy.outOf ? "" : `, ${money(l.buy.paid, making.cost.currency)}`;
    const left = leftOver(l) ? ` ${amountOf(l.need, l.buy.left)} will be left over.` : "";
    return `- ${capital(l.good)}: ${buyWords(l)}${paid}. ${capital(l.need.kind)}.${left}${l.buy.caution === undefined ? "" : ` ${l.buy.caution}`}`;
  };
  const groups = byGoodGroup(lines.filter((l) => l.buy.short > 0 || l.buy.outOf)).map(({ group, here }) => [capital(group), ...here.map(line), ""].join("\n"));
  const there = lines.filter((l) => l.buy.short <= 0 && !l.buy.outOf).map((l) => l.good);
  return [`Shopping list: ${title}, ${making.pairs === 1 ? "one pair" : `${making.pairs} pairs`}`, paidWords(making), toolsApart, "", ...groups, ...(there.length > 0 ? [`On the shelf, enough: ${there.join(", ")}`] : [])].filter((line) => line !== undefined).join("\n").trimEnd() + "\n";
}

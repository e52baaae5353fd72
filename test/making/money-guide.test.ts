// The example that the guide works by hand, read from the page itself.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { goodIds, type GoodId } from "#making/goods.ts";
import { measureOf } from "#making/amounts/good-measures.ts";
import { moneyWords } from "#making/amounts/decimal.ts";
import { readPriceTable } from "#making/money/read-price-table.ts";
import { readShelfTable } from "#making/money/read-shelf-table.ts";
import { readAmount } from "#making/amounts/units.ts";
import { needing, reckoned, stepOf } from "../support/money-said.ts";

const page = readFileSync("docs/guide/what-to-buy-and-what-it-costs.md", "utf8");
const blocks = [...page.matchAll(/```\n([\s\S]*?)```/g)].map(([, text]) => text!);
const rowsUnder = (head: string): readonly (readonly string[])[] => page.slice(page.indexOf(head)).split("\n\n")[0]!.split("\n").slice(2).map((row) => row.split("|").slice(1, -1).map((cell) => cell.trim()));
const amount = (good: GoodId, text: string): number => {
  const read = readAmount(text, measureOf[good]);
  if ("wrong" in read) throw new Error(`${good}: ${read.wrong}`);
  return read.value;
};

const one = rowsUnder("| what | one pair takes |"), two = rowsUnder("| what | two pairs take |");
const priced = readPriceTable(blocks[0]!), shelved = readShelfTable(blocks[1]!);
const needs = one.map(([good, takes]) => needing(good as GoodId, amount(good as GoodId, takes!)));
const { cost, toBuy, findings } = reckoned({ prices: priced.prices, skins: priced.skins, shelf: shelved.shelf, pairs: 2, rate: 15, overhead: 6, asked: 240 }, needs, [stepOf("closing", 600)]);
const money = (value: number): string => moneyWords(value, "");

test("the page's tables are read without a word but the one about pieces of skins, which it tells too", () => {
  expect([...priced.findings, ...shelved.findings, ...findings].map(({ code }) => code)).toEqual(["money-shelf-pieces"]);
  expect(page).toContain("out of which a whole pair comes");
  expect(one).toHaveLength(5);
  expect(two).toHaveLength(5);
});

test("one pair costs what the page reckons", () => {
  expect(cost.lines.map((line) => money(line.cost!))).toEqual(one.map((row) => row[3]));
  const { skinsDearer: dearer } = cost;
  for (const words of [
    `Material ${money(cost.material)}, work 10 × 15 = ${money(cost.workCost)}, overhead ${money(cost.overhead)}: a pair costs **${money(cost.total)}**.`,
    `Of the ${money(cost.asked!)} asked ${money(cost.left!)} is left, and an hour earns (240 − ${money(cost.material)} − 6) / 10 = ${money(cost.anHour!)}.`,
    `a pair costs ${money(dearer.more)} more, ${money(dearer.total)}; ask ${money(dearer.asked!)} for the same`,
    `That is ${money(cost.shopping)} in the shop.`,
  ]) expect(page).toContain(words);
});

test("and the shopping is what the page lists", () => {
  two.forEach(([good, needed, shelf, buy, paid, left], i) => {
    const of = toBuy[i]!, read = (text: string): number => amount(good as GoodId, text);
    expect(of.good).toBe(good);
    for (const [got, told] of [[of.needed, needed], [of.onShelf, shelf], [of.left, left]] as const) expect(got, `${good}: ${told}`).toBeCloseTo(read(told!), 6);
    expect(of.whole?.words ?? buy).toBe(buy);
    if (!of.whole) expect(of.short).toBeCloseTo(read(buy!), 6);
    expect(money(of.paid!)).toBe(paid);
  });
});

test("the names it gives are those of the goods", () => expect(page.split("<!-- goods -->\n")[1]!.split("\n")[0]!.split(", ")).toEqual([...goodIds]));

// What is told of a pair's cost, and socks and scraps on the shopping list; sums by hand, prices and amounts invented.
import { describe, expect, test } from "vitest";
import { earnedWords, isWhole, leftOutWords, sumParts, sumWords } from "#making/money/cost-words.ts";
import type { GoodId } from "#making/goods.ts";
import type { MakingSaid } from "#making/said.ts";
import { needing, reckoned, stepOf } from "../support/money-said.ts";

const dm2 = 10_000;
const steps = [stepOf("closing", 600)];
const plain = (words: string | undefined) => words?.replaceAll("\u00a0", " ");
const costOf = (said: MakingSaid, goods: readonly GoodId[] = ["upper leather"]) => reckoned({ currency: "EUR", prices: { "upper leather": { price: 3, for: "1 dm2" } }, overhead: 5, asked: 260, ...said }, goods.map((good) => needing(good, 10 * dm2)), steps).cost;

describe("what a pair costs, in words", () => {
  // 10 × 3 + 5 = 35; of 260 an hour of ten earns 22.50.
  test("without an hourly rate it is material and overhead alone, and nothing is left over", () => {
    const cost = costOf({});
    expect(plain(sumWords(cost))).toBe("Material and overhead alone, your work not counted: 35.00 EUR");
    expect(plain(sumParts(cost))).toBe("material 30.00 EUR, overhead 5.00 EUR");
    expect(plain(earnedWords(cost))).toBe("Asked 260.00 EUR: an hour earns 22.50 EUR after material and overhead.");
    expect(leftOutWords(cost)).toBe("Left out, for want of an hourly rate: your work.");
  });

  // 35 + 10 × 20 = 235.
  test("with all said it is the cost, and what is left of what is asked", () => {
    const cost = costOf({ rate: 20 });
    expect(isWhole(cost)).toBe(true);
    expect(plain(sumWords(cost))).toBe("A pair costs 235.00 EUR");
    expect(plain(sumParts(cost))).toBe("material 30.00 EUR, work 200.00 EUR, overhead 5.00 EUR");
    expect(plain(earnedWords(cost))).toBe("Asked 260.00 EUR: 25.00 EUR left over; an hour earns 22.50 EUR after material and overhead.");
    expect(leftOutWords(cost)).toBeUndefined();
  });

  test("where a price is missing it costs more, an hour earns less, and nothing is left over", () => {
    const cost = costOf({ rate: 20 }, ["upper leather", "lining leather"]);
    expect(plain(sumWords(cost))).toBe("A pair costs more than 235.00 EUR");
    expect(plain(earnedWords(cost))).toBe("Asked 260.00 EUR: an hour earns less than 22.50 EUR after material and overhead.");
    expect(leftOutWords(cost)).toBe("Left out, for want of a price: lining leather.");
  });

  test("too little is told whatever is missing", () => expect(plain(earnedWords(costOf({ asked: 30 })))).toMatch(/^Asked 30\.00 EUR: 5\.00 EUR too little; /));
});

describe("socks out of the lining's skins", () => {
  const needs = [needing("lining leather", 12 * dm2), needing("sock leather", 3 * dm2)];
  const list = (said: MakingSaid) => reckoned({ prices: { "lining leather": { price: 2, for: "1 dm2" } }, ...said }, needs, steps);

  // One skin of 20 dm²: 20 − 12 = 8 are left over, 8 − 3 = 5 after the socks; 40 are paid. A pair bears 12 × 2 + 3 × 2 = 30.
  test("are not bought, and cost a pair the lining's price where none of their own is said", () => {
    const { toBuy: [lining, sock], cost } = list({ skins: { "lining leather": "20 dm2" } });
    expect(lining).toMatchObject({ whole: { count: 1 }, left: 5 * dm2, paid: 40 });
    expect(sock).toMatchObject({ short: 0, paid: 0, left: 0, outOf: { good: "lining leather", amount: 3 * dm2 } });
    expect(cost).toMatchObject({ shopping: 40, material: 30, unpriced: [] });
  });

  test("cost a pair their own price where it is said, and a skin of theirs is not bought", () => {
    const { toBuy: [, sock], cost } = list({ prices: { "lining leather": { price: 2, for: "1 dm2" }, "sock leather": { price: 1, for: "1 dm2" } }, skins: { "lining leather": "20 dm2", "sock leather": "20 dm2" } });
    expect(sock).not.toHaveProperty("whole");
    expect(cost).toMatchObject({ shopping: 40, material: 27 });
  });

  // Of 14 dm² 2 are left over, which is less than 3; 3 just do; a skin cut to size leaves nothing; a lining that lies on the shelf is no skin that is bought.
  test("are bought where too little is left over, or none is bought whole", () => {
    for (const said of [{ skins: { "lining leather": "14 dm2" } }, {}, { skins: { "lining leather": "20 dm2" }, shelf: { "lining leather": "30 dm2" } }]) expect(list(said).toBuy[1]).toMatchObject({ short: 3 * dm2 });
    expect(list({ skins: { "lining leather": "15 dm2" } }).toBuy[1]).toMatchObject({ short: 0 });
  });
});

test("scraps on the shelf carry at their row how much room a pair needs; none where the shelf holds it all", () => {
  const upper = { ...needing("upper leather", 12 * dm2), holds: { longMm: 299.2, wideMm: 219.5, count: 2 } };
  const cautionOf = (shelf: string) => reckoned({ shelf: { "upper leather": shelf } }, [upper], steps).toBuy[0]!.caution;
  expect(cautionOf("9 dm2")).toMatch(/room for 2 pieces of 300 × 220 mm side by side: what does not hold a pair does not count, and then each pair takes 12\.0\sdm²/);
  expect(cautionOf("13 dm2")).toBeUndefined();
});

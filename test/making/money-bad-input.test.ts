// Slips in the fields of money: each is told at its field, and everything else is reckoned as before.
import { describe, expect, test } from "vitest";
import type { MakingSaid } from "#making/said.ts";
import { reckoned, someNeeds, toldOf } from "../support/money-said.ts";

const good: MakingSaid = { prices: { "upper leather": { price: "48", for: "1 m2" }, "lining leather": { price: "30", for: "1 m2" } }, rate: 15 };
const sound = reckoned(good).cost;
const withPrice = (price: string | number, per?: string): MakingSaid => ({ ...good, prices: { ...good.prices, "lining leather": { price, ...(per === undefined ? {} : { for: per }) } } });
/** What is told besides what the sums leave out. */
const told = (said: MakingSaid): readonly string[] => toldOf(reckoned(said)).filter((one) => !one.includes("The sums leave out"));

describe("a price that cannot be read", () => {
  test.each([
    ["words", "thirty", 'look: The price of the lining leather: "thirty" is no amount of money and is left out. Write it like 12.50 or 12,50.'],
    ["below nothing", "-30", 'look: The price of the lining leather: "-30" is below 0 and is left out. Write 0 for what costs you nothing.'],
    ["below nothing, as a number", -30, 'look: The price of the lining leather: "-30" is below 0 and is left out. Write 0 for what costs you nothing.'],
    ["empty", " ", "look: The price of the lining leather is empty and left out. Write a number like 12.50, or take the line away."],
    ["of two meanings", "1,234", 'look: The price of the lining leather: "1,234" may be a thousand and more, or one and a bit, so it is left out. Write it like 1234 or 1.23.'],
    ["beyond all sense", "99999999999", 'look: The price of the lining leather: "99999999999" is more than is reckoned with here and is left out. Look for a digit too many.'],
    ["no number", Number.NaN, 'look: The price of the lining leather: "NaN" is no amount of money and is left out. Write it like 12.50 or 12,50.'],
  ])("%s", (_, price, sentence) => {
    const read = reckoned(withPrice(price, "1 m2"));
    expect(told(withPrice(price, "1 m2"))).toEqual([sentence]);
    expect(read.cost.unpriced).toContain("lining leather");
    expect(read.cost.lines[0]).toEqual(sound.lines[0]);
    expect(read.cost.material).toBe(7.2);
  });

  test.each([["30,00"], ["30.00"], ["30,00 €"], ["€30"], ["EUR 30,-"], [30]])("%s is one", (price) => {
    expect(reckoned(withPrice(price, "1 m2")).cost.material).toBe(10.8);
    expect(told(withPrice(price, "1 m2"))).toEqual([]);
  });
});

describe("what a price is for", () => {
  test.each([
    ["an unknown unit", "1 hide", /^look: What the price of the lining leather is for cannot be read: .*"hide" is no unit of area/],
    ["a unit of another measure", "1 m", /^look: What the price of the lining leather is for cannot be read: .*"m" is no unit of area/],
    ["no unit", "3", /^look: What the price of the lining leather is for cannot be read: .*no unit/],
    ["nothing", "0 m2", /^look: What the price of the lining leather is for cannot be read: "0 m2" is nothing; write how much it is\. Until then the price is left out\.$/],
    ["below nothing", "-1 m2", /^look: What the price of the lining leather is for cannot be read: .*below 0/],
  ])("%s leaves the price out", (_, per, sentence) => {
    expect(told(withPrice("30", per))).toEqual([expect.stringMatching(sentence)]);
    expect(reckoned(withPrice("30", per)).cost.material).toBe(7.2);
  });

  test("next to nothing is told, and what is just enough gives sums that are numbers, with all their digits", () => {
    expect(told(withPrice("999999999", "0.0000001 mm2"))).toEqual([expect.stringMatching(/cannot be read: "0\.0000001" is less than can be measured or weighed; look at its decimals\. Until then the price is left out\.$/)]);
    const dear = { ...withPrice("999999999", "0.000001 mm2"), pairs: 10_000, asked: "1" };
    const { cost, toBuy } = reckoned(dear);
    // 120 000 mm² a pair at 999 999 999 for a millionth of one; for ten thousand pairs that is 1.2e24.
    expect(cost.material).toBe(1.19999999880e20);
    expect(toBuy.map(({ paid = 0 }) => paid).every(Number.isFinite)).toBe(true);
    expect(told(dear).join(" ")).toContain("costs you 119\u00A0999\u00A0999\u00A0880\u00A0000\u00A0000\u00A0000.00:");
    expect(told(dear).join(" ")).not.toMatch(/NaN|Infinity|e\+/);
  });

  // A square foot is 0.09290304 m² (international foot of 1959): 0.12 m² × 3 / 0.09290304 = 3.875.
  test("a square foot of leather where nothing is said, and that is told", () => {
    expect(told(withPrice("3"))).toEqual(["note: Where you do not say what a price is for, it is taken for 1 ft² of lining leather. Write it beside the price if it is another amount."]);
    expect(reckoned(withPrice("3")).cost.lines[1]!.cost).toBeCloseTo(3.875008, 6);
  });

  test("a spool is never taken for a metre", () => {
    const said = { ...good, prices: { ...good.prices, thread: { price: "8" } } };
    expect(told(said)).toEqual(["look: The price of the thread does not say for how much it is, and is left out. Write how much is in the pack beside it, like 1000 m, 250 g or 200 pieces."]);
    expect(reckoned(said).cost.material).toBe(sound.material);
  });

  test("an empty price of thread is told once", () => expect(told({ ...good, prices: { ...good.prices, thread: { price: "" } } })).toEqual(["look: The price of the thread is empty and left out. Write a number like 12.50, or take the line away."]));

  test("price and amount both wrong are both told", () => expect(told(withPrice("much", "1 cow"))).toHaveLength(2));
});

describe("names", () => {
  test("no good of ours: told with the nearest, and kept without being counted", () => {
    const said = { ...good, prices: { ...good.prices, "uper leather": { price: 9 } }, shelf: { threads: "3 m", nonsense: "1" } };
    expect(told(said)).toEqual([
      'note: "uper leather" among the prices is nothing that is bought here, and is kept without being counted. Did you mean upper leather, sock leather or sole leather?',
      'note: "threads" on the shelf is nothing that is bought here, and is kept without being counted. Did you mean thread?',
      'note: "nonsense" on the shelf is nothing that is bought here, and is kept without being counted. Look at the list of what this pair takes for its names.',
    ]);
    expect(reckoned(said).cost.total).toBe(sound.total);
  });

  test.each([["binding", "upper leather"], ["Heel-leather", "lift leather or top piece leather"], ["buckles", "fastenings"], ["Cement", "contact cement or water-based cement"], ["nails", "lasting nails or heel nails"]])("%s goes by another name on the list, which is told", (name, as) => {
    expect(told({ ...good, prices: { ...good.prices, [name]: { price: 9 } } })).toEqual([`note: "${name}" among the prices is nothing that is bought here, and is kept without being counted. Write it as ${as}.`]);
  });

  test("names out of the language are names like others", () => expect(told({ ...good, prices: JSON.parse('{"__proto__": {"price": "1"}, "constructor": {"price": "1"}}') as MakingSaid["prices"] & object })).toHaveLength(2));

  test("prices of what this pair does not need are kept without a word", () => expect(told({ ...good, prices: { ...good.prices, elastic: { price: "2", for: "1 m" } } })).toEqual([]));
});

describe("shelf and sizes", () => {
  test.each([["below nothing", "-1 m2"], ["words", "a bit"], ["another measure", "2 m"], ["no unit", "2"]])("%s counts as nothing on the shelf", (_, amount) => {
    const said = { ...good, shelf: { "upper leather": amount } };
    expect(told(said)).toEqual([expect.stringMatching(/^look: What lies on the shelf of the upper leather cannot be read: .* Until then nothing is taken to lie there\.$/)]);
    expect(reckoned(said).toBuy[0]).toMatchObject({ onShelf: 0, short: 150_000 });
  });

  test("an empty shelf is nothing to speak of", () => expect(told({ ...good, shelf: {} })).toEqual([]));
  test("a field without a word means that nothing lies there", () => expect(told({ ...good, shelf: { thread: "", "upper leather": "0 m2" } })).toEqual([]));

  test("a spool whose length cannot be read is told, and bought by the metre", () => {
    const said = { ...good, skins: { thread: "long" } };
    expect(told(said)).toEqual([expect.stringMatching(/^look: The size in which the thread is bought cannot be read: .* Until then it is left out\.$/)]);
    expect(reckoned(said).toBuy[2]).not.toHaveProperty("whole");
  });

  test("a skin on which the largest part does not lie", () => {
    const needs = [{ ...someNeeds[0]!, holds: { longMm: 300, wideMm: 250, count: 1 } }];
    expect(toldOf(reckoned({ skins: { "upper leather": "0.5 ft2" } }, needs))).toEqual(["look: One skin of upper leather is said to be 0.5 ft2. The largest part needs 300 × 250 mm, which does not lie on it. Buy a larger one, or look at its unit."]);
    expect(toldOf(reckoned({ skins: { "upper leather": "1 ft2" } }, needs))).toEqual([]);
  });
});

describe("money that is not in one money", () => {
  test("a price in other money is told and counted as its number", () => {
    const said = { ...withPrice("$30", "1 m2"), currency: "EUR" };
    expect(told(said)).toEqual(["look: The price of the lining leather is in $, and the sums are in EUR. Nothing is changed into other money: the number is counted as it stands. Write what it comes to in EUR."]);
    expect(reckoned(said).cost.material).toBe(10.8);
  });
  test("a sign and the code of the same money are the same", () => expect(told({ ...withPrice("30 €", "1 m2"), currency: "EUR", rate: "15 euros" })).toEqual([]));
  test("any word the maker uses for her money", () => expect(told({ ...withPrice("30 Taler", "1 m2"), currency: "Taler" })).toEqual([]));
  test.each([["rate", "Your rate for an hour"], ["overhead", "Your overhead for a pair"], ["asked", "What you ask for a pair"]] as const)("%s", (field, name) => {
    expect(told({ ...good, [field]: "-5" })).toEqual([`look: ${name}: "-5" is below 0 and is left out. Write 0 for what costs you nothing.`]);
    expect(told({ ...good, [field]: "" })).toEqual([]);
    expect(reckoned({ ...good, [field]: "-5" }).cost.material).toBe(10.8);
  });
  test("minutes that cannot be read leave the usual ones", () => {
    expect(told({ ...good, minutes: { cutting: "soon" } })).toHaveLength(1);
    expect(reckoned({ ...good, minutes: { cutting: "soon" } }).cost.minutes).toBe(330);
  });
});

describe("what costs nothing", () => {
  test("is told, so that it is no slip", () => {
    expect(told(withPrice(0, "1 m2"))).toEqual(["note: Counted as costing nothing, as you wrote: lining leather."]);
    expect(reckoned(withPrice(0, "1 m2")).cost.unpriced).not.toContain("lining leather");
  });
});

describe("how many pairs", () => {
  test.each([["2", 2], [3, 3], ["4 pairs", 4], ["1 pair", 1], ["2.0", 2], ["", 1]])("%s", (written, pairs) => expect(reckoned({ pairs: written }).pairs).toBe(pairs));

  test.each([["0"], [0], ["-2"], ["1.5"], ["1,5"], ["two"], [Number.NaN], ["½"]])("%s counts as one and is told", (written) => {
    expect(reckoned({ pairs: written }).pairs).toBe(1);
    expect(told({ pairs: written })).toEqual([`look: How many pairs: "${written}" is no whole number from 1 to 10000. One pair is counted; write a number like 2.`]);
  });

  test.each([["1,000"], ["1.000"], ["1 000"], [1000], ["1'000 pairs"]])("a thousand as %s, with what a thousand means at a bench", (written) => {
    const read = reckoned({ ...good, pairs: written });
    expect(read.pairs).toBe(1000);
    expect(read.toBuy.map(({ needed }) => needed)).toEqual([150e6, 120e6, 24e6, 45e3, 80e3, 2000]);
    expect(read.cost.total).toBe(sound.total);
    const sentences = told({ ...good, pairs: written });
    expect(sentences.at(-1)).toBe("note: For 1000 pairs everything is that many times one pair, hours too. A workshop that makes so many buys at other prices, wastes less and works faster: take it as what it would be at your bench.");
    expect(sentences.slice(0, -1)).toEqual(/[.,]/.test(String(written)) ? [`note: How many pairs: "${written}" is read as 1000.`] : []);
  });

  test.each([["10001"], [2e9], ["1,000,000"]])("%s is more than is reckoned", (written) => {
    expect(reckoned({ pairs: written }).pairs).toBe(10_000);
    expect(told({ pairs: written })[0]).toBe(`look: How many pairs: "${written}" is more than is reckoned here; 10000 are counted. Look for a digit too many.`);
  });
});

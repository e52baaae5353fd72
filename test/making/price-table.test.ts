import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { goodIds } from "#making/goods.ts";
import { measureOf } from "#making/amounts/good-measures.ts";
import { readPriceTable } from "#making/money/read-price-table.ts";
import { readShelfTable } from "#making/money/read-shelf-table.ts";
import { writePriceTable, writeShelfTable } from "#making/money/write-goods-tables.ts";
import { reckoned } from "../support/money-said.ts";

const rows = (...lines: readonly string[]): string => lines.join("\n");
const told = (text: string, file?: string): readonly string[] => readPriceTable(text, file).findings.map((one) => `${severityOf(one)}: ${explain(one)}`);

describe("prices as rows of text", () => {
  const thread = { price: "7.80", for: "1000 m" }, upper = { price: "9,50", for: "1 ft2" };

  test.each([
    ["with names over the columns", rows("what,price,for", 'upper leather,"9,50",1 ft2', "thread,7.80,1000 m")],
    ["without them", rows('upper leather,"9,50",1 ft2', "thread,7.80,1000 m")],
    ["parted by semicolons", rows("what;price;for", "upper leather;9,50;1 ft2", "thread;7.80;1000 m")],
    ["parted by tabs, as pasted", rows("upper leather\t9,50\t1 ft2", "thread\t7.80\t1000 m")],
    ["columns in another order, one that is not ours, other line ends, a mark of byte order", '\uFEFFsep=;\r\nfor;shop;what;price EUR\r\n1 ft2;round the corner;Upper  Leather;9,50\r\n1000 m;;thread;7.80\r\n'],
    ["remarks and empty rows between", rows("# mine", "", "what,price,for", "", 'upper leather,"9,50",1 ft2', ",,", "# yours", "thread,7.80,1000 m", "")],
  ])("%s", (_, text) => expect(readPriceTable(text)).toEqual({ prices: { "upper leather": upper, thread }, skins: {}, findings: [] }));

  test("sizes of skins and spools in a column of their own", () => {
    expect(readPriceTable(rows("what,price,for,size", "upper leather,9.50,1 ft2,6 ft2", "lining leather,,,7 ft2"))).toEqual({
      prices: { "upper leather": { price: "9.50", for: "1 ft2" } }, skins: { "upper leather": "6 ft2", "lining leather": "7 ft2" }, findings: [expect.anything()],
    });
  });

  test.each([["needles,4.00,10"], ["needles;4.00;10"], ["needles,4.00,10,"]])("what is sold by the piece may leave the unit out: %s", (text) => expect(readPriceTable(text).prices).toEqual({ needles: { price: "4.00", for: "10" } }));
  test("where no number can be meant, no unit is asked for", () => {
    expect(readPriceTable("lasting tacks,3,500").prices).toEqual({ "lasting tacks": { price: "3", for: "500" } });
    expect(readPriceTable("needles,4,10 pieces").prices).toEqual({ needles: { price: "4", for: "10 pieces" } });
    expect(readPriceTable("shanks;1,60;1").prices).toEqual({ shanks: { price: "1,60", for: "1" } });
  });
});

describe("what is wrong is told by row, and the rest is read", () => {
  const good = "thread,7.80,1000 m";
  const splitWords = "look: Row 2 is left out: it looks as if a decimal comma parts a number into two cells. Part the cells by semicolons or write the numbers with points, and write a unit behind every amount.";
  test.each([
    ["no good of ours", "uper leather,3,1 ft2", 'look: Row 2: "uper leather" is nothing that is bought here; the row is left out. Did you mean upper leather, sock leather or sole leather?'],
    ["no good at all", ",3,1 ft2", "look: Row 2: it does not say what it is for; the row is left out. Look at the list of what this pair takes for its names."],
    ["words for a price", "latex,cheap,1 kg", 'look: Row 2: the price of the latex cannot be read: "cheap" is no amount of money and is left out. Write it like 12.50 or 12,50.'],
    ["a price below nothing", "latex,-4,1 kg", 'look: Row 2: the price of the latex cannot be read: "-4" is below 0 and is left out. Write 0 for what costs you nothing.'],
    ["no price", "latex,,", "note: Row 2 names no price, and counts as not said."],
    ["a decimal comma between commas", "upper leather,12,50,1 ft2", splitWords],
    ["a decimal comma and no amount", "upper leather,12,50", splitWords],
    ...["shanks,1,60", "shanks,1,6", "shanks,€1,60", "shanks,EUR 1,60", "needles,1 200,50", "needles,4,10", "needles,4,10,", "shanks,1,60,1 pair", "shanks,1 pair,1,60"].map((row): [string, string, string] => [`1.60 for one, or 1 for 60 pieces: ${row}`, row, splitWords]),
    ["a good for the second time", "thread,8,1000 m", "look: Row 2: the thread stands in row 1 already. The later one counts; keep one of them."],
    ["a cell of a whole letter", `latex,3,${"x".repeat(80)}`, "look: Row 2 has a cell of more than 60 letters and is left out. Write it shorter."],
  ])("%s", (_, row, sentence) => {
    expect(told(rows(good, row, "paste,3,1 kg"))).toEqual([sentence]);
    expect(readPriceTable(rows(good, row, "paste,3,1 kg")).prices).toMatchObject({ thread: { for: "1000 m" }, paste: { price: "3", for: "1 kg" } });
  });

  test("a unit of another measure, and an amount of nothing", () => {
    expect(told(rows("lining leather,5,1 m"), "my.csv")).toEqual([expect.stringMatching(/^look: my\.csv, row 1, column "for" of the lining leather, cannot be read: "m" is no unit of area here.*The row is left out\.$/)]);
    expect(told("latex,5,0 kg")).toEqual(['look: Row 1, column "for" of the latex, cannot be read: "0 kg" is nothing; write how much it is. The row is left out.']);
  });

  test.each([["nothing", ""], ["remarks", "# mine\n\n"], ["names of columns alone", "what,price,for\n,,\n"]])("an empty table says what one looks like: %s", (_, text) => {
    expect(told(text)).toEqual(["note: There is nothing in this table of prices. Its first row reads what,price,for, and under it rows like: upper leather,9.50,1 ft2"]);
  });

  test.each([["what,cost", "price"], ["item,cost", "what and price"], ["price,for", "what"]])("%s as first row lacks a column", (first, missing) => {
    expect(told(rows(first, good))).toEqual([`look: The first row of the table of prices does not name the ${missing.includes(" ") ? "columns" : "column"} ${missing}, so nothing is read. It should read what,price,for, and under it rows like: upper leather,9.50,1 ft2`]);
  });

  test("no text at all, or far too much of it, is refused", () => {
    expect(() => readPriceTable("PK\u0003\u0004", "prices.ods")).toThrow(Refusal);
    expect(() => readPriceTable("PK\u0003\u0004", "prices.ods")).toThrow("prices.ods is no plain text. Save the table of prices from your spreadsheet as CSV and take that file.");
    expect(() => readPriceTable("thread,1,1 m\n".repeat(502))).toThrow("This table is too long for a table of prices: at most 500 rows are read. Keep one row for each thing you buy.");
  });

  test("any text ends in what it holds, or in words about it", () => {
    fc.assert(fc.property(fc.array(fc.oneof(fc.constantFrom(...goodIds, "what", "price", ",", ";", "\n", '"', "1,5", "2 m", "#"), fc.string({ maxLength: 5 })), { maxLength: 40 }), (parts) => {
      const text = parts.join("");
      if (text.startsWith("PK") || text.includes("\u0000")) return;
      for (const { findings } of [readPriceTable(text), readShelfTable(text)]) for (const one of findings) expect(explain(one)).toMatch(/\S/);
    }), { seed: 1, numRuns: 500 });
  });
});

describe("the shelf as rows of text", () => {
  test("the plain form, with and without names, decimal commas between semicolons", () => {
    const shelf = { "upper leather": "2,5 ft2", "lasting tacks": "200", shanks: "2 pairs" };
    expect(readShelfTable(rows("what;amount", "upper leather;2,5 ft2", "lasting tacks;200", "shanks;2 pairs", "latex;"))).toEqual({ shelf, findings: [] });
    expect(readShelfTable(rows('upper leather,"2,5 ft2"', "lasting tacks,200", "shanks,2 pairs"))).toEqual({ shelf, findings: [] });
  });

  test("what is wrong is told by row", () => {
    const { shelf, findings } = readShelfTable(rows("what,amount", "thread,300", "elastic,-1 m", "upper leather,0,4 m2", "latex,200 g"), "shelf.csv");
    expect(shelf).toEqual({ latex: "200 g" });
    expect(findings.map(explain)).toEqual([
      expect.stringMatching(/^shelf\.csv, row 4 is left out: it looks as if a decimal comma/),
      expect.stringMatching(/^shelf\.csv, row 2, column "amount" of the thread, cannot be read: .*no unit/),
      expect.stringMatching(/^shelf\.csv, row 3, column "amount" of the elastic, cannot be read: .*below 0/),
    ]);
  });

  test("an empty shelf is no mistake", () => {
    const { shelf, findings } = readShelfTable("what,amount\n");
    expect(shelf).toEqual({});
    expect(findings.map((one) => `${severityOf(one)}: ${explain(one)}`)).toEqual(["note: There is nothing in this table of what lies on the shelf. Its first row reads what,amount, and under it rows like: upper leather,6 ft2"]);
  });
});

describe("written and read back", () => {
  const units = { area: ["ft2", "m²", "dm2"], length: ["m", "yd"], mass: ["kg", "oz"], volume: ["ml", "l"], count: ["pieces", "pairs", "dozen"] } as const;
  const amounts = (good: (typeof goodIds)[number]) => fc.tuple(fc.constantFrom("2", "2.5", "0,75", "1/2"), fc.constantFrom(...units[measureOf[good]])).map(([n, unit]) => `${n} ${unit}`);
  const priceText = fc.constantFrom("9.50", "9,50", "€ 1.234,50", "0", "12 kr");
  const table = fc.subarray([...goodIds], { minLength: 1 }).chain((goods) => fc.tuple(...goods.map((good) => fc.record({ good: fc.constant(good), price: priceText, for: fc.option(amounts(good)), size: fc.option(amounts(good)), shelf: amounts(good) }))));

  test("prices, sizes and shelf stay as they were written", () => {
    fc.assert(fc.property(table, (all) => {
      const prices = Object.fromEntries(all.map(({ good, price, for: per }) => [good, { price, ...(per === null ? {} : { for: per }) }]));
      const skins = Object.fromEntries(all.filter(({ size }) => size !== null).map(({ good, size }) => [good, size!]));
      const shelf = Object.fromEntries(all.map(({ good, shelf: amount }) => [good, amount]));
      expect(readPriceTable(writePriceTable(prices, skins))).toEqual({ prices, skins, findings: [] });
      expect(readShelfTable(writeShelfTable(shelf))).toEqual({ shelf, findings: [] });
    }), { seed: 9 });
  });

  test("an amount without a unit is written with one, or its price would be read as one number with it", () => {
    const text = writePriceTable({ needles: { price: "4", for: "10" }, shanks: { price: 1, for: "2" } }, { shanks: "20" });
    expect(readPriceTable(text)).toEqual({ prices: { needles: { price: "4", for: "10 pieces" }, shanks: { price: "1", for: "2 pieces" } }, skins: { shanks: "20 pieces" }, findings: [] });
    expect(writePriceTable({ "upper leather": { price: "4", for: "10" }, constructor: { price: "4", for: "10" } })).toBe("what,price,for\nupper leather,4,10\nconstructor,4,10\n");
  });

  test("numbers, and names that are no goods, are written too; nothing the maker wrote is lost", () => {
    expect(writePriceTable({ "#1, \"best\"": { price: "1\n2" }, thread: { price: 7.8, for: "1000 m" } })).toBe('what,price,for\nthread,7.8,1000 m\n"#1, ""best""",1 2,\n');
    expect(writeShelfTable()).toBe("what,amount\n");
  });
});

test("the invented examples hold what they show and cost something", () => {
  const prices = readPriceTable(readFileSync("examples/prices.csv", "utf8")), shelf = readShelfTable(readFileSync("examples/shelf.csv", "utf8"));
  expect([...prices.findings, ...shelf.findings]).toEqual([]);
  const { cost, findings } = reckoned({ prices: prices.prices, skins: prices.skins, shelf: shelf.shelf, rate: 1 });
  expect(cost.unpriced).toEqual([]);
  expect(cost.material).toBeGreaterThan(10);
  expect(findings.map(severityOf)).toEqual(["note"]);
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimal, moneyWords } from "#making/amounts/decimal.ts";
import { nearestWords } from "#making/money/nearest.ts";
import { goodIds } from "#making/goods.ts";
import { readFigure } from "#making/amounts/read-figure.ts";
import { readMoney } from "#making/money/read-money.ts";

describe("numbers as people write them", () => {
  test.each([
    ["12", 12], ["12.50", 12.5], ["12,50", 12.5], ["0,125", 0.125], [".5", 0.5], [",5", 0.5], ["12.", 12], ["+3", 3], ["-0", 0], [" 7 ", 7],
    ["1 234.50", 1234.5], ["1\u00A0234,50", 1234.5], ["1\u202F234", 1234], ["1.234,50", 1234.5], ["1,234.50", 1234.5], ["1'234.50", 1234.5], ["1’234", 1234], ["1.234.567", 1_234_567], ["1,234,567.5", 1_234_567.5], ["1234,567", 1234.567],
  ])("%s", (text, value) => expect(readFigure(text)).toEqual({ value }));

  test.each([
    ["", "empty"], ["  ", "empty"], ["twelve", "words"], ["about 12", "words"], ["12 50", "words"], ["1,2,3", "words"], ["1.23.456", "words"], ["1,23.456,7", "words"], ["1 2345", "words"], ["1'234 567", "words"], ["1e5", "words"], ["12-", "words"], ["--1", "words"], ["NaN", "words"], ["Infinity", "words"], [Number.NaN, "words"], [Number.POSITIVE_INFINITY, "words"],
    ["-3", "negative"], ["−3", "negative"], ["–0,5", "negative"], [-1e-9, "negative"], ["1,234", "ambiguous"], ["12.000", "ambiguous"], ["1000000001", "huge"], [1e300, "huge"],
  ] as const)("%s is none: %s", (text, wrong) => expect(readFigure(text)).toEqual({ wrong }));

  test("where a whole number is wanted, one sign before three digits parts thousands", () => {
    expect(readFigure("1,000", "whole")).toEqual({ value: 1000 });
    expect(readFigure("12.345", "whole")).toEqual({ value: 12_345 });
    expect(readFigure("1,5", "whole")).toEqual({ value: 1.5 });
  });

  // Grouped by Intl (ECMA-402) in languages of other habits; digits after the point other than three.
  test("what other software writes is read back", () => {
    const written = fc.tuple(fc.integer({ min: 0, max: 99_999_999 }), fc.constantFrom("en-GB", "de-DE", "fr-FR", "de-CH", "pl-PL", "pt-BR", "nb-NO"));
    fc.assert(fc.property(written, ([cents, language]) => {
      const text = new Intl.NumberFormat(language, { minimumFractionDigits: 2 }).format(cents / 100);
      expect(readFigure(text)).toEqual({ value: cents / 100 });
    }), { seed: 7 });
  });

  test("any text ends in a number or a reason", () => {
    fc.assert(fc.property(fc.string({ unit: "grapheme", maxLength: 30 }), (text) => {
      for (const read of [readFigure(text), readFigure(text, "whole"), readMoney(text), readMoney(text, "Taler")]) {
        if (read.wrong === undefined) expect(read.value >= 0 && Number.isFinite(read.value)).toBe(true);
      }
    }), { seed: 11 });
  });
});

describe("amounts of money", () => {
  test.each([
    ["12,50 €", 12.5, "€"], ["€ 12.50", 12.5, "€"], ["€12", 12, "€"], ["12.50EUR", 12.5, "EUR"], ["EUR 1.234,50", 1234.5, "EUR"], ["$12", 12, "$"], ["US$ 9.99", 9.99, "US$"], ["£3", 3, "£"], ["12 kr", 12, "kr"], ["12 kr.", 12, "kr."], ["Fr. 12.–", 12, "Fr."], ["CHF 12.-", 12, "CHF"], ["12,-", 12, ""], ["EUR.5", 0.5, "EUR"], ["20 euros", 20, "euros"], ["3 Taler", 3, "Taler"], ["7 SEK", 7, "SEK"],
  ])("%s", (text, value, currency) => expect(readMoney(text, "Taler")).toEqual({ value, currency }));

  test.each([["-3 €", "negative"], ["€-3", "negative"], ["− €3", "negative"], ["-€-3", "words"], ["€", "words"], ["€ 12 €", "words"], ["12 ft", "words"], ["ten euros", "words"], ["12€ 50", "words"], ["€ 1,234", "ambiguous"], ["", "empty"]] as const)("%s: %s", (text, wrong) => {
    expect(readMoney(text)).toEqual({ wrong });
  });
});

describe("in words", () => {
  test.each([
    [0.1 + 0.2, "0.30\u00A0€"], [1.005, "1.01\u00A0€"], [2.675, "2.68\u00A0€"], [-1.005, "−1.01\u00A0€"], [-0.001, "0.00\u00A0€"], [1e-7, "0.00\u00A0€"], [0, "0.00\u00A0€"], [999.995, "1000.00\u00A0€"], [12345.5, "12\u00A0345.50\u00A0€"], [1_234_567.891, "1\u00A0234\u00A0567.89\u00A0€"],
  ])("%d", (value, words) => expect(moneyWords(value, "€")).toBe(words));
  // However much it is: digits in threes and two decimals, never an exponent or no number.
  test("any amount is written with its digits", () => {
    for (const value of [1e15, 1e20, 999_999_999.5e12, 1e21, 1.234e25, 2 ** 90]) {
      expect(moneyWords(value, "€")).toMatch(/^[1-9]\d{0,2}(?:\u00A0\d{3})+\.00\u00A0€$/);
      // Twelve figures are kept, as in all sums.
      expect(Number(moneyWords(value, "").replaceAll("\u00A0", ""))).toBe(Number(value.toPrecision(12)));
      expect(moneyWords(-value, "€")).toBe(`−${moneyWords(value, "€")}`);
    }
  });
  test("without a currency the number alone", () => expect(moneyWords(3, "")).toBe("3.00"));
  test("what is written is read back, to the hundredth", () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 100_000_000 }), (cents) => {
      expect(readMoney(moneyWords(cents / 100, "€"))).toEqual({ value: cents / 100, currency: "€" });
    }), { seed: 3 });
  });
  test("sums of hundredths are the decimal that is meant", () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 1_000_000 }), { maxLength: 40 }), (cents) => {
      const whole = cents.reduce((sum, one) => sum + one, 0);
      expect(decimal(cents.reduce((sum, one) => sum + one / 100, 0))).toBe(whole / 100);
    }), { seed: 5 });
  });
});

test("the nearest names", () => {
  expect(nearestWords("uper lether", goodIds)[0]).toBe("upper leather");
  expect(nearestWords("nails", goodIds)).toEqual(["heel nails", "lasting nails"]);
  expect(nearestWords("Tread", goodIds)).toEqual(["thread"]);
  expect(nearestWords("xyzzy", goodIds)).toEqual([]);
});

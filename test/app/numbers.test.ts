import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimalsOf, readMeasure, say, sayFixed, snap } from "#app/state/numbers.ts";
import { fieldOf } from "#app/state/measure-field.ts";

describe("numbers as a maker types and reads them", () => {
  test.each([
    ["72", 72],
    ["72,5", 72.5],
    ["72.5", 72.5],
    [" 72,5 mm ", 72.5],
    ["7 cm", 70],
    ["7,3cm", 73],
    ["−3", -3],
    [".5", 0.5],
    ["+4", 4],
  ])("%s is read as a length", (text, value) => expect(readMeasure(text, "mm")).toBe(value));

  test("each field takes its own unit and no other", () => {
    expect([readMeasure("50 %", "%"), readMeasure("50", "%"), readMeasure("12°", "°")]).toEqual([50, 50, 12]);
    expect([readMeasure("50 %", "mm"), readMeasure("7 cm", "%"), readMeasure("5 mm", "°")]).toEqual([undefined, undefined, undefined]);
  });

  test.each(["", "mm", "cm", "7 2", "1.2.3", "1,2,3", "1e3", "0x10", "Infinity", "NaN", "--2", "seventy", "7 m", "9".repeat(400)])("%j is not a number", (text) => expect(readMeasure(text, "mm")).toBeUndefined());

  test("what is said can be read back", () => {
    fc.assert(
      fc.property(fc.integer({ min: -99_999, max: 99_999 }), (tenths) => {
        expect(readMeasure(say(tenths / 10, 1), "mm")).toBe(tenths / 10 + 0);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  test("no trailing zeros in a sentence, all of them in a column, never a minus nought", () => {
    expect([say(72, 1), say(72.5, 1), say(-0.04, 1), say(-2.5, 1), say(70, 0)]).toEqual(["72", "72.5", "0", "−2.5", "70"]);
    expect([sayFixed(72), sayFixed(-0.01)]).toEqual(["72.0", "0.0"]);
  });

  test("steps leave no dust", () => {
    expect(snap(0.1 + 0.2, 0.1)).toBe(0.3);
    expect(snap(71.3, 0.5)).toBe(71.5);
    expect([0.5, 1, 0.01, 5].map(decimalsOf)).toEqual([1, 0, 2, 0]);
  });

  test("shares are shown in percent, lengths as they are", () => {
    expect(fieldOf({ min: 0.42, max: 0.58, step: 0.01, unit: "of length" })).toEqual({ factor: 100, unit: "%", min: 42, max: 58, step: 1, decimals: 0 });
    expect(fieldOf({ min: 51, max: 90.5, step: 0.5, unit: "mm" })).toMatchObject({ factor: 1, unit: "mm", min: 51, max: 90.5, decimals: 1 });
  });
});

// Numbers a maker left out come from the size; what she said is kept. Typical numbers: handbook section 1.3.
import { expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { judgeMeasures } from "#last/measure-checks.ts";
import { completeMeasures, measureKeys, type SaidMeasures } from "#last/measures-by-size.ts";

// Rows of handbook 1.3: nominal length (Paris point), joint girth of fitting 6 and 5 (rule 5 × (size + fitting)), instep about 10 more,
// ball ± 2 and seat ± 2 mm.
test.each([
  [36, 240, 210, 205, 220, 73, 50],
  [37, 246.7, 215, 210, 225, 75, 51],
  [38, 253.3, 220, 215, 230, 76.5, 52],
  [39, 260, 225, 220, 235, 78, 53],
  [40, 266.7, 230, 225, 240, 80, 54],
])("EU %d alone is enough", (sizeEu, length, six, five, instep, ball, seat) => {
  const { measures, taken } = completeMeasures({ sizeEu });
  expect(taken).toEqual(measureKeys);
  expect(measures.stickLengthMm).toBeCloseTo(length, 1);
  expect(measures.jointGirthMm).toBe(six);
  expect(completeMeasures({ sizeEu, fitting: 5 }).measures.jointGirthMm).toBe(five);
  expect(measures.instepGirthMm).toBe(instep);
  expect(Math.abs(measures.ballWidthMm - ball)).toBeLessThanOrEqual(2);
  expect(Math.abs(measures.seatWidthMm - seat)).toBeLessThanOrEqual(2);
  // What comes from one size belongs together by every check.
  expect(judgeMeasures(measures, sizeEu)).toEqual([]);
});

test("what is said is kept to the last digit and not named as taken; what depends on it follows", () => {
  const { measures, taken } = completeMeasures({ sizeEu: 38, side: "left", toe: "almond", jointGirthMm: 226.04 });
  expect(measures).toMatchObject({ side: "left", toe: "almond", jointGirthMm: 226.04, waistGirthMm: 219, instepGirthMm: 236 });
  expect(taken).not.toContain("jointGirthMm");
  expect(taken).toHaveLength(8);
  expect(measures.ballWidthMm).toBeCloseTo(76.5 + 2, 1);
});

test("a stick length does in place of a size", () => {
  const { sizeEu, measures, taken } = completeMeasures({ stickLengthMm: 260 });
  expect(sizeEu).toBeCloseTo(39, 9);
  expect(measures.jointGirthMm).toBe(225);
  expect(taken).not.toContain("stickLengthMm");
});

test.each([
  [{}, "size or a stick length"],
  [{ sizeEu: 380 }, "Size 380"],
  [{ sizeEu: Number.NaN }, "not a woman's EU size"],
  [{ stickLengthMm: 25 }, "not a woman's EU size"],
  [{ sizeEu: 38, fitting: 60 }, "Fitting 60"],
] as [SaidMeasures, string][])("%o is refused", (said, says) => {
  expect(() => completeMeasures(said)).toThrow(Refusal);
  expect(() => completeMeasures(said)).toThrow(says);
});

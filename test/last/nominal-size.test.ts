// The size of a last by its stick length, and what of that is the point of its toe.
// Outside values: Paris point 20/3 mm a size, from zero (ISO/TS 19407:2015). The Shoe and Leather Lexicon, 4th edition, 1918: a last in
// the size stick draws a size to a size and a half (of 1/3 in, so 8.5 to 12.7 mm) over its marked size. A boot maker's note
// (famekey-original.com): a pointed toe takes 15 to 20 mm of useful length. The synthetic lasts name the size they were made for.
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import type { Last } from "#last/last.ts";
import { toeShapes, type ToeShape } from "#last/measured.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import { nominalSize } from "#last/nominal-size.ts";
import { foundLast } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";

const made = (toe: ToeShape, sizeEu = 38): Last => lastFromMeasures({ ...completeMeasures({ sizeEu, toe }).measures }, "made", unwatched);
const pointFound = (last: Last): string[] => last.findings.filter((f) => f.code === "size-counts-point").map(explain);

describe("a last made for a size is of that size, whatever its toe", () => {
  test.each(toeShapes)("%s", (toe) => {
    const last = made(toe);
    const { byStick, withoutPoint, pointMm } = nominalSize(last);
    expect(withoutPoint).toBe(38);
    if (toe === "pointed") {
      expect(byStick).toBe(39.5);
      expect(pointMm).toBeGreaterThan(8.5);
      expect(pointMm).toBeLessThan(20);
      expect(pointFound(last)[0]).toMatch(/EU 39\.5, but its narrow toe makes up about (9|10) mm .* about EU 38, .*common practice without a source/);
      expect(last.findings.find((f) => f.code === "size-counts-point")!.at).toEqual(last.landmarks.toePoint);
    }
    if (toe !== "pointed" && toe !== "almond") expect({ byStick, pointMm, told: pointFound(last) }).toEqual({ byStick: 38, pointMm: 0, told: [] });
  });
});

test("a pointed last is measured by its stick length and judged by its size: nothing is off", () => {
  const { measures, sizeEu } = completeMeasures({ stickLengthMm: (20 * 38) / 3 + 9.5, toe: "pointed" });
  expect(sizeEu).toBeCloseTo(38, 9);
  expect(measures.jointGirthMm).toBe(220);
});

describe.skipIf(!hasShared)("the synthetic lasts", () => {
  test.each([
    ["last_eu36_round", 36],
    ["last_eu37_almond", 37],
    ["last_eu38_round_heel20", 38],
    ["last_eu39_square", 39],
    ["last_eu41_pointed", 41],
  ])("%s is within half a size of its name", (name, size) => {
    const last = foundLast(`${name}.stl`);
    const { byStick, withoutPoint } = nominalSize(last);
    expect(Math.abs(withoutPoint - size)).toBeLessThanOrEqual(0.5);
    expect(pointFound(last)).toHaveLength(byStick === withoutPoint ? 0 : 1);
  });
});

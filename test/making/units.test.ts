import { describe, expect, test } from "vitest";
import fc from "fast-check";
import { unitsOf } from "#making/amounts/unit-table.ts";
import { amountWords, areaWords, inUnit, lengthWords, massWords, mmWords, ofUnit, quarterWords, readAmount, thicknessRange, thicknessWords, volumeWords } from "#making/amounts/units.ts";

/** The amount in the measure's own unit; fails where it is not read. */
function amount(...asked: Parameters<typeof readAmount>): number {
  const read = readAmount(...asked);
  if ("wrong" in read) throw new Error(read.wrong);
  return read.value;
}
const wrong = (...asked: Parameters<typeof readAmount>): string => {
  const read = readAmount(...asked);
  return "wrong" in read ? read.wrong : "";
};

describe("units of the leather trade", () => {
  test("area, exact: 1 ft² is 9.290304 dm² by definition of the foot (304.8 mm, international yard and pound, 1959)", () => {
    expect(inUnit(ofUnit(1, "ft2"), "dm2")).toBeCloseTo(9.290304, 14);
    expect(ofUnit(1, "ft2")).toBe(92_903.04);
    expect(inUnit(ofUnit(1, "dm2"), "ft2")).toBeCloseTo(0.107639104, 9);
    expect(inUnit(ofUnit(1, "m2"), "ft2")).toBeCloseTo(10.7639104, 7);
    expect(inUnit(ofUnit(1, "ft2"), "in2")).toBeCloseTo(144, 12);
  });

  test("thickness: an ounce is 1/64 in (a leather seller's chart), so 2, 2.5, 3, 4 and 8 oz are 0.79375, 0.99219, 1.19063, 1.5875 and 3.175 mm", () => {
    expect(ofUnit(1, "thickOz")).toBe(0.396875);
    [[2, 0.79375], [2.5, 0.9921875], [3, 1.190625], [4, 1.5875], [8, 3.175]].forEach(([oz, mm]) => expect(ofUnit(oz!, "thickOz")).toBeCloseTo(mm!, 5));
    expect(ofUnit(8, "thickOz")).toBe(25.4 / 8);
  });

  test("thickness of soles: an iron is 1/48 in; 16 oz are 12 iron are 1/4 in, 6 oz are 4.5 iron (a bookbinder's conversions)", () => {
    expect(ofUnit(1, "iron")).toBeCloseTo(0.529167, 6);
    expect(inUnit(ofUnit(16, "thickOz"), "iron")).toBeCloseTo(12, 12);
    expect(ofUnit(12, "iron")).toBeCloseTo(25.4 / 4, 12);
    expect(inUnit(ofUnit(6, "thickOz"), "iron")).toBeCloseTo(4.5, 12);
  });

  test("weight and length: 1 lb is 453.59237 g and 16 oz, 1 yd is 0.9144 m (definitions of 1959)", () => {
    expect(ofUnit(1, "lb")).toBe(453.59237);
    expect(inUnit(ofUnit(1, "lb"), "oz")).toBeCloseTo(16, 12);
    expect(inUnit(ofUnit(1, "yd"), "m")).toBeCloseTo(0.9144, 12);
  });
});

describe("amounts as a maker writes them", () => {
  test.each([
    ["6 ft2", "area", 6 * 92_903.04], ["6 sq ft", "area", 6 * 92_903.04], ["6 ft²", "area", 6 * 92_903.04], ["6 sq. ft.", "area", 6 * 92_903.04], ["6 square feet", "area", 6 * 92_903.04], ["6sf", "area", 6 * 92_903.04],
    ["18,4 dm²", "area", 184_000], ["18.4 dm2", "area", 184_000], ["1/2 m2", "area", 500_000], ["½ m²", "area", 500_000], ["2½ dm2", "area", 25_000], ["2 1/2 dm2", "area", 25_000], ["0,125 m2", "area", 125_000],
    ["1 000 m", "length", 1e6], ["1\u00a0000 m", "length", 1e6], ["1'000 m", "length", 1e6], ["1,000.5 m", "length", 1_000_500], ["1.000,5 m", "length", 1_000_500], ["3 yards", "length", 2743.2], ["12 in", "length", 304.8], ["12\"", "length", 304.8], ["5 Metres", "length", 5000],
    ["250 g", "mass", 250], ["1/4 kg", "mass", 250], ["2 lbs", "mass", 907.18474], ["4 oz", "mass", 113.3980925],
    ["250 ml", "volume", 250_000], ["1 litre", "volume", 1e6],
    ["200 pieces", "count", 200], ["200", "count", 200], ["2 pairs", "count", 4], ["3 dozen", "count", 36],
    ["2½ oz", "thickness", 0.9921875], ["8 iron", "thickness", 25.4 / 6], ["1,1 mm", "thickness", 1.1],
  ] as const)("%s is read", (written, measure, value) => expect(amount(written, measure)).toBeCloseTo(value, 6));

  test("a plain number counts in the unit that is usual there, and is not read where none is", () => {
    expect(amount("6", "area", "ft2")).toBe(6 * 92_903.04);
    expect(amount(6, "area", "ft2")).toBe(6 * 92_903.04);
    expect(wrong("6", "area")).toContain("has no unit");
    expect(wrong("6", "area")).toContain("ft²");
  });

  test("a comma before just three digits is asked and not guessed: a shop's page prints 10,764 ft² for 1 m²", () => {
    expect(wrong("10,764 ft2", "area")).toMatch(/10\.764.* or 10764/u);
    expect(wrong("1,234", "count")).toMatch(/1\.234.* or 1234/u);
  });

  test.each([
    ["0.0000001 mm2", "area", /"0\.0000001" is less than can be measured or weighed/u], [1e-7, "count", /less than/u], ["-3 m2", "area", /below 0/u], ["−3 m2", "area", /below 0/u], [-3, "count", /below 0/u], ["", "mass", /empty.*g, kg, oz or lb/u], ["  ", "area", /empty/u],
    ["3 furlongs", "length", /"furlongs" is no unit of length here; write mm, cm, m, in, ft or yd/u], ["3 kg", "area", /"kg" is no unit of area/u], ["3 m", "area", /no unit of area/u], ["2 ft2", "length", /no unit of length/u],
    ["much", "area", /no number/u], ["1/0 m2", "area", /fraction by 0/u], ["1..2 m", "length", /no number/u], ["1 2 m", "length", /no number/u], [Number.NaN, "area", /no number/u], [Infinity, "count", /no number/u], ["constructor m", "length", /no number/u], ["1 constructor", "length", /no unit/u],
  ] as const)("%s is refused with what to write", (written, measure, what) => expect(wrong(written, measure)).toMatch(what));

  test("what is written in any unit of a measure is read back to a part in 10¹²", () => {
    const measures = ["area", "length", "mass", "volume", "count", "thickness"] as const;
    fc.assert(fc.property(fc.constantFrom(...measures), fc.nat(), fc.integer({ min: 1, max: 999_999 }), (measure, which, thousandths) => {
      const signs = unitsOf(measure);
      const sign = signs[which % signs.length]!;
      const text = `${(thousandths / 1000).toFixed(4)} ${sign}`;
      const read = amount(text, measure);
      const unit = readAmount(text, measure);
      expect(inUnit(read, "unit" in unit ? unit.unit : "mm")).toBeCloseTo(thousandths / 1000, 9);
    }));
  });

  test("whatever is written, it is read or refused with a reason, and never below nothing", () => {
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom(..."0123456789.,/ -½'mftdk²2gozs\"") }), fc.constantFrom("area", "length", "mass", "count", "thickness"), (text, measure) => {
      const read = readAmount(text, measure);
      if ("wrong" in read) expect(read.wrong.length).toBeGreaterThan(5);
      else expect(read.value).toBeGreaterThanOrEqual(0);
    }));
  });
});

describe("amounts in words", () => {
  test("area in dm² and ft², thickness in mm, ounces and irons", () => {
    expect(areaWords(184_000)).toBe("18.4 dm² (2.0 ft²)");
    expect(areaWords(ofUnit(6, "ft2"))).toBe("55.7 dm² (6.0 ft²)");
    expect(thicknessWords(1.1)).toBe("1.1 mm (2¾ oz)");
    expect(thicknessWords(4.5, "iron")).toBe("4.5 mm (8½ iron)");
    expect(thicknessRange(1, 1.1)).toBe("1.0 to 1.1 mm (2½ to 2¾ oz)");
    expect(thicknessRange(0.79, 0.8)).toBe("0.79 to 0.8 mm (2 oz)");
  });

  test("8 irons are 4.2 mm and 9 irons 4.8 mm (tables of leather weights)", () => {
    expect(thicknessWords(4.23, "iron")).toBe("4.23 mm (8 iron)");
    expect(thicknessWords(4.76, "iron")).toBe("4.76 mm (9 iron)");
  });

  test("lengths, weights and volumes go over to the larger unit without a jump", () => {
    expect(lengthWords(451)).toBe("451 mm (17.8 in)");
    expect(lengthWords(999.7)).toBe("1.0 m (1.1 yd)");
    expect(lengthWords(4200)).toBe("4.2 m (4.6 yd)");
    expect(massWords(0.8)).toBe("0.8 g (0.03 oz)");
    expect(massWords(45)).toBe("45 g (1.6 oz)");
    expect(massWords(1200)).toBe("1.2 kg (2.6 lb)");
    expect(volumeWords(23_900)).toBe("23.9 cm³");
    expect(amountWords(3400, "volume")).toBe("3.4 ml");
    expect(mmWords(1.8)).toBe("1.8 mm");
  });

  test("quarters are rounded to the nearest and carried over", () => {
    expect([0, 0.1, 0.2, 0.5, 0.9, 2.7, 3].map(quarterWords)).toEqual(["0", "0", "¼", "½", "1", "2¾", "3"]);
  });
});

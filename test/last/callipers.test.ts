// Scale by the maker's callipers. Expected factors are worked by hand; the last is the made one (invented numbers).
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { ownMeasureFindings, refuseSlip, scaleByCallipers } from "#last/callipers.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Measures } from "#last/last.ts";
import type { SaidOfScan } from "#last/said.ts";
import { asInTruth, featherError, intoTruth, laid } from "../support/against-truth.ts";
import { exampleLast } from "../support/scans.ts";

const found = { stickLength: 250, ballWidth: 75, jointGirth: 220, lastLength: 247, featherLength: 555 } as Measures;

describe("one factor from two callipers", () => {
  test("least squares in logarithms, weighed by the square of the measure", () => {
    // ln k = (252.5² ln 1.01 + 75.3² ln 1.004) / (252.5² + 75.3²) = 0.00946…: nearly the stick length's.
    const { factor, findings } = scaleByCallipers({ stickLength: 252.5, ballWidth: 75.3 }, found)!;
    const [a, b] = [252.5 ** 2, 75.3 ** 2];
    expect(factor).toBeCloseTo(1.01 ** (a / (a + b)) * 1.004 ** (b / (a + b)), 12);
    expect(findings.map((f) => f.code)).toEqual(["scale-set"]);
    expect(explain(findings[0]!)).toMatch(/0\.95 % larger.*stick length .*%.*ball width .*0\.4 mm \(0\.5\d %\) more than yours/);
  });

  test("one measure alone is followed, and that it cannot check itself is said", () => {
    const { factor, findings } = scaleByCallipers({ ballWidth: 76.5 }, found)!;
    expect(factor).toBeCloseTo(1.02, 12);
    expect(explain(findings[0]!)).toContain("cannot check itself");
  });

  test("what is left over is judged by what telephones' scans are out by (0.89 mm, a published study)", () => {
    const codes = (ballWidth: number): string[] => scaleByCallipers({ stickLength: 250, ballWidth }, found)!.findings.map((f) => f.code);
    expect(codes(75.8)).toEqual(["scale-set"]);
    expect(codes(76.05)).toEqual(["scale-set", "scale-leaves"]);
  });

  test("two that contradict each other are named, and the stick length is followed, not the mean", () => {
    const { factor, findings } = scaleByCallipers({ stickLength: 250, ballWidth: 77 }, found)!;
    expect(factor).toBe(1);
    const said = findings.find((f) => f.code === "scale-contradicts")!;
    expect(explain(said)).toMatch(/stick length the scan should be neither larger nor smaller, by the ball width 2\.67 % larger/);
  });

  test("more than 3 % is asked about", () => {
    expect(scaleByCallipers({ stickLength: 258 }, found)!.findings.map((f) => f.code)).toEqual(["scale-set", "scale-far"]);
    expect(scaleByCallipers({}, found)).toBeUndefined();
  });
});

describe("a reading that cannot be of this scan is refused at its measure", () => {
  const slip = (said: SaidOfScan["measured"], unread = 1, known = true) => () => refuseSlip(said, found, unread, known);
  test("60 % more on the stick length; a fifth more on the ball width; millimetres and inches mistaken in both", () => {
    expect(slip({ stickLength: 400 })).toThrow(/stick length of 400 mm is 60 % more than the scan's 250 mm.*Check the reading/);
    expect(slip({ stickLength: 251, ballWidth: 60 })).toThrow(/ball width of 60 mm is 20 % less than the scan's 75 mm/);
    expect(slip({ stickLength: 250 / 25.4, ballWidth: 75 / 25.4 })).toThrow(/stick length/);
    // The scan was made larger by what the stick length asks for before it was measured: said of the scan as it came.
    expect(slip({ stickLength: 250 }, 1.6)).toThrow(/250 mm is 60 % more than the scan's 156 mm/);
  });

  test("what may be true goes on: within 15 %, two that agree, a scan in no unit", () => {
    expect(slip({ stickLength: 280, ballWidth: 70 })).not.toThrow();
    expect(slip({ stickLength: 310, ballWidth: 93 })).not.toThrow();
    expect(slip({ stickLength: 250 }, 1.6, false)).not.toThrow();
    expect(slip({})).not.toThrow();
  });
});

test("other measures are held beside what was found: 3 mm for a tape round, 1.5 mm for a length", () => {
  const codes = (said: SaidOfScan["measured"]): string[] => ownMeasureFindings(said, found).map((f) => (f.data as { measure: string }).measure);
  expect(codes({ jointGirth: 222.9, lastLength: 245.6, featherLength: 557 })).toEqual([]);
  expect(codes({ jointGirth: 223.1, lastLength: 245.4, featherLength: 551 }).sort()).toEqual(["featherLength", "jointGirth", "lastLength"]);
  expect(explain(ownMeasureFindings({ jointGirth: 226 }, found)[0]!)).toMatch(/joint girth of the scan reads 220\.0 mm, 6\.0 mm less than yours of 226\.0 mm/);
});

describe("on a scan", () => {
  const made = exampleLast();
  const { stickLength, ballWidth } = made.measures;
  const line = Array.from({ length: made.feather.points.length / 3 }, (_, i) => [...made.feather.points.subarray(3 * i, 3 * i + 3)]);

  test.each([
    ["2 % too small", 0.98],
    ["in no unit at all", 0.00731],
  ])("%s is brought to size, and the file's own points stay where they are", (_, unitPerMm) => {
    const scan = laid(made.mesh, { ...asInTruth, unitPerMm });
    const last = lastFromScan(scan, { name: "scan", measured: { stickLength, ballWidth } }, unwatched);
    expect(Math.abs(last.measures.stickLength - stickLength)).toBeLessThan(0.15);
    expect(Math.abs(last.measures.ballWidth - ballWidth)).toBeLessThan(0.3);
    expect(Math.abs(last.measures.jointGirth - made.measures.jointGirth)).toBeLessThan(1);
    expect(last.placement.unitPerMm / unitPerMm).toBeCloseTo(1, 3);
    expect(featherError(last, { ...asInTruth, unitPerMm }, line).rms).toBeLessThan(0.3);
    const far = Math.abs(unitPerMm - 1) > 0.03;
    expect(last.findings.some((f) => f.code === "scale-far")).toBe(far);
    expect(last.findings.some((f) => f.code === "unit-read")).toBe(false);
  });

  test("a stick length of half as much again is refused before anything is scaled by it", () => {
    expect(() => lastFromScan(made.mesh, { name: "scan", measured: { stickLength: 1.5 * stickLength } }, unwatched)).toThrow(/50 % more than the scan's/);
  });

  test("a toe point said by the maker carries the axis", () => {
    const p = (i: number): [number, number, number] => [made.feather.points[3 * i]!, made.feather.points[3 * i + 1]!, made.feather.points[3 * i + 2]!];
    const toe = Math.round(made.feather.toeIndex) + 4;
    const last = lastFromScan(made.mesh, { name: "scan", landmarks: { toePoint: p(toe) } }, unwatched);
    const [x, y, z] = intoTruth(last, asInTruth, last.landmarks.toePoint);
    expect(Math.hypot(x - p(toe)[0], y - p(toe)[1], z - p(toe)[2])).toBeLessThan(0.3);
    expect(last.landmarks.toePoint[1]).toBeCloseTo(0, 6);
    expect(last.placed).toEqual(["toePoint"]);
  });
});

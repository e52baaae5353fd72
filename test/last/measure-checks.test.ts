// Pairs of numbers that do not belong together are named. ANSUR II (2012), women: 1,986 feet, public release.
import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { demoMeasurements } from "#last/demo.ts";
import { judgeMeasures, measureChecks } from "#last/measure-checks.ts";
import type { LastMeasurements } from "#last/measured.ts";
import { askedFor, lastNames, truthOf } from "../support/truth-last.ts";
import { hasShared } from "../support/shared.ts";

const said = (change: Partial<LastMeasurements>, sizeEu?: number): string[] => {
  const found = judgeMeasures({ ...demoMeasurements, ...change }, sizeEu);
  for (const f of found) expect(severityOf(f)).toBe("look");
  return found.map(explain);
};

test("the example's numbers belong together", () => {
  expect(said({}, 38)).toEqual([]);
});

test.each([
  [{ jointGirthMm: 170 }, "joint girth (170.0 mm) and the ball width (76.5 mm)"],
  [{ jointGirthMm: 281 }, "joint girth (281.0 mm) and the stick length (253.3 mm)"],
  [{ waistGirthMm: 230 }, "waist girth (230.0 mm) and the joint girth (219.0 mm)"],
  [{ instepGirthMm: 210 }, "instep girth (210.0 mm) and the waist girth (213.0 mm)"],
  [{ heelGirthMm: 300 }, "heel girth (300.0 mm) and the instep girth (230.0 mm)"],
  [{ ballWidthMm: 92 }, "ball width (92.0 mm) and the stick length (253.3 mm)"],
  [{ seatWidthMm: 70 }, "seat width (70.0 mm) and the ball width (76.5 mm)"],
  [{ toeSpringMm: 24 }, "toe spring (24.0 mm) and the heel height (12.0 mm)"],
] as [Partial<LastMeasurements>, string][])("%o", (change, pair) => {
  const texts = said(change);
  const about = texts.find((t) => t.includes(pair));
  expect(about, texts.join("\n")).toBeDefined();
  expect(about).toMatch(/\d+ mm to \d+ mm is usual, so it is \d+\.\d mm off\. A slip would be: \w/);
});

test("a stick length of another size is named, more room left for a pointed toe", () => {
  expect(said({}, 36)[0]).toContain("does not fit size 36");
  expect(said({ toe: "pointed" }, 36)).toEqual([]);
});

test("each pair is told once, whatever the number of checks on it", () => {
  const pairs = said({ jointGirthMm: 170 }).map((t) => /The (.*) \(.* and the (.*) \(/.exec(t)!.slice(1).join());
  expect(new Set(pairs).size).toBe(pairs.length);
});

test("every check names its source", () => {
  for (const { source, slips } of measureChecks) {
    expect(source.length).toBeGreaterThan(10);
    expect(source).not.toMatch(/handbook/i);
    expect(slips.every((s) => s.length > 10)).toBe(true);
  }
});

/** Mean foot of each EU size in ANSUR II: length, ball girth, breadth, heel breadth (checks 2.1, computed from the table of feet). */
test.each([
  [36, 227.5, 216.5, 88.3],
  [38, 240.0, 224.6, 91.4],
  [40, 253.3, 231.8, 94.2],
  [42, 266.5, 240.7, 97.4],
])("a last that fits the mean foot of EU %d raises nothing about its joints", (_, foot, girth, breadth) => {
  const change = { stickLengthMm: foot + 40 / 3, jointGirthMm: girth - 4, ballWidthMm: breadth - 15 };
  expect(said({ ...change, waistGirthMm: girth - 10, instepGirthMm: girth + 6 }).filter((t) => t.includes("joint girth"))).toEqual([]);
});

describe.skipIf(!hasShared)("synthetic lasts", () => {
  test.each(lastNames)("%s: its true numbers belong together", (name) => {
    const m = askedFor(truthOf(name).values, { side: "right", toe: name.includes("pointed") ? "pointed" : "round" });
    expect(judgeMeasures(m, Number(/eu(\d\d)/.exec(name)![1])).map(explain)).toEqual([]);
  });
});

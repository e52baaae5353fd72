import { describe, expect, test } from "vitest";
import { featherRuns } from "#app/picture/feather-runs.ts";
import { pulledLine } from "#app/picture/feather-preview.ts";
import { endOf } from "#app/picture/apart-map.ts";
import { wholeShare } from "#app/state/stage-words.ts";

/** A circle of radius 80 mm in the plane z = 0, n points. */
const circle = (n: number): Float64Array => Float64Array.from({ length: 3 * n }, (_, k) => [Math.cos, Math.sin, () => 0][k % 3]!((2 * Math.PI * Math.floor(k / 3)) / n) * 80);
const flat = (p: readonly number[]): readonly number[] => [p[0]!, p[1]!, 0];
const away = (line: Float64Array, from: Float64Array, i: number): number => Math.hypot(line[3 * i]! - from[3 * i]!, line[3 * i + 1]! - from[3 * i + 1]!);

describe("the feather line cut by how sure it is", () => {
  const n = 40;
  const points = circle(n);
  test("is one closed run where it is clear all the way", () => {
    const runs = featherRuns({ confidence: new Float64Array(n).fill(1) }, points);
    expect(runs).toHaveLength(1);
    expect(runs[0]!.points.subarray(-3)).toEqual(points.subarray(0, 3));
  });
  test("is whole: runs meet end to end, also over the first point, and tell the right kind", () => {
    const confidence = Float64Array.from({ length: n }, (_, i) => (i < 5 || i >= 35 ? 0.3 : i >= 20 && i < 26 ? 0.05 : 1));
    const runs = featherRuns({ confidence }, points);
    expect(runs.map((r) => [r.sureness, r.points.length / 3 - 1]).sort()).toEqual([["clear", 15], ["clear", 9], ["guessed", 6], ["soft", 10]]);
    runs.forEach((r, i) => expect(r.points.subarray(-3)).toEqual(runs[(i + 1) % runs.length]!.points.subarray(0, 3)));
  });
  test("does not flicker: a few points of another kind are not told apart", () => {
    const confidence = Float64Array.from({ length: n }, (_, i) => (i === 7 || i === 8 ? 0.2 : 1));
    expect(featherRuns({ confidence }, points)).toHaveLength(1);
  });
});

describe("the line while it is pulled", () => {
  const points = circle(240);
  test("runs through the place, is smooth beside it, and stays where it was farther off", () => {
    const line = pulledLine(points, [[88, 0, 0]], flat);
    expect([line[0], line[1]]).toEqual([88, 0]);
    for (let i = 1; i < 10; i++) expect(away(line, points, i)).toBeLessThan(away(line, points, i - 1));
    expect(away(line, points, 120)).toBe(0);
    expect(points[0]).toBe(80);
  });
  test("stays as it is for a place that lies on it", () => expect(pulledLine(points, [[80, 0.1, 0]], flat)).toBe(points));
});

test("the scale of the comparison ends at a round length that takes in nearly all", () => {
  expect(endOf(Float64Array.from({ length: 1000 }, (_, i) => (i < 995 ? 0.4 : -7)))).toBe(1);
  expect(endOf(Float64Array.from([-1.6, 0.2]))).toBe(2);
  expect(endOf(Float64Array.from([30]))).toBe(8);
});

test("how far the work is grows from stage to stage and never goes back", () => {
  let fraction = 0;
  for (const [stage, share] of [["last", 0], ["clean", 0.5], ["clean", 1], ["unheard of", 0.9], ["feather line", 0.2], ["clean", 0.1], ["pieces", 1]] as const) {
    const next = wholeShare({ on: "pair", fraction, pictures: { names: [], behind: 0 } }, stage, share).fraction;
    expect(next).toBeGreaterThanOrEqual(fraction);
    fraction = next;
  }
  expect(fraction).toBeCloseTo(1, 12);
});

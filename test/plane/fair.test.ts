import { describe, expect, test } from "vitest";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { bendChanges, curvatures } from "#plane/curvature.ts";
import { fairLine, fairLoop } from "#plane/fair.ts";
import { area, lengthOf, perimeter } from "#plane/measure.ts";
import { SmoothingSpline } from "#plane/smoothing-spline.ts";
import { arcPoints } from "../support/outlines.ts";

/** Park and Miller's generator, the same numbers on every machine. */
function shaken(xy: Float64Array, mm: number, keepEnds = true): Float64Array {
  let seed = 7;
  return xy.map((v, i) => {
    seed = (seed * 48271) % 2147483647;
    const end = keepEnds && (i < 2 || i >= xy.length - 2);
    return end ? v : v + mm * ((2 * seed) / 2147483647 - 1);
  });
}

const sine = (n: number) => ({ xy: Float64Array.from({ length: 2 * (n + 1) }, (_, i) => (i % 2 === 0 ? (200 * (i >> 1)) / n : 15 * Math.sin((2 * Math.PI * (i >> 1)) / n))) });

describe("smoothing spline", () => {
  // Without stiffness a smoothing spline is the natural cubic spline; on x³ with clamped-free ends the inside is exact to
  // fourth order. A parabola of few knots against its closed-form moments: knots 0 1 2, values 0 1 4 give γ₁ = 3 (1·γ₁·(2/3) = 2).
  test("three points by hand", () => {
    const spline = new SmoothingSpline(Float64Array.of(0, 0, 1, 1, 2, 4), Float64Array.of(0, 1, 2));
    expect(spline.fit(0)).toBe(0);
    // Half-way in the first span: a y₀ + b y₁ + h²/6 (b³ − b) γ₁ = 0.5 + (0.125 − 0.5)/6 · 3 = 0.3125.
    const at = spline.sample(0, 2, 0.5);
    expect(at[3]!).toBeCloseTo(0.3125, 12);
    expect([...at.subarray(8)]).toEqual([2, 4]);
  });

  test("a straight line stays itself at any stiffness, an infinitely stiff curve is straight between its ends", () => {
    const knots = Float64Array.of(0, 1, 3, 4, 7);
    const straight = new SmoothingSpline(Float64Array.from(knots, (t) => t).reduce((a, t, i) => { a[2 * i] = t; a[2 * i + 1] = 2 * t; return a; }, new Float64Array(10)), knots);
    expect(straight.fit(1e6)).toBeLessThan(1e-12);
    const bent = new SmoothingSpline(Float64Array.of(0, 0, 1, 1, 3, 1, 4, 1, 7, 0), knots);
    bent.fit(1e15);
    const ends = bent.sample(0, 7, 1);
    for (let i = 1; i < ends.length; i += 2) expect(Math.abs(ends[i]!)).toBeLessThan(1e-6);
  });
});

describe("fair line", () => {
  test("stays within the tolerance of every point and keeps both ends exactly", () => {
    const rough = { xy: shaken(sine(90).xy, 0.04) };
    const fair = fairLine(rough);
    const arc = arcLengths(fair);
    for (let i = 0; i < rough.xy.length; i += 2) expect(nearestOn(fair, arc, rough.xy[i]!, rough.xy[i + 1]!).distance).toBeLessThanOrEqual(0.05);
    expect([...fair.xy.subarray(0, 2)]).toEqual([...rough.xy.subarray(0, 2)]);
    expect([...fair.xy.subarray(fair.xy.length - 2)]).toEqual([...rough.xy.subarray(rough.xy.length - 2)]);
  });

  test("takes the bumps out of a shaken sine: one change of bend as in the true curve, many before", () => {
    const rough = { xy: shaken(sine(90).xy, 0.03) };
    expect(bendChanges(rough)).toBeGreaterThan(10);
    expect(bendChanges(fairLine(rough))).toBe(1);
    expect(bendChanges(sine(4000))).toBe(1);
  });

  test("a faceted arc becomes round: length and radius of the true circle, R = 30", () => {
    const fair = fairLine({ xy: arcPoints(0, 0, 30, 0, Math.PI, 38) });
    expect(Math.abs(lengthOf(fair) - 30 * Math.PI)).toBeLessThan(0.1);
    const k = curvatures(fair);
    for (let i = 4; i < k.length - 4; i++) expect(Math.abs(1 / k[i]! - 30)).toBeLessThan(1.5);
  });

  test("points no farther apart than asked", () => {
    const { xy } = fairLine(sine(40), { stepMm: 0.8 });
    for (let i = 2; i < xy.length; i += 2) expect(Math.hypot(xy[i]! - xy[i - 2]!, xy[i + 1]! - xy[i - 1]!)).toBeLessThan(0.81);
  });

  test("repeated points and very short lines do no harm", () => {
    const doubled = Float64Array.from([...sine(40).xy].flatMap((_, i, all) => (i % 2 === 0 ? [all[i]!, all[i + 1]!, all[i]!, all[i + 1]!] : [])));
    expect(fairLine({ xy: doubled }).xy.every(Number.isFinite)).toBe(true);
    expect([...fairLine({ xy: Float64Array.of(0, 0, 1, 1) }).xy]).toEqual([0, 0, 1, 1]);
  });
});

describe("fair loop", () => {
  test("a shaken circle R 40: area within what the tolerance allows, no bend to the outside", () => {
    const circle = { xy: shaken(arcPoints(0, 0, 40, 0, 2 * Math.PI, 120), 0.03, false).slice(0, 240) };
    const fair = fairLoop(circle);
    expect(Math.abs(area(fair) - Math.PI * 1600)).toBeLessThan(2 * Math.PI * 40 * 0.05);
    expect(Math.abs(perimeter(fair) - 80 * Math.PI)).toBeLessThan(2 * Math.PI * 0.06);
    const closed = { xy: Float64Array.of(...fair.xy, ...fair.xy.subarray(0, 20)) };
    expect(bendChanges(closed)).toBe(0);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { selfCrossing, selfCrossingOpen, withoutLoops } from "#plane/crossing.ts";
import { evenWidth, offsetEdge, offsetLoop } from "#plane/edge-offset.ts";
import { area, lengthOf, perimeter } from "#plane/measure.ts";
import { offsetOutline } from "../support/grid-offset.ts";
import { arcPoints, starOutline } from "../support/outlines.ts";

const rectangle = { xy: Float64Array.of(0, 0, 100, 0, 100, 60, 0, 60) };
const closedCircle = (r: number, n: number) => ({ xy: arcPoints(0, 0, r, 0, 2 * Math.PI, n).slice(0, 2 * n) });

describe("uniform offset of a rectangle 100 × 60 (Steiner's formula)", () => {
  test.each([[12, 10292.38934, 395.3982237], [5, 7678.539816, 351.4159265]])("outward by %d mm with round joins", (d, size, length) => {
    const [grown] = offsetOutline(rectangle, d);
    expect(Math.abs(area(grown!) / size - 1)).toBeLessThan(2e-4);
    expect(Math.abs(perimeter(grown!) / length - 1)).toBeLessThan(2e-4);
  });

  test("outward by 12 mm, mitred: 124 × 84", () => {
    const [grown] = offsetOutline(rectangle, 12, { join: "mitre" });
    expect(area(grown!)).toBeCloseTo(10416, 9);
  });

  test("inward by 12 mm, and so far in that nothing is left", () => {
    expect(area(offsetOutline(rectangle, -12)[0]!)).toBeCloseTo(76 * 36, 6);
    expect(offsetOutline(rectangle, -31)).toEqual([]);
  });

  test("out and in gives a convex outline back (mitred, to the grid)", () => {
    const there = offsetOutline(rectangle, 7.3, { join: "mitre" })[0]!;
    const back = offsetOutline(there, -7.3, { join: "mitre" })[0]!;
    expect(area(back)).toBeCloseTo(6000, 2);
  });
});

describe("offset of an open edge", () => {
  // ΔL = d·θ, exact for circle arcs.
  test.each([[12, 144.5133], [-12, 106.8142]])("arc R 80, 90°, by %d mm", (d, length) => {
    const arc = { xy: arcPoints(0, 0, 80, 0, Math.PI / 2, 4000) };
    expect(lengthOf(arc)).toBeCloseTo(125.6637, 4);
    // Counter-clockwise travel has the outside on its right, where widths are positive.
    expect(Math.abs(lengthOf(offsetEdge(arc, evenWidth(arc, d))) - length)).toBeLessThan(1e-4);
  });

  // Girth over thickness: 2πt for every closed convex section.
  test.each([[1.0, 6.2832], [1.2, 7.5398], [1.3, 8.1681], [1.5, 9.4248], [2.2, 13.823]])("a closed girth grows by 2πt, t = %d", (t, more) => {
    const n = 8000;
    const ellipse = { xy: Float64Array.from({ length: 2 * n }, (_, i) => (i % 2 === 0 ? 45 * Math.cos((Math.PI * (i >> 1)) / 4000) : 35 * Math.sin((Math.PI * (i >> 1)) / 4000))) };
    // Ellipse perimeter by the complete elliptic integral E: 252.3101225.
    expect(perimeter(ellipse)).toBeCloseTo(252.3101225, 4);
    expect(Math.abs(perimeter(offsetLoop(ellipse, evenWidth(ellipse, t))) - perimeter(ellipse) - more)).toBeLessThan(1e-4);
  });

  test("both ways of offsetting agree on a circle", () => {
    const circle = closedCircle(50, 720);
    const byNormals = offsetLoop(circle, evenWidth(circle, 9));
    expect(Math.abs(area(byNormals) / area(offsetOutline(circle, 9)[0]!) - 1)).toBeLessThan(1e-4);
  });

  test("a width that changes along a straight edge is met square to it", () => {
    const line = { xy: Float64Array.from({ length: 402 }, (_, i) => (i % 2 === 0 ? i / 4 : 0)) };
    const widths = Float64Array.from({ length: 201 }, (_, i) => 10 + i / 20);
    const { xy } = offsetEdge(line, widths);
    for (let i = 0; i <= 200; i++) expect([xy[2 * i], xy[2 * i + 1]]).toEqual([i / 2, -widths[i]!]);
  });

  test("a hollow tighter than the width: loops go, no point comes nearer than the width", () => {
    // A dip 8 mm deep whose bottom has a radius of 3.6 mm (1 / 4k², k = π / 12), offset by 10 mm into the hollow.
    const depth = (x: number): number => (Math.abs(x) < 12 ? -4 * (1 + Math.cos((Math.PI * x) / 12)) : 0);
    const line = { xy: Float64Array.from({ length: 802 }, (_, i) => (i % 2 === 0 ? (i >> 1) / 5 - 40 : depth((i >> 1) / 5 - 40))) };
    const out = offsetEdge(line, evenWidth(line, -10));
    expect(selfCrossingOpen(out)).toBeUndefined();
    const arc = arcLengths(line);
    for (let i = 0; i < out.xy.length; i += 2) expect(nearestOn(line, arc, out.xy[i]!, out.xy[i + 1]!).distance).toBeGreaterThan(10 - 0.05);
  });
});

describe("self-crossing", () => {
  test("stars never cross themselves; a swapped pair of far points does", () => {
    fc.assert(
      fc.property(starOutline(), (o) => {
        expect(selfCrossing(o)).toBeUndefined();
      }),
      { seed: 22, numRuns: 200 },
    );
    const crossing = selfCrossing({ xy: Float64Array.of(0, 0, 10, 10, 10, 0, 0, 10) });
    expect(crossing).toEqual({ i: 0, j: 2, x: 5, y: 5 });
  });

  test("touching counts, sharing a corner does not", () => {
    expect(selfCrossing({ xy: Float64Array.of(0, 0, 10, 0, 10, 10, 5, 0, 0, 10) })).toBeDefined();
    expect(selfCrossing(rectangle)).toBeUndefined();
  });

  test("small loops are cut at their crossing, larger ones than asked are left", () => {
    const loop = { xy: Float64Array.of(0, 0, 10, 0, 10, 5, 5, 5, 5, -5, 20, -5) };
    expect([...withoutLoops(loop).xy]).toEqual([0, 0, 5, 0, 5, -5, 20, -5]);
    expect(withoutLoops(loop, 10)).toBe(loop);
  });
});

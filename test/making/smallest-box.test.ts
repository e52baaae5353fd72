import { expect, test } from "vitest";
import fc from "fast-check";
import { smallestBox } from "#making/needs/smallest-box.ts";

const turned = (points: readonly (readonly [number, number])[], degrees: number, mirrored = false) => {
  const a = (degrees * Math.PI) / 180, c = Math.cos(a), s = Math.sin(a);
  return { xy: Float64Array.from(points.flatMap(([x, y]) => [c * x - s * (mirrored ? -y : y), s * x + c * (mirrored ? -y : y)])) };
};
const boxAt = ({ xy }: { readonly xy: Float64Array }, degrees: number): number => {
  const { xy: p } = turned(Array.from({ length: xy.length / 2 }, (_, k) => [xy[2 * k]!, xy[2 * k + 1]!] as const), degrees);
  const xs = p.filter((_, k) => k % 2 === 0), ys = p.filter((_, k) => k % 2 === 1);
  return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
};
const point = fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -120, max: 120 }));

test("a rectangle holds itself, however it lies", () => {
  for (const degrees of [0, 12.5, 45, 90, 211]) {
    const box = smallestBox(turned([[0, 0], [247, 0], [247, 73], [0, 73]], degrees));
    expect(box.longMm).toBeCloseTo(247, 9);
    expect(box.wideMm).toBeCloseTo(73, 9);
  }
});

test("a square on its corner takes no more than itself; an equilateral triangle its side by its height", () => {
  expect(smallestBox(turned([[0, 0], [10, 0], [10, 10], [0, 10]], 45)).longMm).toBeCloseTo(10, 9);
  const { longMm, wideMm } = smallestBox(turned([[0, 0], [10, 0], [5, 5 * Math.sqrt(3)]], 17));
  expect(longMm * wideMm).toBeCloseTo(50 * Math.sqrt(3), 9);
});

test("no turn by quarter degrees finds a smaller one, and the mirrored twin takes the same", () => {
  fc.assert(fc.property(fc.array(point, { minLength: 4, maxLength: 12 }), (points) => {
    fc.pre(new Set(points.map(String)).size > 3 && points.some(([x, y]) => Math.abs((points[1]![0] - points[0]![0]) * (y - points[0]![1]) - (points[1]![1] - points[0]![1]) * (x - points[0]![0])) > 50));
    const outline = turned(points, 0);
    const { longMm, wideMm } = smallestBox(outline);
    expect(longMm).toBeGreaterThanOrEqual(wideMm);
    for (let degrees = 0; degrees < 90; degrees += 0.25) expect(boxAt(outline, degrees)).toBeGreaterThan(longMm * wideMm - 1e-6);
    const twin = smallestBox(turned(points, 0, true));
    expect(twin.longMm * twin.wideMm).toBeCloseTo(longMm * wideMm, 6);
  }), { numRuns: 60 });
});

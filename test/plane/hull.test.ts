// Convex hull against its definition: corners among the points, every turn to the left, no point outside.
import fc from "fast-check";
import { expect, test } from "vitest";
import { hullOf } from "#plane/hull.ts";

test("of a square with points inside and on its edges: its four corners, counter-clockwise", () => {
  expect(hullOf(Float64Array.of(2, 2, 0, 0, 1, 0, 2, 0, 1, 1, 0, 2, 0, 1))).toEqual([[0, 0], [2, 0], [2, 2], [0, 2]]);
});

test("holds every point and turns left at every corner", () => {
  // Whole numbers, so that the turns are exact.
  const at = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }));
  fc.assert(
    fc.property(fc.array(at, { minLength: 3, maxLength: 40 }), (points) => {
      const hull = hullOf(Float64Array.from(points.flat()));
      fc.pre(hull.length > 2);
      hull.forEach(([ax, ay], i) => {
        const [bx, by] = hull[(i + 1) % hull.length]!;
        const left = ([x, y]: readonly [number, number]): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
        expect(points.some(([x, y]) => x === ax && y === ay)).toBe(true);
        expect(left(hull[(i + 2) % hull.length]!)).toBeGreaterThan(0);
        for (const p of points) expect(left(p)).toBeGreaterThanOrEqual(0);
      });
    }),
    { seed: 7, numRuns: 200 },
  );
});

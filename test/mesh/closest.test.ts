import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ClosestPoint, nearestOnTriangleInto } from "#mesh/closest.ts";
import { triangleCount } from "#mesh/mesh.ts";
import { box, ellipsoid } from "./support/shapes.ts";

const coordinate = fc.double({ min: -4, max: 4, noNaN: true });
const place = fc.tuple(coordinate, coordinate, coordinate);

describe("nearest point", () => {
  test("of a box is the place clamped to it, from outside", () => {
    const closest = new ClosestPoint(box(1, 2, 3));
    fc.assert(
      fc.property(place, ([x, y, z]) => {
        const clamped = [Math.min(1, Math.max(0, x)), Math.min(2, Math.max(0, y)), Math.min(3, Math.max(0, z))];
        const distance = Math.hypot(x - clamped[0]!, y - clamped[1]!, z - clamped[2]!);
        fc.pre(distance > 0);
        const found = closest.find([x, y, z]);
        expect(found.distance).toBeCloseTo(distance, 12);
        found.point.forEach((c, k) => expect(c).toBeCloseTo(clamped[k]!, 12));
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test("is as near as that of any triangle, with any hint", () => {
    const body = ellipsoid(3, 2, 1, 3);
    const closest = new ClosestPoint(body);
    const out = new Float64Array(3);
    fc.assert(
      fc.property(place, fc.nat(triangleCount(body) - 1), (p, hint) => {
        let least = Infinity;
        for (let t = 0; t < triangleCount(body); t++) least = Math.min(least, nearestOnTriangleInto(out, body, t, ...p));
        closest.findInto(out, ...p);
        expect(closest.squaredDistance).toBe(least);
        const t = closest.findInto(out, ...p, hint);
        expect(closest.squaredDistance).toBe(least);
        expect(nearestOnTriangleInto(new Float64Array(3), body, t, ...p)).toBe(least);
      }),
      { seed: 4, numRuns: 60 },
    );
  });
});

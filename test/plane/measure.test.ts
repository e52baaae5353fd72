import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { area, bounds, lengthOf, perimeter, signedArea, winding } from "#plane/measure.ts";
import { mirrorOutline, mirrorPolyline, mirrorReversedInto } from "#plane/mirror.ts";
import { contains } from "#plane/inside.ts";
import { AreaPen, LengthPen, trace, type Pen } from "#plane/pen.ts";
import { starOutline } from "../support/outlines.ts";

const outlineOf = (...xy: number[]) => ({ xy: Float64Array.from(xy) });
const regular = (n: number) => ({ xy: Float64Array.from({ length: 2 * n }, (_, i) => (i % 2 === 0 ? Math.cos : Math.sin)((2 * Math.PI * (i >> 1)) / n)) });

describe("area and length", () => {
  // Textbook example of the shoelace formula.
  test("shoelace example", () => {
    const o = outlineOf(3, 4, 5, 11, 12, 8, 9, 5, 5, 6);
    expect(area(o)).toBe(30);
    expect(signedArea(o)).toBe(-30);
    expect(winding(o)).toBe(-1);
    expect(bounds(o)).toEqual({ minX: 3, minY: 4, maxX: 12, maxY: 11 });
  });

  // n sin(π/n) / π, by derivation.
  test.each([[16, 0.9935869], [32, 0.9983944], [64, 0.9995985], [128, 0.9998996]])("perimeter of the inscribed regular %i-gon against the circle's", (n, share) => {
    expect(Math.abs(perimeter(regular(n)) / (2 * Math.PI) - share)).toBeLessThan(1e-7);
  });

  test("an area far from the origin loses nothing (integers, exact)", () => {
    expect(area(outlineOf(1e9, 1e9, 1e9 + 3, 1e9, 1e9 + 3, 1e9 + 4, 1e9, 1e9 + 4))).toBe(12);
  });

  test("the close of an outline is part of its length, not of a polyline's", () => {
    expect(perimeter(outlineOf(0, 0, 3, 0, 3, 4))).toBe(12);
    expect(lengthOf(outlineOf(0, 0, 3, 0, 3, 4))).toBe(7);
  });

  test("every pen sees the same walk", () => {
    const seen: string[] = [];
    const pen: Pen = { begin: (x, y) => seen.push(`begin ${x} ${y}`), line: (x, y) => seen.push(`line ${x} ${y}`), close: () => seen.push("close") };
    trace(outlineOf(0, 0, 1, 0, 1, 1), pen);
    expect(seen).toEqual(["begin 0 0", "line 1 0", "line 1 1", "close"]);
  });

  test("pens measure several outlines one after the other", () => {
    const length = new LengthPen();
    const size = new AreaPen();
    for (const o of [outlineOf(0, 0, 3, 0, 3, 4), outlineOf(10, 10, 11, 10, 11, 11, 10, 11)]) {
      trace(o, length);
      trace(o, size);
    }
    expect(length.total).toBe(16);
    expect(size.total).toBe(7);
  });
});

describe("mirror", () => {
  test("twice gives every bit back; area, length and winding stay", () => {
    fc.assert(
      fc.property(starOutline(), (o) => {
        const before = o.xy.slice();
        const once = mirrorOutline(o);
        const inPlace = o.xy.slice();
        mirrorReversedInto(inPlace, inPlace);
        expect(o.xy).toEqual(before);
        expect(inPlace).toEqual(once.xy);
        expect(new BigUint64Array(mirrorOutline(once).xy.buffer)).toEqual(new BigUint64Array(before.buffer));
        expect(winding(once)).toBe(winding(o));
        expect(area(once)).toBeCloseTo(area(o), 8);
        expect(perimeter(once)).toBeCloseTo(perimeter(o), 9);
      }),
      { seed: 20, numRuns: 200 },
    );
  });

  test("an open line keeps its direction", () => {
    expect([...mirrorPolyline(outlineOf(1, 2, 3, 4)).xy]).toEqual([1, -2, 3, -4]);
  });
});

describe("inside", () => {
  test("a star's middle is inside, places beyond its tips are not", () => {
    fc.assert(
      fc.property(starOutline(), fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (o, a) => {
        expect(contains(o, 0, 0)).toBe(true);
        expect(contains(o, 101 * Math.cos(a), 101 * Math.sin(a))).toBe(false);
        expect(contains(mirrorOutline(o), 0, 0)).toBe(true);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  test("corners and edges count as inside, a horizontal ray through corners does not confuse", () => {
    const o = outlineOf(0, 0, 4, 0, 6, 2, 4, 4, 0, 4, 2, 2);
    for (const [x, y] of [[0, 0], [4, 0], [6, 2], [2, 2], [1, 0], [5, 1]] as const) expect(contains(o, x, y)).toBe(true);
    expect(contains(o, 1, 2)).toBe(false);
    expect(contains(o, 3, 2)).toBe(true);
    expect(contains(o, 7, 2)).toBe(false);
    expect(contains(o, -1, 0)).toBe(false);
    expect(contains(o, -1, 4)).toBe(false);
  });
});

import { describe, expect, test } from "vitest";
import { narrowest } from "#pieces/check/neck.ts";
import { arcPoints } from "../support/outlines.ts";

const ring = (points: readonly (readonly [number, number])[]) => ({ xy: Float64Array.from(points.flat()) });

/** Two round plates of radius `r`, their middles `apart`, joined by a bar of width `w`: the neck is the bar, by construction. */
function dumbbell(r: number, apart: number, w: number) {
  const turn = Math.asin(w / 2 / r);
  const right = arcPoints(apart / 2, 0, r, -Math.PI + turn, Math.PI - turn, 200);
  const left = arcPoints(-apart / 2, 0, r, turn, 2 * Math.PI - turn, 200);
  return { xy: Float64Array.from([...right, ...left]) };
}

describe("the narrowest place of an outline, on shapes whose neck is known", () => {
  test.each([2, 3.3, 5.9])("a bar of %d mm between two plates", (w) => {
    const neck = narrowest(dumbbell(30, 90, w), 6)!;
    expect(neck.mm).toBeCloseTo(w, 6);
    expect(Math.abs(neck.from[0])).toBeLessThan(16);
  });

  test("a bar as wide as the limit is none", () => {
    expect(narrowest(dumbbell(30, 90, 6.1), 6)).toBeUndefined();
  });

  test("an hourglass of two hollow circles: the waist is the distance of the circles", () => {
    // Circles of radius 40 about (0, ±42) hollow out a plate: 84 − 80 = 4 mm are left between them.
    const low = arcPoints(0, -42, 40, Math.PI / 2 + 0.9, Math.PI / 2 - 0.9, 300);
    const high = arcPoints(0, 42, 40, -Math.PI / 2 + 0.9, -Math.PI / 2 - 0.9, 300);
    const neck = narrowest({ xy: Float64Array.from([...low, ...high]) }, 10)!;
    // Points stand 0.24 mm apart: a chord bows by 0.0002 mm.
    expect(Math.abs(neck.mm - 4)).toBeLessThan(0.005);
    expect(Math.abs(neck.from[0])).toBeLessThan(1.5);
  });

  test("a wedge: as wide as it is 15 mm from its tip, thirty of edge in all; a blunt one is no neck", () => {
    const wedge = (degrees: number) => {
      const half = (degrees / 2 / 180) * Math.PI;
      return ring([[0, 0], [100 * Math.cos(half), -100 * Math.sin(half)], [100 * Math.cos(half), 100 * Math.sin(half)]]);
    };
    // Across at 15 mm along both sides: 30 sin(θ / 2).
    expect(Math.abs(narrowest(wedge(12), 6)!.mm / (30 * Math.sin((6 / 180) * Math.PI)) - 1)).toBeLessThan(0.06);
    expect(narrowest(wedge(30), 6)).toBeUndefined();
  });

  test("neither a square corner nor a slot cut into the piece is a neck; the bridge beside the slot is", () => {
    expect(narrowest(ring([[0, 0], [80, 0], [80, 50], [0, 50]]), 10)).toBeUndefined();
    // A slot 1 mm wide from below that leaves 3 mm at the top.
    const slotted = ring([[0, 0], [40, 0], [40, 47], [41, 47], [41, 0], [80, 0], [80, 50], [0, 50]]);
    expect(narrowest(slotted, 10)!.mm).toBeCloseTo(3, 9);
  });

  test("turned and moved it measures the same", () => {
    const shape = dumbbell(25, 80, 4);
    const c = Math.cos(1), s = Math.sin(1);
    const turned = { xy: shape.xy.map((v, i) => (i % 2 === 0 ? c * v - s * shape.xy[i + 1]! + 300 : s * shape.xy[i - 1]! + c * v - 90)) };
    expect(narrowest(turned, 6)!.mm).toBeCloseTo(narrowest(shape, 6)!.mm, 3);
  });
});

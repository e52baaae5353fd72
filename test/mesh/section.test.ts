import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { area, volume } from "#mesh/area.ts";
import { hullGirth, planeSections, sectionLength, Sectioner } from "#mesh/section.ts";
import { box, ellipsoid, moved, together, torus, where } from "./support/shapes.ts";

describe("last-like ellipsoid with half axes 120, 45, 35 (checks.md SU-02 and PL-09: elliptic integrals)", () => {
  const body = ellipsoid(120, 45, 35, 7);
  const cutter = new Sectioner(body);
  test.each([[0, 252.3101225], [60, 218.5069757]])("girth at x = %d", (x, girth) => {
    const sections = cutter.cut([x, 0, 0], [1, 0, 0]);
    expect(sections.length).toBe(1);
    expect(sections[0]!.closed).toBe(true);
    // inscribed chords: 500 points round fall short by about (π/500)²/6
    expect(Math.abs(hullGirth(sections[0]!.points, [1, 0, 0]) - girth)).toBeLessThan(0.02);
    expect(Math.abs(sectionLength(sections[0]!) - girth)).toBeLessThan(0.02);
  });

  test("area and volume", () => {
    expect(area(body) / 49561.76848).toBeCloseTo(1, 3);
    expect(volume(body) / 791681.3487).toBeCloseTo(1, 3);
  });

  test("the error of the girth falls fourfold as edges are halved (SU-06)", () => {
    const off = [4, 5, 6].map((times) => 252.3101225 - sectionLength(planeSections(ellipsoid(120, 45, 35, times), [0.01, 0, 0], [1, 0, 0])[0]!));
    expect(Math.log2(off[0]! / off[1]!)).toBeGreaterThan(1.8);
    expect(Math.log2(off[1]! / off[2]!)).toBeGreaterThan(1.8);
  });
});

test.each([[46, 28, 235.9295357], [45, 35, 252.3101225], [2, 1, 9.688448221]])("perimeter of an ellipse %d × %d from points on it (PL-09)", (a, b, perimeter) => {
  const n = 20_000;
  const points = Float64Array.from({ length: 3 * n }, (_, i) => {
    const u = (2 * Math.PI * Math.floor(i / 3)) / n;
    return [a * Math.cos(u), b * Math.sin(u), 5][i % 3]!;
  });
  expect(Math.abs(hullGirth(points, [0, 0, 3]) / perimeter - 1)).toBeLessThan(1e-7);
});

test("a tape spans hollows: the hull of a cross of five squares is an octagon of 4 + 4√2 (Pythagoras)", () => {
  const cross = [1, 0, 2, 0, 2, 1, 3, 1, 3, 2, 2, 2, 2, 3, 1, 3, 1, 2, 0, 2, 0, 1, 1, 1];
  const points = Float64Array.from({ length: 36 }, (_, i) => (i % 3 === 2 ? 0 : cross[2 * Math.floor(i / 3) + (i % 3)]!));
  expect(sectionLength({ points, closed: true })).toBeCloseTo(12, 12);
  expect(hullGirth(points, [0, 0, 1])).toBeCloseTo(4 + 4 * Math.SQRT2, 12);
});

describe("cuts", () => {
  test("run counter-clockwise round the body, seen from the tip of the normal", () => {
    const { points } = planeSections(ellipsoid(3, 2, 1, 3), [0, 0, 0.1], [0, 0, 1])[0]!;
    let twice = 0;
    for (let i = 0, j = points.length - 3; i < points.length; j = i, i += 3) twice += points[j]! * points[i + 1]! - points[i]! * points[j + 1]!;
    expect(twice).toBeGreaterThan(0);
  });

  test("through points of the mesh exactly stay closed and of right length", () => {
    const cube = moved(box(2, 2, 2), (x, y, z) => [x - 1, y - 1, z - 1]);
    // through two opposite edges of the cube: a rectangle of 2 × 2√2
    const diagonalCut = planeSections(cube, [0, 0, 0], [1, -1, 0]);
    expect(diagonalCut.map((s) => s.closed)).toEqual([true]);
    expect(sectionLength(diagonalCut[0]!)).toBeCloseTo(4 + 4 * Math.SQRT2, 12);
    // through four corners at once and through a whole face
    expect(planeSections(cube, [1, 1, 1], [1, 1, 1])).toEqual([]);
    expect(sectionLength(planeSections(cube, [0, 0, 1], [0, 0, 1])[0]!)).toBeCloseTo(8, 12);
  });

  test("a ring across its hole gives two circles, along it two of R ± r", () => {
    const ring = torus(60, 20, 256, 128);
    const across = planeSections(ring, [0, 0, 0], [1, 0, 0]);
    expect(across.length).toBe(2);
    for (const s of across) expect(sectionLength(s) / (40 * Math.PI)).toBeCloseTo(1, 3);
    const along = planeSections(ring, [0, 0, 0], [0, 0, 1]).map(sectionLength).sort((a, b) => a - b);
    expect(along[0]! / (80 * Math.PI)).toBeCloseTo(1, 3);
    expect(along[1]! / (160 * Math.PI)).toBeCloseTo(1, 3);
  });

  test("an open mesh gives an open curve with both its ends", () => {
    const half = where(ellipsoid(1, 1, 1, 4), (_x, _y, z) => z > 0);
    const sections = planeSections(half, [0, 0, 0], [1, 0, 0]);
    expect(sections.map((s) => s.closed)).toEqual([false]);
    expect(sectionLength(sections[0]!) / Math.PI).toBeCloseTo(1, 1);
  });

  test("planes beside the mesh give nothing", () => {
    expect(planeSections(box(1, 1, 1), [0, 0, 2], [0, 0, 1])).toEqual([]);
  });

  test("do not depend on which cuts came before, nor on the order of the triangles", () => {
    const two = together(ellipsoid(3, 2, 1, 3), moved(ellipsoid(1, 1, 1, 2), (x, y, z) => [x + 9, y, z]));
    const cutter = new Sectioner(two);
    const shuffled = { positions: two.positions, triangles: new Uint32Array(two.triangles.length) };
    const count = two.triangles.length / 3;
    for (let t = 0; t < count; t++) shuffled.triangles.set(two.triangles.subarray(3 * t, 3 * t + 3), 3 * ((t * 7919) % count));
    const lengths = (sections: readonly { points: Float64Array; closed: boolean }[]): number[] => sections.map(sectionLength).sort((a, b) => a - b);
    fc.assert(
      fc.property(fc.double({ min: -3, max: 10, noNaN: true }), fc.tuple(fc.integer({ min: -5, max: 5 }), fc.integer({ min: -5, max: 5 }), fc.integer({ min: 1, max: 5 })), (x, normal) => {
        const wanted = lengths(planeSections(two, [x, 0, 0], normal));
        const again = lengths(cutter.cut([x, 0, 0], normal));
        const other = lengths(planeSections(shuffled, [x, 0, 0], normal));
        expect(again).toEqual(wanted);
        expect(other.length).toBe(wanted.length);
        other.forEach((l, i) => expect(l).toBeCloseTo(wanted[i]!, 9));
      }),
      { seed: 5, numRuns: 60 },
    );
  });
});

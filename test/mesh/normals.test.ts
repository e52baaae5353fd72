import { describe, expect, test } from "vitest";
import { area, bounds, diagonal, volume } from "#mesh/area.ts";
import { faceNormals, vertexNormals } from "#mesh/normals.ts";
import { weld } from "#mesh/weld.ts";
import { box, ellipsoid, loose, moved, tetrahedron, torus } from "./support/shapes.ts";

describe("normals", () => {
  test("of points on a ball point away from its middle, on any mesh of it (Max 1999)", () => {
    const ball = ellipsoid(2, 2, 2, 2);
    const n = vertexNormals(ball);
    ball.positions.forEach((x, i) => expect(n[i]).toBeCloseTo(x / 2, 12));
  });

  test("of a box's faces are its axes, outward", () => {
    const n = faceNormals(box(1, 2, 3));
    expect(Array.from({ length: 12 }, (_, t) => Array.from(n.subarray(3 * t, 3 * t + 3), (x) => x + 0))).toEqual(
      [[0, 0, -1], [0, 0, 1], [0, -1, 0], [1, 0, 0], [0, 1, 0], [-1, 0, 0]].flatMap((a) => [a, a]),
    );
  });

  test("are zero where there is no area", () => {
    expect(Array.from(faceNormals({ positions: new Float64Array(9), triangles: Uint32Array.from([0, 1, 2]) }))).toEqual([0, 0, 0]);
  });
});

describe("area and volume", () => {
  test("of a corner tetrahedron are (3 + √3)/2 and 1/6 (textbook)", () => {
    expect(area(tetrahedron())).toBeCloseTo((3 + Math.sqrt(3)) / 2, 12);
    expect(volume(tetrahedron())).toBeCloseTo(1 / 6, 12);
  });

  test("of a ring R 60, r 20 (checks.md SU-01)", () => {
    expect(area(torus(60, 20, 400, 200)) / 47374.10113).toBeCloseTo(1, 3);
    expect(volume(torus(60, 20, 400, 200)) / 473741.0113).toBeCloseTo(1, 3);
  });

  test("do not depend on where the body lies", () => {
    const far = moved(ellipsoid(3, 2, 1, 3), (x, y, z) => [x + 1e4, y - 2e4, z + 3e4]);
    expect(volume(far)).toBeCloseTo(volume(ellipsoid(3, 2, 1, 3)), 6);
  });

  test("bounds are those of the triangles, not of stray points", () => {
    const stray = { positions: Float64Array.from([...box(1, 2, 3).positions, 99, 99, 99]), triangles: box(1, 2, 3).triangles };
    expect(bounds(stray)).toEqual({ low: [0, 0, 0], high: [1, 2, 3] });
    expect(diagonal(stray)).toBeCloseTo(Math.sqrt(14), 12);
  });
});

describe("welding", () => {
  test("joins what is near and nothing else, across the walls of its cells too", () => {
    const soup = loose(ellipsoid(3, 2, 1, 3));
    for (const shift of [0, 0.123456, -7.7]) {
      const shaken = { positions: soup.positions.map((x, i) => x + shift + 4e-7 * Math.cos(i * 37.7)), triangles: soup.triangles };
      expect(weld(shaken, 1e-6 * 2).positions.length / 3).toBe(642); // points of an icosahedron quartered three times: 10 · 4³ + 2
      expect(weld(shaken, 1e-9).positions.length / 3).toBeGreaterThan(1000);
    }
  });
});

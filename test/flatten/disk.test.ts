import { describe, expect, test } from "vitest";
import { Bug } from "#base/bug.ts";
import { Refusal } from "#base/refusal.ts";
import { diskOf } from "#flatten/disk.ts";
import { flatten } from "#flatten/flatten.ts";
import { gridMesh } from "../support/formula-surfaces.ts";

const grid = gridMesh((s, t) => [10 * s, 10 * t, s * t], 6, 6);
const without = (drop: (k: number) => boolean) => {
  const triangles: number[] = [];
  for (let k = 0; k < grid.triangles.length; k += 3) if (!drop(k / 3)) triangles.push(...grid.triangles.subarray(k, k + 3));
  return new Uint32Array(triangles);
};

/** Code of the finding with which it is refused. */
function refusalOf(vertices: number, triangles: readonly number[] | Uint32Array): string {
  try {
    diskOf(vertices, Uint32Array.from(triangles));
  } catch (error) {
    if (error instanceof Refusal) return error.finding.code;
    throw error;
  }
  return "taken";
}

/** Grid of a × b cells with sides joined in the given way: a torus, or an open ring. */
function ring(a: number, b: number, closed: boolean): number[] {
  const rows = closed ? b : b + 1;
  const triangles: number[] = [];
  for (let r = 0; r < b; r++)
    for (let c = 0; c < a; c++) {
      const at = (i: number, j: number) => (j % rows) * a + (i % a);
      triangles.push(at(c, r), at(c + 1, r), at(c + 1, r + 1), at(c, r), at(c + 1, r + 1), at(c, r + 1));
    }
  return triangles;
}

describe("what is no disk is refused with the reason", () => {
  test("a grid is taken; its rim goes round in order", () => {
    const { rim } = diskOf(49, grid.triangles);
    expect(rim.length).toBe(24);
    expect(new Set(rim).size).toBe(24);
    for (let k = 0; k < 24; k++) expect([1, 7]).toContain(Math.abs(rim[k]! - rim[(k + 1) % 24]!));
  });
  test("nothing", () => expect(refusalOf(0, [])).toBe("surface-empty"));
  test("a closed box", () => expect(refusalOf(4, [0, 1, 2, 0, 2, 3, 0, 3, 1, 1, 3, 2])).toBe("surface-closed"));
  test("a torus", () => expect(refusalOf(25, ring(5, 5, true))).toBe("surface-closed"));
  test("a torus with one triangle out has a handle", () => expect(refusalOf(25, ring(5, 5, true).slice(3))).toBe("surface-with-handle"));
  test("a ring, and a grid with a hole", () => {
    expect(refusalOf(18, ring(6, 2, false))).toBe("surface-with-holes");
    expect(refusalOf(49, without((t) => t === 28))).toBe("surface-with-holes");
  });
  test("two parts", () => expect(refusalOf(6, [0, 1, 2, 3, 4, 5])).toBe("surface-in-parts"));
  test("two parts that share a point", () => expect(refusalOf(5, [0, 1, 2, 0, 3, 4])).toBe("surface-pinched"));
  test("three sheets in one edge, and a neighbour that faces the other way", () => {
    expect(refusalOf(5, [0, 1, 2, 1, 0, 3, 0, 1, 4])).toBe("surface-branches");
    expect(refusalOf(4, [0, 1, 2, 0, 1, 3])).toBe("surface-branches");
    expect(refusalOf(2, [0, 1, 1])).toBe("surface-branches");
  });
  test("a vertex of no triangle is our own fault", () => expect(() => diskOf(4, new Uint32Array([0, 1, 2]))).toThrow(Bug));
});

describe("triangles of no size", () => {
  test("a triangle without height is lifted a little and does no harm", () => {
    const thin = flatten({ positions: new Float64Array([0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0, 5, 0, 0]), triangles: new Uint32Array([0, 1, 4, 0, 4, 3, 4, 1, 2, 4, 2, 3]) });
    expect(thin.flipped).toBe(0);
    expect(Math.hypot(thin.uv[4]! - thin.uv[0]!, thin.uv[5]! - thin.uv[1]!)).toBeCloseTo(Math.sqrt(200), 2);
  });
  test("two corners in one place are refused", () => {
    const positions = new Float64Array([0, 0, 0, 10, 0, 0, 10, 0, 0, 0, 10, 0]);
    expect(() => flatten({ positions, triangles: new Uint32Array([0, 1, 2, 0, 2, 3]) })).toThrow(/two corners in one place/);
  });
  test("positions that are no numbers are refused", () => {
    const positions = grid.positions.slice();
    positions[20] = NaN;
    expect(() => flatten({ positions, triangles: grid.triangles })).toThrow(Refusal);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bendPatterns } from "#plane/bend-pattern.ts";
import { BorderedBand } from "#plane/bordered-band.ts";
import { solveProgram } from "#plane/quadratic-program.ts";
import { ShortRows } from "#plane/short-rows.ts";

/** A random system of the bordered band's shape and the same as a full matrix; diagonally dominant, so positive. */
function systemOf(n: number, closed: boolean, values: readonly number[]): { readonly band: BorderedBand; readonly full: Float64Array[] } {
  const band = new BorderedBand(n);
  const full = Array.from({ length: n }, () => new Float64Array(n));
  let at = 0;
  for (let i = 0; i < n; i++) {
    for (let d = 0; d <= 3; d++) {
      if (i + d >= n && !closed) continue;
      const j = (i + d) % n;
      const v = d === 0 ? 7 + values[at++ % values.length]! : values[at++ % values.length]!;
      band.add(i, j, v);
      full[i]![j]! += v;
      if (i !== j) full[j]![i]! += v;
    }
  }
  return { band, full };
}

describe("bordered band", () => {
  test("gives back the solution that its right side was made of, open and as a ring", () => {
    const numbers = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 7, maxLength: 60 });
    fc.assert(
      fc.property(fc.integer({ min: 7, max: 60 }), fc.boolean(), numbers, (n, closed, values) => {
        const { band, full } = systemOf(n, closed, values);
        const x = Float64Array.from({ length: n }, (_, i) => values[i % values.length]! + i / n);
        const right = Float64Array.from(full, (row) => row.reduce((sum, v, j) => sum + v * x[j]!, 0));
        const product = new Float64Array(n);
        band.times(x, product);
        band.factor();
        const found = right.slice();
        band.solve(found);
        for (let i = 0; i < n; i++) {
          expect(Math.abs(product[i]! - right[i]!)).toBeLessThan(1e-12);
          expect(Math.abs(found[i]! - x[i]!)).toBeLessThan(1e-12);
        }
      }),
      { seed: 3, numRuns: 100 },
    );
  });
});

describe("quadratic program", () => {
  const unit = (n: number): BorderedBand => {
    const band = new BorderedBand(n);
    for (let i = 0; i < n; i++) band.add(i, i, 1);
    return band;
  };

  // Nearest point to (3, …) in the box u ≤ 1, by hand: 1 where the wish lies above, the wish itself where below; value ½ u² − g u.
  test("nearest point of a box", () => {
    const wish = Float64Array.of(3, -0.5, 0.2, 1.5, 0, 0.9, 7);
    const rows = new ShortRows(7);
    for (let i = 0; i < 7; i++) rows.push(i, -1, 0);
    const found = solveProgram({ quadratic: unit(7), linear: wish, rows, bounds: new Float64Array(7).fill(-1), reach: 10 })!;
    wish.forEach((v, i) => expect(found.u[i]!).toBeCloseTo(Math.min(1, v), 5));
    expect(found.value).toBeCloseTo(wish.reduce((sum, v) => sum + Math.min(1, v) * (Math.min(1, v) / 2 - v), 0), 5);
  });

  // By hand: of the lines that nowhere bend down, the nearest to a zigzag is straight, and level by symmetry, so at its mean 3/7.
  test("the convex line nearest to a zigzag with both ends free", () => {
    const wish = Float64Array.of(0, 1, 0, 1, 0, 1, 0);
    const rows = new ShortRows(7);
    for (let i = 0; i < 5; i++) rows.push(i, 1, -2, 1);
    const { u } = solveProgram({ quadratic: unit(7), linear: wish, rows, bounds: new Float64Array(5), reach: 10 })!;
    const second = Array.from({ length: 5 }, (_, i) => u[i]! - 2 * u[i + 1]! + u[i + 2]!);
    for (const v of second) expect(v).toBeGreaterThan(-1e-6);
    // The conditions of the optimum: what is left, wish − u, is square to every straight line, which bends neither way.
    const left = wish.map((v, i) => v - u[i]!);
    expect(Math.abs(left.reduce((a, v) => a + v, 0))).toBeLessThan(1e-5);
    expect(Math.abs(left.reduce((a, v, i) => a + v * i, 0))).toBeLessThan(1e-5);
    for (const v of u) expect(v).toBeCloseTo(3 / 7, 5);
  });

  test("bounds against each other have no solution", () => {
    const rows = new ShortRows(7);
    rows.push(2, 1, 0);
    rows.push(2, -1, 0);
    expect(solveProgram({ quadratic: unit(7), linear: new Float64Array(7), rows, bounds: Float64Array.of(1, 0.5), reach: 10 })).toBeUndefined();
  });
});

describe("a most that the solution may come to", () => {
  // Squares of rows on random systems, one at a time by hand beside the band's own way; then the same program with and without a most.
  test("changes nothing above the least and gives up below it, open and as a ring", () => {
    const numbers = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 7, maxLength: 40 });
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 40 }), fc.boolean(), numbers, (n, closed, values) => {
        const at = (k: number): number => values[k % values.length]!;
        const rows = new ShortRows(n);
        const squares = new BorderedBand(n), byHand = new BorderedBand(n);
        for (let i = 0; i < (closed ? n : n - 3); i++) {
          const row = [at(i), at(i + 1), at(i + 2), at(i + 3)] as const;
          rows.push(i, ...row);
          for (let p = 0; p < 4; p++) for (let q = p; q < 4; q++) byHand.add((i + p) % n, (i + q) % n, 2 * row[p]! * row[q]!);
        }
        rows.addSquares(new Float64Array(rows.count).fill(2), squares);
        const x = Float64Array.from({ length: n }, (_, i) => at(3 * i) + 0.1), [a, b] = [new Float64Array(n), new Float64Array(n)];
        squares.times(x, a);
        byHand.times(x, b);
        a.forEach((v, i) => expect(Math.abs(v - b[i]!)).toBeLessThan(1e-12));
        for (let i = 0; i < n; i++) squares.add(i, i, 1);
        const bounds = Float64Array.from({ length: rows.count }, (_, k) => -Math.abs(at(2 * k)));
        const program = { quadratic: squares, linear: Float64Array.from({ length: n }, (_, i) => 3 * at(5 * i)), rows, bounds, reach: 20 };
        const { u, value } = solveProgram(program)!;
        expect(solveProgram({ ...program, most: value + 1e-3 })!.u).toEqual(u);
        expect(solveProgram({ ...program, most: value - 1e-3 })).toBeUndefined();
      }),
      { seed: 8, numRuns: 100 },
    );
  });
});

describe("ways of bending", () => {
  // Bows of 10 points 1 mm apart: heights turn · length / 8 by hand.
  const turns = (...bows: readonly number[]): Float64Array => Float64Array.from(bows.flatMap((turn) => new Array<number>(10).fill(turn / 10)));

  test("the flattest bow goes first, its neighbours take it up", () => {
    // Heights 0.5, 0.0125, 0.5: only the middle one is under 0.1.
    const found = bendPatterns(turns(0.4, -0.01, 0.4), 1, false, 0.1);
    expect(found.map((p) => [...p].filter((_, i) => i % 10 === 0))).toEqual([[1, -1, 1], [1, 1, 1]]);
  });

  test("bows that are not flat stay", () => {
    expect(bendPatterns(turns(0.4, -0.4, 0.4), 1, false, 0.1)).toHaveLength(1);
  });

  test("a ring: the bow at its beginning goes as well as any, and two are left at least", () => {
    const found = bendPatterns(turns(-0.01, 0.4, -0.4, 0.4), 1, true, 0.1);
    expect([...found.at(-1)!].filter((_, i) => i % 10 === 0)).toEqual([1, 1, -1, 1]);
    expect(bendPatterns(turns(0.01, -0.01), 1, true, 0.1)).toHaveLength(1);
  });
});

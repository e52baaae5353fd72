import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BlockPattern } from "#solve/block-pattern.ts";
import { Cholesky } from "#solve/cholesky.ts";
import { CompiledCholesky } from "#solve/compiled-cholesky.ts";
import { factorisationOf } from "#solve/factorisation.ts";
import { planFronts } from "#solve/front-plan.ts";
import { denseOf, denseSolve, product } from "../support/dense.ts";
import { pumpShell } from "../support/formula-surfaces.ts";
// @ts-expect-error plain module without types
import { compiledKernels as compiledKernelsUntyped } from "../../tools/kernels.mjs";

const compiledKernels = compiledKernelsUntyped as () => string;

interface Drawn {
  readonly size: number;
  readonly block: 1 | 2;
  readonly pairs: readonly (readonly [number, number])[];
  readonly numbers: readonly number[];
}

const drawn: fc.Arbitrary<Drawn> = fc.integer({ min: 1, max: 40 }).chain((size) =>
  fc.record({
    size: fc.constant(size),
    block: fc.constantFrom<1 | 2>(1, 2),
    pairs: fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1)), { maxLength: 4 * size }),
    numbers: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 8, maxLength: 40 }),
  }),
);

/** A symmetric matrix made positive definite by its diagonal. */
function matrixOf({ size, block, pairs, numbers }: Drawn) {
  const pattern = new BlockPattern(size, block, 0);
  for (const [a, b] of pairs) if (a !== b) pattern.slot(a, b);
  const values = new Float64Array(pattern.valueCount);
  for (let k = 0; k < values.length; k++) values[k] = numbers[k % numbers.length]! * (1 + (k % 3));
  const dense = denseOf(pattern, values);
  const entries = block * block;
  for (let i = 0; i < size; i++)
    for (let d = 0; d < block; d++) {
      const row = block * i + d;
      const others = dense[row]!.reduce((sum, v, c) => (c === row ? sum : sum + Math.abs(v)), 0);
      values[i * entries + d * (block + 1)] = others + 0.5;
    }
  return { pattern, values };
}

describe.each([["in TypeScript", Cholesky], ["compiled", CompiledCholesky]] as const)("Cholesky %s", (_, Kind) => {
  test("solves random sparse positive definite systems like Gaussian elimination", () => {
    fc.assert(
      fc.property(drawn, (d) => {
        const { pattern, values } = matrixOf(d);
        const cholesky = new Kind(pattern, planFronts(pattern));
        const right = Float64Array.from({ length: d.size * d.block }, (_, i) => d.numbers[i % d.numbers.length]! + 0.1 * i);
        expect(cholesky.factor(values)).toBe(-1);
        const x = cholesky.solveInto(new Float64Array(right.length), right);
        const wanted = denseSolve(denseOf(pattern, values), [...right]);
        const scale = Math.max(1, ...wanted.map(Math.abs));
        wanted.forEach((w, i) => expect(Math.abs(x[i]! - w)).toBeLessThan(1e-11 * scale));
      }),
      { seed: 41, numRuns: 300 },
    );
  });

  test("one plan serves many matrices, and solving in place", () => {
    const { pattern, values } = matrixOf({ size: 30, block: 2, pairs: Array.from({ length: 80 }, (_, k) => [k % 30, (7 * k + 3) % 30] as const), numbers: [0.3, -0.7, 0.2, 0.9, -0.1, 0.5, 0.8, -0.4] });
    const cholesky = new Kind(pattern, planFronts(pattern));
    for (const factor of [1, 4, 0.25]) {
      const scaled = values.map((v) => v * factor);
      const x = Float64Array.from({ length: 60 }, (_, i) => Math.cos(i));
      const right = product(pattern, scaled, x);
      expect(cholesky.factor(scaled)).toBe(-1);
      cholesky.solveInto(right, right);
      x.forEach((v, i) => expect(right[i]).toBeCloseTo(v, 12));
    }
  });

  test("residual below 1e-12 on a large grid", () => {
    const side = 90;
    const pattern = new BlockPattern(side * side, 2);
    for (let r = 0; r < side; r++)
      for (let c = 0; c < side; c++) {
        const i = r * side + c;
        if (c + 1 < side) pattern.slot(i, i + 1);
        if (r + 1 < side) pattern.slot(i, i + side);
        if (c + 1 < side && r + 1 < side) pattern.slot(i, i + side + 1);
      }
    const values = new Float64Array(pattern.valueCount);
    for (let i = 0; i < side * side; i++) values.set([7, 0, 0.4, 6.5], 4 * i);
    for (let k = 0; k < pattern.pairCount; k++) values.set([-1, 0.3, -0.2, -1], 4 * (side * side + k));
    const cholesky = new Kind(pattern, planFronts(pattern));
    expect(cholesky.factor(values)).toBe(-1);
    const right = Float64Array.from({ length: 2 * side * side }, (_, i) => Math.sin(i));
    const residual = product(pattern, values, cholesky.solveInto(new Float64Array(right.length), right)).map((v, i) => Math.abs(v - right[i]!));
    expect(Math.max(...residual)).toBeLessThan(1e-12);
  });

  test("names an unknown with a pivot that is not positive instead of making NaN", () => {
    const pattern = new BlockPattern(3, 1);
    pattern.slot(0, 1);
    pattern.slot(1, 2);
    const cholesky = new Kind(pattern, planFronts(pattern));
    // (2 1 0; 1 2 1; 0 1 c) is positive definite for c > 2/3.
    expect(cholesky.factor(new Float64Array([2, 2, 0.67, 1, 1]))).toBe(-1);
    expect(cholesky.factor(new Float64Array([2, 2, 0.66, 1, 1]))).toBeGreaterThanOrEqual(0);
    expect(cholesky.factor(new Float64Array([2, -1, 5, 0, 0]))).toBe(1);
    expect(cholesky.factor(new Float64Array([2, NaN, 5, 0, 0]))).toBe(1);
  });
});

describe("the two twins", () => {
  test("give the same bits, also where a pivot fails", () => {
    fc.assert(
      fc.property(drawn, fc.boolean(), (d, spoilt) => {
        const { pattern, values } = matrixOf(d);
        if (spoilt) values[0] = -values[0]!;
        const plan = planFronts(pattern);
        const [a, b] = [new Cholesky(pattern, plan), new CompiledCholesky(pattern, plan)];
        const right = Float64Array.from({ length: d.size * d.block }, (_, i) => d.numbers[i % d.numbers.length]! + 0.1 * i);
        const failed = a.factor(values);
        expect(b.factor(values)).toBe(failed);
        if (failed < 0) expect(b.solveInto(new Float64Array(right.length), right)).toEqual(a.solveInto(new Float64Array(right.length), right));
      }),
      { seed: 43, numRuns: 300 },
    );
  });

  test("give the same bits on the fronts of a whole pump shell", () => {
    const mesh = pumpShell(3000);
    const size = mesh.positions.length / 3;
    const pattern = new BlockPattern(size, 2);
    for (let k = 0; k < mesh.triangles.length; k += 3) for (let e = 0; e < 3; e++) pattern.slot(mesh.triangles[k + e]!, mesh.triangles[k + ((e + 1) % 3)]!);
    const values = Float64Array.from({ length: pattern.valueCount }, (_, i) => (i < 4 * size ? (i % 4 === 0 || i % 4 === 3 ? 9 + Math.sin(i) : 0.2) : Math.cos(i)));
    const plan = planFronts(pattern);
    const [a, b] = [new Cholesky(pattern, plan), new CompiledCholesky(pattern, plan)];
    expect([a.factor(values), b.factor(values)]).toEqual([-1, -1]);
    const right = Float64Array.from({ length: 2 * size }, (_, i) => Math.sin(i));
    const x = a.solveInto(new Float64Array(right.length), right);
    expect(b.solveInto(new Float64Array(right.length), right)).toEqual(x);
    expect(Math.max(...product(pattern, values, x).map((v, i) => Math.abs(v - right[i]!)))).toBeLessThan(1e-12);
  });

  test("the compiled one is chosen where the engine runs it", () => {
    const pattern = new BlockPattern(2, 1);
    expect(factorisationOf(pattern, planFronts(pattern))).toBeInstanceOf(CompiledCholesky);
  });

  test("the compiled one is what its source compiles to", () => {
    expect(compiledKernels()).toBe(readFileSync(new URL("../../src/solve/kernel-bytes.ts", import.meta.url), "utf8"));
  }, 60_000);
});

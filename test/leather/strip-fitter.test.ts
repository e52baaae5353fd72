// The routine of least squares that strips are fitted with, on a curve whose numbers are known, and how near our law comes to it.
import { expect, test } from "vitest";
import { covarianceAt, leastSquares, type LeastSquaresProblem } from "#solve/least-squares.ts";
import { chance } from "#base/seeded.ts";
import { stretchAt } from "#leather/uniaxial.ts";

// A made-up curve for testing fitters, not leather: σ = A (e^(Bε) − 1) with A 0.5 MPa, B 8, told to four digits; expected back within 1e-3.
const strain = [0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4];
const stress = [0, 0.2459, 0.6128, 1.1601, 1.9765, 3.1945, 5.0116, 7.7223, 11.7663];

test("the made-up curve's A and B come back within 1e-3", () => {
  const [a, b] = leastSquares({
    start: Float64Array.of(0.1, 4),
    scales: [0.1, 1],
    residuals: strain.length,
    residualsInto: (x, out) => strain.forEach((e, i) => (out[i] = x[0]! * (Math.exp(x[1]! * e) - 1) - stress[i]!)),
  });
  expect(Math.abs(a! - 0.5)).toBeLessThan(1e-3);
  expect(Math.abs(b! - 8)).toBeLessThan(1e-3);
});

// Ours takes that curve, read as a strip's force per width, with three numbers: to 0.06 % of stretch up to 20 %, to 0.3 % up to 40 %.
test.each([[0.2, 6e-4], [0.4, 3e-3]])("the toe law follows it up to a stretch of %f", (top, within) => {
  const last = strain.findIndex((e) => e >= top);
  const numbersOf = (x: Float64Array) => ({ along: Math.exp(x[0]!), across: 1, bias: 1, poisson: 0, toe: Math.exp(x[1]!), early: 1 / (1 + Math.exp(-x[2]!)) });
  const off = (x: Float64Array, i: number): number => stretchAt(numbersOf(x), "along", stress[i]!) - 1 - strain[i]!;
  const fitted = leastSquares({
    start: Float64Array.of(3, -2.3, -1),
    scales: [0.3, 0.3, 0.5],
    residuals: last,
    residualsInto: (x, out) => {
      for (let i = 1; i <= last; i++) out[i - 1] = off(x, i);
    },
  });
  for (let i = 1; i <= last; i++) expect(Math.abs(off(fitted, i))).toBeLessThan(within);
});

test("the covariance of a straight line is the textbook's", () => {
  // y = a + b x with deviation s: var b = s²/Σ(x − x̄)², cov(a, b) = −x̄ var b, var a = s² (1/n + x̄²/Σ(x − x̄)²) (Draper and Smith, Applied Regression Analysis).
  const x = [1, 2, 4, 7, 11], s = 0.3;
  const mean = 5, square = x.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  const line: LeastSquaresProblem = { start: Float64Array.of(0, 0), scales: [0.5, 2], residuals: 5, residualsInto: (p, out) => x.forEach((v, i) => (out[i] = (p[0]! + p[1]! * v - 3) / s)) };
  const [aa, ab, ba, bb] = covarianceAt(line, leastSquares(line));
  expect(bb).toBeCloseTo((s * s) / square, 9);
  expect(ab).toBeCloseTo((-mean * s * s) / square, 9);
  expect(ba).toBeCloseTo(ab!, 12);
  expect(aa).toBeCloseTo(s * s * (1 / 5 + (mean * mean) / square), 9);
});

// NIST Statistical Reference Datasets, nonlinear regression, Misra1a (from memory): y = b₁ (1 − e^(−b₂ x)), certified values and deviations.
test("NIST's Misra1a comes out as certified, from its first start, with its standard deviations", () => {
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const problem: LeastSquaresProblem = { start: Float64Array.of(500, 1e-4), scales: [100, 1e-4], residuals: 14, residualsInto: (b, out) => x.forEach((v, i) => (out[i] = b[0]! * (1 - Math.exp(-b[1]! * v)) - y[i]!)) };
  const found = leastSquares(problem);
  expect(found[0]! / 2.3894212918e2).toBeCloseTo(1, 6);
  expect(found[1]! / 5.5015643181e-4).toBeCloseTo(1, 6);
  const rest = new Float64Array(14);
  problem.residualsInto(found, rest);
  const square = rest.reduce((sum, r) => sum + r * r, 0);
  expect(square / 1.2455138894e-1).toBeCloseTo(1, 6);
  const covariance = covarianceAt(problem, found);
  expect(Math.sqrt((covariance[0]! * square) / 12) / 2.7070075241).toBeCloseTo(1, 5);
  expect(Math.sqrt((covariance[3]! * square) / 12) / 7.2668688436e-6).toBeCloseTo(1, 5);
});

test("chance is the same for the same seed and draw, even and normal", () => {
  const row = (seed: number, draw: number): number[] => {
    const { even } = chance(seed, draw);
    return Array.from({ length: 3 }, even);
  };
  expect(row(1, 0)).toEqual(row(1, 0));
  expect(new Set([...row(1, 0), ...row(1, 1), ...row(2, 0)]).size).toBe(9);
  const { even, normal } = chance(42);
  const n = 20_000;
  const counts = new Array<number>(10).fill(0);
  for (let i = 0; i < n; i++) counts[Math.floor(10 * even())]!++;
  // Chi squared with 9 degrees of freedom is below 27.9 in 999 of 1000 (tables).
  expect(counts.reduce((sum, c) => sum + (c - n / 10) ** 2 / (n / 10), 0)).toBeLessThan(27.9);
  let beyond = 0, sum = 0, square = 0;
  for (let i = 0; i < n; i++) {
    const z = normal();
    sum += z;
    square += z * z;
    if (Math.abs(z) > 1.959964) beyond++;
  }
  expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n));
  expect(Math.abs(square / n - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
  expect(Math.abs(beyond / n - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / n));
});

import { must } from "#base/bug.ts";

/** Solves the n × n system A x = b by Cholesky in place (A symmetric, row by row; b becomes x). False where A is not positive definite. */
function solveSymmetricInto(a: Float64Array, b: Float64Array): boolean {
  const n = b.length;
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!;
      if (i > j) a[i * n + j] = sum / a[j * n + j]!;
      else if (sum > 0) a[j * n + j] = Math.sqrt(sum);
      else return false;
    }
  }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) b[i] = b[i]! - a[i * n + k]! * b[k]!;
    b[i] = b[i]! / a[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) b[i] = b[i]! - a[k * n + i]! * b[k]!;
    b[i] = b[i]! / a[i * n + i]!;
  }
  return true;
}

/**
 * Fits `rows · x ≈ right` by least squares: `terms` numbers a row. Householder's reflections (Golub and Van Loan, Matrix
 * Computations, section 5.2), so that digits are not lost as with normal equations.
 */
export function fitLinear(rows: ArrayLike<number>, terms: number, right: ArrayLike<number>, weights?: ArrayLike<number>): Float64Array {
  const m = right.length;
  must(m >= terms, "a linear fit needs as many rows as it has terms");
  // Column by column, the right side last.
  const a = new Float64Array((terms + 1) * m);
  for (let r = 0; r < m; r++) {
    const w = weights ? Math.sqrt(weights[r]!) : 1;
    for (let c = 0; c < terms; c++) a[c * m + r] = w * rows[r * terms + c]!;
    a[terms * m + r] = w * right[r]!;
  }
  for (let c = 0; c < terms; c++) reflectInto(a, m, c, terms);
  const x = new Float64Array(terms);
  for (let c = terms - 1; c >= 0; c--) {
    let sum = a[terms * m + c]!;
    for (let k = c + 1; k < terms; k++) sum -= a[k * m + c]! * x[k]!;
    must(a[c * m + c] !== 0, "a linear fit needs independent terms");
    x[c] = sum / a[c * m + c]!;
  }
  return x;
}

/** Reflects the columns `c … terms` so that column `c` has nothing left below its diagonal. */
function reflectInto(a: Float64Array, m: number, c: number, terms: number): void {
  let square = 0;
  for (let r = c; r < m; r++) square += a[c * m + r]! ** 2;
  const first = a[c * m + c]!;
  const length = first > 0 ? -Math.sqrt(square) : Math.sqrt(square);
  if (length === 0) return;
  const v = a.slice(c * m + c, c * m + m);
  v[0] = first - length;
  const half = square - first * length;
  for (let k = c; k <= terms; k++) {
    let dot = 0;
    for (let r = c; r < m; r++) dot += v[r - c]! * a[k * m + r]!;
    const t = dot / half;
    for (let r = c; r < m; r++) a[k * m + r] = a[k * m + r]! - t * v[r - c]!;
  }
}

export interface LeastSquaresProblem {
  /** Unknowns to start from. */
  readonly start: Float64Array;
  /** Length of one step that changes each unknown by a like amount; used for numerical slopes and damping. */
  readonly scales: ArrayLike<number>;
  readonly residuals: number;
  /** Writes the residuals at `x` to `out`. */
  readonly residualsInto: (x: Float64Array, out: Float64Array) => void;
  /** Weight of each residual's square; 1 for all where left out. */
  readonly weights?: Float64Array;
}

/**
 * Levenberg–Marquardt for few unknowns, slopes by central differences (Marquardt, J. SIAM 11 (1963) 431). Returns the unknowns
 * where no step lowers the sum of squares any more.
 */
export function leastSquares(problem: LeastSquaresProblem): Float64Array {
  const { scales, residuals: m } = problem;
  const n = problem.start.length;
  const weights = problem.weights ?? new Float64Array(m).fill(1);
  let x = problem.start.slice();
  let r = new Float64Array(m);
  problem.residualsInto(x, r);
  let best = weighted(r, weights);
  let damping = 1e-3;
  for (let round = 0; round < 60; round++) {
    const { matrix, slope } = normalSystem(problem, x, r, weights);
    let gain = 0;
    for (let tries = 0; tries < 12 && gain === 0; tries++) {
      const a = matrix.slice(), step = slope.slice();
      for (let i = 0; i < n; i++) a[i * n + i] = a[i * n + i]! * (1 + damping) + 1e-18;
      damping *= 10;
      if (!solveSymmetricInto(a, step)) continue;
      const y = x.map((v, i) => v - step[i]! * scales[i]!);
      const next = new Float64Array(m);
      problem.residualsInto(y, next);
      const cost = weighted(next, weights);
      if (!(cost < best)) continue;
      gain = best - cost;
      [x, r, best, damping] = [y, next, cost, Math.max(1e-12, damping / 100)];
    }
    if (gain <= 1e-12 * best) break;
  }
  return x;
}

/**
 * Covariance of the unknowns at `x`, row by row: (JᵀWJ)⁻¹, for residuals counted in their own standard deviations (Bard, Nonlinear
 * Parameter Estimation, section 7.5; from memory).
 */
export function covarianceAt(problem: LeastSquaresProblem, x: Float64Array): Float64Array {
  const n = x.length;
  const { scales, residuals: m } = problem;
  const r = new Float64Array(m);
  problem.residualsInto(x, r);
  const { matrix } = normalSystem(problem, x, r, problem.weights ?? new Float64Array(m).fill(1));
  const covariance = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const column = new Float64Array(n);
    column[j] = 1;
    must(solveSymmetricInto(matrix.slice(), column), "a covariance needs unknowns that the residuals tell apart");
    for (let i = 0; i < n; i++) covariance[i * n + j] = column[i]! * scales[i]! * scales[j]!;
  }
  return covariance;
}

function weighted(r: Float64Array, weights: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < r.length; i++) sum += weights[i]! * r[i]! * r[i]!;
  return sum;
}

/** JᵀWJ (lower triangle) and JᵀWr with every unknown counted in its own scale, so that the damping treats all alike. */
function normalSystem({ scales, residuals: m, residualsInto }: LeastSquaresProblem, x: Float64Array, r: Float64Array, weights: Float64Array) {
  const n = x.length;
  const slopes = new Float64Array(n * m);
  const ahead = new Float64Array(m), behind = new Float64Array(m);
  for (let j = 0; j < n; j++) {
    const y = x.slice();
    y[j] = x[j]! + 1e-4 * scales[j]!;
    residualsInto(y, ahead);
    y[j] = x[j]! - 1e-4 * scales[j]!;
    residualsInto(y, behind);
    for (let i = 0; i < m; i++) slopes[j * m + i] = (ahead[i]! - behind[i]!) / 2e-4;
  }
  const matrix = new Float64Array(n * n);
  const slope = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < m; k++) slope[i] = slope[i]! + weights[k]! * slopes[i * m + k]! * r[k]!;
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k < m; k++) sum += weights[k]! * slopes[i * m + k]! * slopes[j * m + k]!;
      matrix[i * n + j] = sum;
    }
  }
  return { matrix, slope };
}

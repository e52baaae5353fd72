/** Which differences of the curve are kept small: second ones (least bending) or third ones (least change of bend). */
const differences = { second: [1, -2, 1, 0], third: [-1, 3, -3, 1] } as const;

/**
 * Closed smoothing spline on even steps: least Σ wᵢ |qᵢ − pᵢ|² + λ Σ |difference of q|², weights positive. Solved directly, so that weights
 * of any ratio are met: the banded system is laid out with half a loop more on either side; so far away its free ends are not felt.
 * @param points flat, three numbers a point, first not repeated
 */
export function closedSpline(points: Float64Array, weights: Float64Array, lambda: number, order: keyof typeof differences): Float64Array {
  const n = weights.length;
  const lap = n >> 1;
  const m = n + 2 * lap;
  const home = (k: number): number => (((k - lap) % n) + n) % n;
  // Lower bands of W + λ DᵀD: band b of row i couples i with i − b.
  const bands = new Float64Array(4 * m);
  const d = differences[order];
  for (let i = 0; i < m; i++) bands[4 * i] = weights[home(i)]!;
  for (let i = 0; i + 3 < m; i++)
    for (let a = 0; a < 4; a++)
      for (let b = 0; b <= a; b++) bands[4 * (i + a) + (a - b)] = bands[4 * (i + a) + (a - b)]! + lambda * d[a]! * d[b]!;
  factorBands(bands, m);
  const out = new Float64Array(3 * n);
  for (let axis = 0; axis < 3; axis++) {
    const x = Float64Array.from({ length: m }, (_, i) => weights[home(i)]! * points[3 * home(i) + axis]!);
    solveBands(bands, x);
    for (let i = 0; i < n; i++) out[3 * i + axis] = x[i + lap]!;
  }
  return out;
}

/** LDLᵀ in place: band 0 becomes D, bands 1 to 3 become L. */
function factorBands(bands: Float64Array, m: number): void {
  const at = (i: number, b: number): number => bands[4 * i + b]!;
  for (let i = 0; i < m; i++) {
    for (let b = Math.min(3, i); b >= 0; b--) {
      const j = i - b;
      let sum = at(i, b);
      for (let k = Math.max(0, i - 3); k < j; k++) sum -= at(i, i - k) * at(k, 0) * (j - k <= 3 ? at(j, j - k) : 0);
      bands[4 * i + b] = b === 0 ? sum : sum / at(j, 0);
    }
  }
}

function solveBands(bands: Float64Array, x: Float64Array): void {
  const m = x.length;
  for (let i = 0; i < m; i++) for (let b = 1; b <= Math.min(3, i); b++) x[i] = x[i]! - bands[4 * i + b]! * x[i - b]!;
  for (let i = 0; i < m; i++) x[i] = x[i]! / bands[4 * i]!;
  for (let i = m - 1; i >= 0; i--) for (let b = 1; b <= 3 && i + b < m; b++) x[i] = x[i]! - bands[4 * (i + b) + b]! * x[i + b]!;
}

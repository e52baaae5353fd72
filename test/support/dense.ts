import type { BlockPattern } from "#solve/block-pattern.ts";

/** The full matrix of a block pattern's values, row by row; for comparing with plain dense algebra. */
export function denseOf(pattern: BlockPattern, values: Float64Array): number[][] {
  const { block, size, low, high } = pattern;
  const n = block * size;
  const full = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const put = (slot: number, rowPoint: number, columnPoint: number) => {
    for (let i = 0; i < block; i++)
      for (let j = 0; j < block; j++) {
        if (rowPoint === columnPoint && j > i) continue;
        const v = values[slot * block * block + i * block + j]!;
        full[block * rowPoint + i]![block * columnPoint + j] = v;
        full[block * columnPoint + j]![block * rowPoint + i] = v;
      }
  };
  for (let i = 0; i < size; i++) put(i, i, i);
  for (let k = 0; k < low.length; k++) put(size + k, low[k]!, high[k]!);
  return full;
}

/** Gaussian elimination with partial pivoting: a way to the solution that shares nothing with the factorisation under test. */
export function denseSolve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const a = matrix.map((row, i) => [...row, right[i]!]);
  const n = a.length;
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[best]![c]!)) best = r;
    [a[c], a[best]] = [a[best]!, a[c]!];
    for (let r = c + 1; r < n; r++) {
      const f = a[r]![c]! / a[c]![c]!;
      if (f !== 0) for (let k = c; k <= n; k++) a[r]![k]! -= f * a[c]![k]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let sum = a[r]![n]!;
    for (let k = r + 1; k < n; k++) sum -= a[r]![k]! * x[k]!;
    x[r] = sum / a[r]![r]!;
  }
  return x;
}

/** y = A x straight from the blocks. */
export function product(pattern: BlockPattern, values: Float64Array, x: Float64Array): Float64Array {
  const { block: b, size, low, high } = pattern;
  const y = new Float64Array(x.length);
  for (let i = 0; i < size; i++)
    for (let r = 0; r < b; r++) for (let c = 0; c < b; c++) y[b * i + r]! += values[i * b * b + Math.max(r, c) * b + Math.min(r, c)]! * x[b * i + c]!;
  for (let k = 0; k < low.length; k++)
    for (let r = 0; r < b; r++)
      for (let c = 0; c < b; c++) {
        const v = values[(size + k) * b * b + r * b + c]!;
        y[b * low[k]! + r]! += v * x[b * high[k]! + c]!;
        y[b * high[k]! + c]! += v * x[b * low[k]! + r]!;
      }
  return y;
}

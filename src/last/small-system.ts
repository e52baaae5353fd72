import { must } from "#base/bug.ts";

/** Solves a small square system (rows of numbers, right side) by elimination with row exchange. */
export function solveSmall(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[pivot]![c]!)) pivot = r;
    [a[c], a[pivot]] = [a[pivot]!, a[c]!];
    must(Math.abs(a[c]![c]!) > 1e-9, "the system has no single solution");
    for (let r = c + 1; r < n; r++) {
      const factor = a[r]![c]! / a[c]![c]!;
      for (let k = c; k <= n; k++) a[r]![k] = a[r]![k]! - factor * a[c]![k]!;
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

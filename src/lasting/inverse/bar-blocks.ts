import type { BlockPattern } from "#solve/block-pattern.ts";

/** Adds the second derivatives of a bar between points p and q of the plane: its symmetric 2×2 block (uu uw ww) at both, and taken off between them. */
export function addBarInto(values: Float64Array, pattern: BlockPattern, p: number, q: number, uu: number, uw: number, ww: number): void {
  for (const at of [4 * p, 4 * q]) {
    values[at]! += uu;
    values[at + 2]! += uw;
    values[at + 3]! += ww;
  }
  const at = 4 * pattern.slot(p, q);
  values[at]! -= uu;
  values[at + 1]! -= uw;
  values[at + 2]! -= uw;
  values[at + 3]! -= ww;
}

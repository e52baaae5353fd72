import type { Sheet } from "./sheet.ts";

/** Of two steps so much is taken back at least that the next one should be shorter: square of the cosine between them. */
const BACK = 0.1;

/** Whether a step takes back a good part of the one before. */
export function turnsBack(step: Float64Array, before: Float64Array): boolean {
  let dot = 0, a = 0, b = 0;
  for (let i = 0; i < step.length; i++) {
    dot += step[i]! * before[i]!;
    a += step[i]! * step[i]!;
    b += before[i]! * before[i]!;
  }
  return dot < 0 && dot * dot > BACK * a * b;
}

/** Writes where the points are after a part of a step from x; points that are held stay as they are in `out`. */
export function goInto(out: Float64Array, x: Float64Array, { unknown, points }: Pick<Sheet, "unknown" | "points">, step: Float64Array, part: number): void {
  for (let p = 0; p < points; p++) {
    const at = unknown[p]!;
    if (at >= 0) for (let d = 0; d < 3; d++) out[3 * p + d] = x[3 * p + d]! + part * step[at + d]!;
  }
}

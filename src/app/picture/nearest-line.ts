import type { DrawnLine, LineKey } from "./drawn-lines.ts";

/** The line nearest to a place in the picture, if it is within `reach` px and in sight. */
export function nearestLine(
  lines: readonly DrawnLine[],
  project: (p: readonly number[]) => { readonly x: number; readonly y: number; readonly seen: boolean },
  x: number,
  y: number,
  reach: number,
): LineKey | undefined {
  let best: { key: LineKey; d: number } | undefined;
  for (const line of lines) {
    for (const points of line.onLast) {
      // Every third vertex is a few mm from the next: near enough for a finger.
      for (let i = 0; i < points.length; i += 9) {
        const at = project([points[i]!, points[i + 1]!, points[i + 2]!]);
        const d = Math.hypot(at.x - x, at.y - y);
        if (d < reach && d < (best?.d ?? Infinity) && at.seen) best = { key: line.key, d };
      }
    }
  }
  return best?.key;
}

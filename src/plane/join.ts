import { directionAt, arcLengths, joined, reversed } from "./along.ts";
import { meetingPoint, segmentsMeet } from "./crossing.ts";
import type { Polyline } from "./outline.ts";

/** A line's direction at an end is that of its last 2 mm: shorter is at the mercy of a single point, longer feels the bend. */
export const endReachMm = 2;

/** The line with a straight piece added at its end, along its own direction there. */
export function extendEnd(line: Polyline, byMm: number): Polyline {
  const arc = arcLengths(line);
  const end = arc[arc.length - 1]!;
  const [dx, dy] = directionAt(line, arc, end, endReachMm);
  const x = line.xy[line.xy.length - 2]! + byMm * dx;
  const y = line.xy[line.xy.length - 1]! + byMm * dy;
  return joined([line, { xy: Float64Array.of(x, y) }]);
}

/** The line with a straight piece added before its start, along its own direction there. */
export function extendStart(line: Polyline, byMm: number): Polyline {
  return reversed(extendEnd(reversed(line), byMm));
}

/** Two lines cut off at their crossing: `before` up to it, `after` from it. */
export interface Cut {
  readonly before: Polyline;
  readonly after: Polyline;
  readonly at: readonly [number, number];
}

/**
 * Cuts the tail of `before` and the head of `after` where they cross: the crossing nearest to the end of `before`, and of
 * those the one nearest to the start of `after`. Undefined where they do not meet.
 */
export function cutAtCrossing(before: Polyline, after: Polyline): Cut | undefined {
  for (let i = before.xy.length - 4; i >= 0; i -= 2) {
    const cut = cutAtSegment(before.xy, i, after.xy);
    if (cut) return cut;
  }
  return undefined;
}

/** The same at the crossing nearest to the start of `before`: for a line that begins at the corner and may run on into something else. */
export function cutAtFirstCrossing(before: Polyline, after: Polyline): Cut | undefined {
  for (let i = 0; i + 3 < before.xy.length; i += 2) {
    const cut = cutAtSegment(before.xy, i, after.xy);
    if (cut) return cut;
  }
  return undefined;
}

/** The crossing of the segment that begins at number i of a line with another line, nearest to the other's start. */
function cutAtSegment(a: Float64Array, i: number, b: Float64Array): Cut | undefined {
  for (let j = 0; j + 3 < b.length; j += 2) {
    if (!segmentsMeet(a[i]!, a[i + 1]!, a[i + 2]!, a[i + 3]!, b[j]!, b[j + 1]!, b[j + 2]!, b[j + 3]!)) continue;
    const at = meetingPoint(a[i]!, a[i + 1]!, a[i + 2]!, a[i + 3]!, b[j]!, b[j + 1]!, b[j + 2]!, b[j + 3]!);
    const corner = { xy: Float64Array.of(at[0], at[1]) };
    return {
      before: joined([{ xy: a.subarray(0, i + 2) }, corner]),
      after: joined([corner, { xy: b.subarray(j + 2) }]),
      at,
    };
  }
  return undefined;
}

/** A point mirrored in the line through `on` along the unit direction `along`. */
export function reflect(p: readonly [number, number], on: readonly [number, number], along: readonly [number, number]): readonly [number, number] {
  const x = p[0] - on[0];
  const y = p[1] - on[1];
  const dot = 2 * (x * along[0] + y * along[1]);
  return [on[0] + dot * along[0] - x, on[1] + dot * along[1] - y];
}

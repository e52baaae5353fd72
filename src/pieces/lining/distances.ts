import { segmentsMeet } from "#plane/crossing.ts";
import type { Xy } from "../piece.ts";

/** A straight way on the flat, mm. */
export type Segment = readonly [Xy, Xy];

/** Distance of two straight ways, 0 where they meet. */
export function segmentDistance([a, b]: Segment, [c, d]: Segment): number {
  if (segmentsMeet(a[0], a[1], b[0], b[1], c[0], c[1], d[0], d[1])) return 0;
  return Math.min(toSegment(a, [c, d]), toSegment(b, [c, d]), toSegment(c, [a, b]), toSegment(d, [a, b]));
}

function toSegment([x, y]: Xy, [[ax, ay], [bx, by]]: Segment): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.sqrt((x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2);
}

/** Distance of a straight way from a strip between two straight ways, 0 where it meets the strip. */
export function bandDistance([one, other]: readonly [Segment, Segment], way: Segment): number {
  const sides: readonly Segment[] = [one, other, [one[0], other[0]], [one[1], other[1]]];
  return sides.reduce((least, side) => Math.min(least, segmentDistance(side, way)), Infinity);
}

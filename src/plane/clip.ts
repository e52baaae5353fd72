import { contains } from "./inside.ts";
import { meetingPoint, segmentsMeet } from "./crossing.ts";
import type { Outline } from "./outline.ts";

type Point = readonly [number, number];

/** The parts of the straight way from a to b that lie in an outline, in the order of that way. */
export function partsInside(outline: Outline, a: Point, b: Point): readonly (readonly [Point, Point])[] {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const square = dx * dx + dy * dy;
  if (square === 0) return [];
  const cuts = [0, 1];
  const { xy } = outline;
  for (let i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) {
    if (!segmentsMeet(a[0], a[1], b[0], b[1], xy[j]!, xy[j + 1]!, xy[i]!, xy[i + 1]!)) continue;
    const [x, y] = meetingPoint(a[0], a[1], b[0], b[1], xy[j]!, xy[j + 1]!, xy[i]!, xy[i + 1]!);
    cuts.push(((x - a[0]) * dx + (y - a[1]) * dy) / square);
  }
  cuts.sort((p, q) => p - q);
  const at = (t: number): Point => [a[0] + t * dx, a[1] + t * dy];
  const parts: [Point, Point][] = [];
  for (let k = 0; k + 1 < cuts.length; k++) {
    const from = cuts[k]!;
    const to = cuts[k + 1]!;
    if (to - from < 1e-9 || !contains(outline, ...at((from + to) / 2))) continue;
    parts.push([at(from), at(to)]);
  }
  return parts;
}

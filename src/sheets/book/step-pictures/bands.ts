import { arcLengths, pointAt, directionAt } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Xy } from "./sketch.ts";

/** A band between a line drawn on a piece and its cut edge: strokes square to the line, and how wide it is. */
export interface Band {
  readonly strokes: readonly (readonly [Xy, Xy])[];
  /** In the middle of the line, and over all of it, mm. */
  readonly wideMm: number;
  readonly leastMm: number;
  readonly mostMm: number;
  /** The middle of the band, and the way from the line to the edge there. */
  readonly at: Xy;
  readonly out: Xy;
}

/** Nothing is hatched where the edge is so many times as far as in the middle: it is another edge. */
const anotherEdge = 2;

/** The band between a line and the edge nearest to it, hatched every `stepMm`; nothing where it has no edge beside it. */
export function bandOf(outline: Outline, line: Polyline, stepMm: number): Band | undefined {
  const arc = arcLengths(line), long = arc[arc.length - 1]!;
  const on = (s: number): readonly [Xy, Xy] => [pointAt(line, arc, s), directionAt(line, arc, s)];
  const [p, [ux, uy]] = on(long / 2);
  const ways = [1, -1].map((way) => ({ way, mm: edgeAlong(outline, p, [way * uy, -way * ux]) }));
  const { way, mm: wideMm } = ways[0]!.mm <= ways[1]!.mm ? ways[0]! : ways[1]!;
  if (!Number.isFinite(wideMm)) return undefined;
  const out: Xy = [way * uy, -way * ux];
  const count = Math.max(2, Math.round(long / stepMm));
  const strokes: (readonly [Xy, Xy])[] = [], widths: number[] = [];
  for (let k = 0; k < count; k++) {
    const [q, [vx, vy]] = on(((k + 0.5) / count) * long), n: Xy = [way * vy, -way * vx];
    const mm = edgeAlong(outline, q, n);
    if (mm > anotherEdge * wideMm) continue;
    widths.push(mm);
    strokes.push([q, [q[0] + mm * n[0], q[1] + mm * n[1]]]);
  }
  return { strokes, wideMm, leastMm: Math.min(...widths), mostMm: Math.max(...widths), at: [p[0] + (wideMm / 2) * out[0], p[1] + (wideMm / 2) * out[1]], out };
}

/** How far it is from a point to the outline in a direction, mm; endless where it is not met. */
export function edgeAlong({ xy }: Outline, [px, py]: Xy, [ux, uy]: Xy): number {
  let least = Infinity;
  for (let i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) {
    const ax = xy[j]! - px, ay = xy[j + 1]! - py, dx = xy[i]! - xy[j]!, dy = xy[i + 1]! - xy[j + 1]!;
    const turn = ux * dy - uy * dx;
    if (turn === 0) continue;
    const t = (ax * dy - ay * dx) / turn, k = (ax * uy - ay * ux) / turn;
    if (t > 1e-9 && k >= 0 && k <= 1 && t < least) least = t;
  }
  return least;
}

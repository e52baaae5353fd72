import type { EvenLine } from "./even-line.ts";

/** How far a chord may lie inside its curve, mm. */
const chordMm = 0.006;
const mostRounds = 4;

/**
 * The line's points with more between them, so that no two stand farther apart than `stepMm` and no chord lies more than 6 µm inside
 * its curve. A point put in bends the way both its neighbours bend, so that no bow is added: it stands off the chord by the bow of
 * their mean bend, at most 1.5 times the lesser's. Flat x y ….
 */
export function finely({ xy, closed }: EvenLine, stepMm: number): Float64Array {
  let points = xy;
  for (let round = 0; round < mostRounds; round++) {
    const finer = halved(points, closed, stepMm);
    if (finer.length === points.length) break;
    points = finer;
  }
  return points;
}

function halved(xy: Float64Array, closed: boolean, stepMm: number): Float64Array {
  const n = xy.length / 2;
  const bends = Float64Array.from({ length: n }, (_, i) => (closed || (i > 0 && i < n - 1) ? bendAt(xy, (i + n - 1) % n, i, (i + 1) % n) : NaN));
  if (!closed) {
    bends[0] = bends[1]!;
    bends[n - 1] = bends[n - 2]!;
  }
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    const [x, y] = [xy[2 * i]!, xy[2 * i + 1]!];
    out.push(x, y);
    if (i === n - 1 && !closed) break;
    const j = (i + 1) % n;
    const [dx, dy] = [xy[2 * j]! - x, xy[2 * j + 1]! - y];
    const square = dx * dx + dy * dy;
    const bow = (square / 8) * bothBend(bends[i]!, bends[j]!);
    if (square <= stepMm * stepMm * 1.0001 && Math.abs(bow) < chordMm) continue;
    const d = Math.sqrt(square);
    // To the right of the chord where the line bends left.
    out.push(x + dx / 2 + (bow * dy) / d, y + dy / 2 - (bow * dx) / d);
  }
  return Float64Array.from(out);
}

/** Curvature of the circle through three points, positive to the left, 1/mm. */
function bendAt(xy: Float64Array, p: number, i: number, q: number): number {
  const [ax, ay] = [xy[2 * i]! - xy[2 * p]!, xy[2 * i + 1]! - xy[2 * p + 1]!];
  const [bx, by] = [xy[2 * q]! - xy[2 * i]!, xy[2 * q + 1]! - xy[2 * i + 1]!];
  const [cx, cy] = [ax + bx, ay + by];
  return (2 * (ax * by - ay * bx)) / Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by) * (cx * cx + cy * cy));
}

/** The mean bend of two points that bend one way, at most 1.5 times the lesser; none where they bend to and fro. */
function bothBend(a: number, b: number): number {
  if (a * b <= 0) return 0;
  const mean = (a + b) / 2;
  const least = 1.5 * Math.min(Math.abs(a), Math.abs(b));
  return Math.abs(mean) < least ? mean : Math.sign(a) * least;
}

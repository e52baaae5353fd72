import type { EvenLine } from "./even-line.ts";
import type { Beside } from "./fair-program.ts";

/** Spans to either side of the one expected in which the foot of a point is looked for. */
const around = 4;

/**
 * Where given points lie beside an even line that runs by them in their order, the bow of each span over its chord counted with
 * the line. `arc` holds the running length of each given point and after them the whole length, mm.
 */
export function besideLine(line: EvenLine, xy: Float64Array, arc: Float64Array): readonly Beside[] {
  const { count: n, closed } = line;
  const m = xy.length / 2;
  const spans = closed ? n : n - 1;
  const total = arc[arc.length - 1]!;
  const bends = line.bends();
  const out: Beside[] = [];
  let shift = 0;
  for (let k = 0; k < m; k++) {
    const stands = ((arc[k + 1] ?? total) - (k > 0 ? arc[k - 1]! : closed ? arc[m - 1]! - total : 0)) / 2;
    // The line's parameter runs with the points'; what it drifts is carried from point to point.
    const expected = Math.round((arc[k]! / total) * spans + shift);
    let best = { at: 0, t: 0, square: Infinity };
    for (let j = expected - around; j <= expected + around; j++) {
      if (!closed && (j < 0 || j >= spans)) continue;
      const at = ((j % n) + n) % n;
      const found = onSpan(line.xy, at, (at + 1) % n, xy[2 * k]!, xy[2 * k + 1]!);
      if (found.square < best.square) {
        best = { at, ...found };
        shift = j + found.t - (arc[k]! / total) * spans;
      }
    }
    const { at, t } = best;
    const next = (at + 1) % n;
    const [nx, ny] = line.normal(at, next, t);
    const a = 2 * at;
    const b = 2 * next;
    const dx = xy[2 * k]! - ((1 - t) * line.xy[a]! + t * line.xy[b]!);
    const dy = xy[2 * k + 1]! - ((1 - t) * line.xy[a + 1]! + t * line.xy[b + 1]!);
    const bow = (t * (1 - t) * ((1 - t) * bends[at]!.bend + t * bends[next]!.bend)) / 2;
    // A line that bends left bows to the right.
    out.push({ at, t, off: dx * nx + dy * ny + bow, stands });
  }
  return out;
}

function onSpan(xy: Float64Array, i: number, j: number, px: number, py: number): { readonly t: number; readonly square: number } {
  const [x, y] = [xy[2 * i]!, xy[2 * i + 1]!];
  const [dx, dy] = [xy[2 * j]! - x, xy[2 * j + 1]! - y];
  const t = Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / (dx * dx + dy * dy)));
  const [ex, ey] = [px - x - t * dx, py - y - t * dy];
  return { t, square: ex * ex + ey * ey };
}

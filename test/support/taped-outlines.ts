import { arcLengths, joined, partBetween, pointAt, resample, reversed } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";

// Outlines as a maker's cut tape gives them, from the edges of a net upper: split along the centre, slit, turned, shifted, rough.

type Xy = readonly [number, number];

export interface UpperEdges {
  readonly feather: Polyline;
  readonly backMedial: Polyline;
  readonly topline: Polyline;
  readonly backLateral: Polyline;
}

/** The two halves of a net upper that lies as a right one, each a closed outline. */
export function splitAtCentre({ feather, backMedial, topline, backLateral }: UpperEdges): { readonly medial: Outline; readonly lateral: Outline } {
  const part = (line: Polyline, from: number, to: number): Polyline => partBetween(line, arcLengths(line), from, to);
  const [f, t] = [arcLengths(feather).at(-1)!, arcLengths(topline).at(-1)!];
  const toe = onAxis(feather), throat = onAxis(topline);
  const ring = (lines: readonly Polyline[]): Outline => {
    const { xy } = joined(lines);
    return { xy: xy.slice(0, xy.length - 2) };
  };
  const closed = (lines: readonly Polyline[]): Outline => ring([...lines, { xy: lines[0]!.xy.slice(0, 2) }]);
  return {
    medial: closed([part(feather, toe, f), backMedial, part(topline, 0, throat)]),
    lateral: closed([part(feather, 0, toe), part(topline, throat, t), backLateral]),
  };
}

/** Running length at which a line crosses the x axis. */
function onAxis(line: Polyline): number {
  const { xy } = line;
  const arc = arcLengths(line);
  for (let i = 0; i + 1 < arc.length; i++) {
    const [a, b] = [xy[2 * i + 1]!, xy[2 * i + 3]!];
    if (a === 0 || a * b < 0) return arc[i]! + (a / (a - b)) * (arc[i + 1]! - arc[i]!);
  }
  throw new Error("the line does not cross the centre");
}

/** The outline with a slit square to its edge at the place nearest to a point, opened to a width at the edge by cutting the bank away on either side. */
export function slitAt(outline: Outline, near: Xy, openMm: number, deepMm: number): Outline {
  const { xy } = outline;
  const closed: Polyline = { xy: Float64Array.of(...xy, xy[0]!, xy[1]!) };
  const arc = arcLengths(closed);
  let best = 0, least = Infinity;
  for (let s = 0; s < arc.at(-1)!; s += 0.25) {
    const [x, y] = pointAt(closed, arc, s);
    const d = Math.hypot(x - near[0], y - near[1]);
    if (d < least) [best, least] = [s, d];
  }
  const [a, b] = [pointAt(closed, arc, best - openMm / 2), pointAt(closed, arc, best + openMm / 2)];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  // To the left of a counter-clockwise outline lies its inside.
  const tip: Xy = [(a[0] + b[0]) / 2 - (deepMm * (b[1] - a[1])) / size, (a[1] + b[1]) / 2 + (deepMm * (b[0] - a[0])) / size];
  return { xy: Float64Array.of(...partBetween(closed, arc, 0, best - openMm / 2).xy, ...tip, ...partBetween(closed, arc, best + openMm / 2, arc.at(-1)!).xy.slice(0, -2)) };
}

/** As it lies on the table: turned, shifted, turned over if asked. Counter-clockwise again. */
export function laid(outline: Outline, degrees: number, [dx, dy]: Xy, over = false): Outline {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const line = over ? reversed({ xy: outline.xy.map((v, i) => (i % 2 === 0 ? v : -v)) }) : outline;
  const xy = new Float64Array(line.xy.length);
  for (let i = 0; i < xy.length; i += 2) {
    xy[i] = c * line.xy[i]! - s * line.xy[i + 1]! + dx;
    xy[i + 1] = s * line.xy[i]! + c * line.xy[i + 1]! + dy;
  }
  return { xy };
}

/** With a point every half millimetre, each moved by up to `mm` in x and y, seeded. */
export function rough(outline: Outline, mm: number, seed: number): Outline {
  let state = seed >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return ((state >>> 0) / 2 ** 32) * 2 - 1;
  };
  const { xy } = resample({ xy: Float64Array.of(...outline.xy, outline.xy[0]!, outline.xy[1]!) }, 0.5);
  return { xy: xy.slice(0, -2).map((v) => v + mm * next()) };
}

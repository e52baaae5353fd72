import { arcLengths, directionAt, joined, partBetween, pointAt } from "#plane/along.ts";
import { contains } from "#plane/inside.ts";
import { cutAtCrossing, extendEnd, extendStart } from "#plane/join.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Xy } from "../piece.ts";

/** Lines that follow each other round a piece, each cut off where it meets the next; none where two do not meet. */
export function metLines(lines: readonly Polyline[], reachMm: number): readonly Polyline[] | undefined {
  const out = lines.slice();
  for (let k = 0; k < out.length; k++) {
    const next = (k + 1) % out.length;
    const cut = cutAtCrossing(out[k]!, out[next]!) ?? cutAtCrossing(extendEnd(out[k]!, reachMm), extendStart(out[next]!, reachMm));
    if (!cut) return undefined;
    out[k] = cut.before;
    out[next] = cut.after;
  }
  return out;
}

/** The closed line along a ring of lines, its first point repeated. */
export const closedLine = (lines: readonly Polyline[]): Polyline => joined([...lines, { xy: lines[0]!.xy.slice(0, 2) }]);

export const outlineOf = (lines: readonly Polyline[]): Outline => {
  const { xy } = joined(lines);
  const n = xy.length;
  const closes = Math.abs(xy[0]! - xy[n - 2]!) < 1e-6 && Math.abs(xy[1]! - xy[n - 1]!) < 1e-6;
  return { xy: closes ? xy.slice(0, n - 2) : xy };
};

/** The part of a line that lies in an outline, cut off at the points of the line itself; all of it where none does. */
export function within({ xy }: Polyline, outline: Outline): Polyline {
  const held: number[] = [];
  for (let i = 0; i < xy.length; i += 2) if (contains(outline, xy[i]!, xy[i + 1]!)) held.push(i);
  return held.length < 2 ? { xy } : { xy: xy.slice(held[0], held[held.length - 1]! + 2) };
}

/** Most of a line that its corners may take away on either end, as a share. */
const mostShare = 0.45;

/**
 * The ring with its corners rounded: corner k lies between line k and the next. On straight lines the rounding is the circle of the radius
 * that touches both; on bent ones the arc of a conic that does. 0 leaves a corner sharp.
 */
export function rounded(lines: readonly Polyline[], radiiMm: readonly number[]): readonly Polyline[] {
  const n = lines.length;
  const arcs = lines.map(arcLengths);
  const lengths = arcs.map((arc) => arc[arc.length - 1]!);
  const takenMm = lines.map((line, k) => {
    const next = (k + 1) % n;
    const u = directionAt(line, arcs[k]!, Infinity, 2), v = directionAt(lines[next]!, arcs[next]!, 0, 2);
    const cosine = u[0] * v[0] + u[1] * v[1], sine = Math.abs(u[0] * v[1] - u[1] * v[0]);
    // Half the turn's tangent, which the circle's radius is taken away by on both lines.
    const away = sine > 1e-6 ? (radiiMm[k]! * (1 - cosine)) / sine : 0;
    return Math.min(away, mostShare * lengths[k]!, mostShare * lengths[next]!);
  });
  const out: Polyline[] = [];
  for (let k = 0; k < n; k++) {
    const next = (k + 1) % n;
    out.push(partBetween(lines[k]!, arcs[k]!, takenMm[(k + n - 1) % n]!, lengths[k]! - takenMm[k]!));
    if (takenMm[k]! > 0) out.push(arcBetween({ line: lines[k]!, arc: arcs[k]!, at: lengths[k]! - takenMm[k]! }, { line: lines[next]!, arc: arcs[next]!, at: takenMm[k]! }));
  }
  return out;
}

interface OnLine {
  readonly line: Polyline;
  readonly arc: Float64Array;
  readonly at: number;
}

const steps = 24;

/** The rational parabola with the meeting of both tangents as its middle point and the cosine of half the turn as its weight: a circle where both tangents are equally long. */
function arcBetween(from: OnLine, to: OnLine): Polyline {
  const [p, q] = [pointAt(from.line, from.arc, from.at), pointAt(to.line, to.arc, to.at)];
  const u = directionAt(from.line, from.arc, from.at), v = directionAt(to.line, to.arc, to.at);
  const cross = u[0] * v[1] - u[1] * v[0];
  const along = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / cross;
  const m: Xy = [p[0] + along * u[0], p[1] + along * u[1]];
  const weight = Math.sqrt(Math.max(0, (1 + u[0] * v[0] + u[1] * v[1]) / 2));
  const xy = new Float64Array(2 * (steps + 1));
  for (let k = 0; k <= steps; k++) {
    const t = k / steps, a = (1 - t) * (1 - t), b = 2 * weight * t * (1 - t), c = t * t;
    for (let d = 0; d < 2; d++) xy[2 * k + d] = (a * p[d]! + b * m[d]! + c * q[d]!) / (a + b + c);
  }
  return { xy };
}

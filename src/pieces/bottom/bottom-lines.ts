import { contains } from "#plane/inside.ts";
import { meetingPoint, segmentsMeet } from "#plane/crossing.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { edgePoint } from "../net-upper.ts";
import type { Xy } from "../piece.ts";
import type { NetBottom } from "./net-bottom.ts";

/** A straight line on the bottom: a point of it and its unit direction, from the outer toward the inner side. */
export interface Across {
  readonly at: Xy;
  readonly way: Xy;
}

/** What a line across a bottom reaches to either side, mm: farther than any bottom is broad. */
const reachMm = 120;

/** The joint line moved straight back toward the seat by a distance square to it, mm. */
export function behindJoint({ jointMedialPoint: m, jointLateralPoint: l }: Pick<NetBottom, "jointMedialPoint" | "jointLateralPoint">, mm: number): Across {
  const way = unit([m[0] - l[0], m[1] - l[1]]);
  // From outer to inner side, ahead lies to the right of the way.
  return { at: [(m[0] + l[0]) / 2 - mm * way[1], (m[1] + l[1]) / 2 + mm * way[0]], way };
}

/** The line by which heel and shank are centred: from the seat point to the middle of the waist, not to the toe; its unit direction. */
export function centring(net: NetBottom): Xy {
  const medial = edgePoint(net.ring, net.waistMedial), lateral = edgePoint(net.ring, net.waistLateral);
  return unit([(medial[0] + lateral[0]) / 2, (medial[1] + lateral[1]) / 2]);
}

/** Across the centring line, at a length along it from the seat point. */
export function squareAt(net: NetBottom, alongMm: number): Across {
  const [ux, uy] = centring(net);
  return { at: [alongMm * ux, alongMm * uy], way: [-uy, ux] };
}

/** Where along the centring line the joint line crosses it, mm from the seat point. */
export function jointAlong(net: NetBottom): number {
  const [ux, uy] = centring(net);
  const { at, way } = behindJoint(net, 0);
  return (at[0] * way[1] - at[1] * way[0]) / (ux * way[1] - uy * way[0]);
}

/** Cosine of the angle by which the joint line is off square to the centring line: a distance square to it, over this, is the distance along. */
export function jointSlant(net: NetBottom): number {
  const [ux, uy] = centring(net);
  const { way } = behindJoint(net, 0);
  return Math.abs(ux * way[1] - uy * way[0]);
}

/**
 * A line from the outer to the inner side that bows by `bowMm` (toward the toe where positive) between two points `chordMm` apart, as a
 * parabola that goes on beyond them.
 */
export function bowed({ at, way }: Across, bowMm: number, chordMm: number): Polyline {
  const steps = 60;
  const xy = new Float64Array(2 * (steps + 1));
  for (let k = 0; k <= steps; k++) {
    const t = -reachMm + (2 * reachMm * k) / steps;
    const share = (2 * t) / chordMm;
    const ahead = bowMm * Math.max(1 - share * share, -1);
    xy[2 * k] = at[0] + t * way[0] + ahead * way[1];
    xy[2 * k + 1] = at[1] + t * way[1] - ahead * way[0];
  }
  return { xy };
}

export const straight = (line: Across): Polyline => ({
  xy: Float64Array.of(line.at[0] - reachMm * line.way[0], line.at[1] - reachMm * line.way[1], line.at[0] + reachMm * line.way[0], line.at[1] + reachMm * line.way[1]),
});

/** The end of a bottom-like outline behind a line: first along the edge from the inner over the seat to the outer side, then the front. */
export interface BehindLine {
  /** From where the line meets the inner side, over the seat, to where it meets the outer side. */
  readonly edge: Polyline;
  /** The line itself between the two, from the outer to the inner side. */
  readonly front: Polyline;
}

/**
 * Cuts an outline that starts at the seat and runs over the outer side to the toe along a line from the outer to the inner side; nothing
 * where the line does not cross both sides.
 */
export function behind({ xy }: Outline, line: Polyline): BehindLine | undefined {
  const n = xy.length / 2;
  let outer: Crossing | undefined, inner: Crossing | undefined;
  for (let i = 0; i < n && !outer; i++) outer = crossingOf(xy, i, line);
  for (let i = n - 1; i >= 0 && !inner; i--) inner = crossingOf(xy, i, line);
  if (!outer || !inner || inner.edge <= outer.edge) return undefined;
  const edge = [...inner.at];
  for (let i = inner.edge + 1; i < n; i++) edge.push(xy[2 * i]!, xy[2 * i + 1]!);
  for (let i = 0; i <= outer.edge; i++) edge.push(xy[2 * i]!, xy[2 * i + 1]!);
  edge.push(...outer.at);
  const front = [...outer.at];
  for (let k = outer.line + 1; k <= inner.line; k++) front.push(line.xy[2 * k]!, line.xy[2 * k + 1]!);
  front.push(...inner.at);
  return { edge: withoutRepeats(edge), front: withoutRepeats(front) };
}

interface Crossing {
  readonly edge: number;
  readonly line: number;
  readonly at: Xy;
}

function crossingOf(xy: Float64Array, i: number, line: Polyline): Crossing | undefined {
  const [a, b] = [2 * i, (2 * i + 2) % xy.length];
  const q = line.xy;
  for (let k = 0; k + 3 < q.length; k += 2) {
    if (!segmentsMeet(xy[a]!, xy[a + 1]!, xy[b]!, xy[b + 1]!, q[k]!, q[k + 1]!, q[k + 2]!, q[k + 3]!)) continue;
    return { edge: i, line: k / 2, at: meetingPoint(xy[a]!, xy[a + 1]!, xy[b]!, xy[b + 1]!, q[k]!, q[k + 1]!, q[k + 2]!, q[k + 3]!) };
  }
  return undefined;
}

/** The closed outline of what lies behind a line. */
export const closedBehind = ({ edge, front }: BehindLine): Outline => ({ xy: withoutRepeats([...edge.xy.subarray(0, edge.xy.length - 2), ...front.xy.subarray(0, front.xy.length - 2)]).xy });

/** The straight part of a line that lies in an outline. */
export function inside(outline: Outline, line: Polyline): Polyline | undefined {
  const part = behind(outline, line);
  return part && contains(outline, ...middleOf(part.front)) ? part.front : undefined;
}

const middleOf = ({ xy }: Polyline): Xy => [(xy[0]! + xy[xy.length - 2]!) / 2, (xy[1]! + xy[xy.length - 1]!) / 2];

function withoutRepeats(points: readonly number[]): Polyline {
  const out: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const n = out.length;
    if (n >= 2 && Math.abs(out[n - 2]! - points[i]!) < 1e-6 && Math.abs(out[n - 1]! - points[i + 1]!) < 1e-6) continue;
    out.push(points[i]!, points[i + 1]!);
  }
  return { xy: Float64Array.from(out) };
}

function unit([x, y]: Xy): Xy {
  const length = Math.sqrt(x * x + y * y);
  return [x / length, y / length];
}

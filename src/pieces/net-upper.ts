import { arcLengths, joined, nearestOn, pointAt, reversed } from "#plane/along.ts";
import { lengthOf } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { breastShare } from "#last/heel-breast.ts";
import { medialSign, type Last, type Point3 } from "#last/last.ts";
import type { HeightMark, Lines } from "#lines/lines.ts";
import type { Half } from "#lines/feather.ts";
import { foldedHalves, meanForm, unfolded, type HalfEdges } from "#shell/halves.ts";
import type { LaidOnLast } from "#shell/lay-flat.ts";
import type { HalvesChoice } from "#shell/settings.ts";
import { carriedTo, edgeLine, edgePlaceAtX } from "./carry.ts";
import { evenLine } from "./even.ts";
import type { Xy } from "./piece.ts";

/** A fair line with the running length at each of its points. */
export interface Edge {
  readonly line: Polyline;
  readonly arc: Float64Array;
}

/** Running lengths of named places along a feather line, mm. */
export interface FeatherPlaces {
  readonly toe: number;
  readonly jointMedial: number;
  readonly jointLateral: number;
  readonly waistMedial: number;
  readonly waistLateral: number;
  readonly breastMedial: number;
  readonly breastLateral: number;
}

/** The places with the waist, half way between joint and heel breast. */
export const withWaists = <T extends Omit<FeatherPlaces, "waistMedial" | "waistLateral">>(places: T): T & FeatherPlaces => ({
  ...places,
  waistMedial: (places.jointMedial + places.breastMedial) / 2,
  waistLateral: (places.jointLateral + places.breastLateral) / 2,
});

/** Running lengths of named places. On the feather from the lateral seat, on the topline from the medial back point. */
export interface UpperPlaces extends FeatherPlaces {
  readonly throat: number;
  readonly quarterMedial: readonly number[];
  readonly quarterLateral: readonly number[];
  readonly lowestMedial: number;
  readonly lowestLateral: number;
}

/**
 * The upper as it lies on the last, laid flat, always as a right one (medial +y): four fair edges that run counter-clockwise
 * and meet in four corners.
 */
export interface NetUpper {
  /** Lateral seat over the toe to the medial seat. */
  readonly feather: Edge;
  /** Medial seat up to the medial back point. */
  readonly backMedial: Edge;
  /** Medial back point over the throat to the lateral back point. */
  readonly topline: Edge;
  /** Lateral back point down to the lateral seat. */
  readonly backLateral: Edge;
  readonly places: UpperPlaces;
  /** Difference of the back edges' lengths before they were made equal, medial less lateral, mm. */
  readonly backDifferenceMm: number;
}

export const edgeOf = (line: Polyline): Edge => ({ line, arc: arcLengths(line) });
export const edgeLength = (e: Edge): number => e.arc[e.arc.length - 1]!;
export const edgePoint = (e: Edge, s: number): Xy => pointAt(e.line, e.arc, s);

export function netOutline(net: NetUpper): Outline {
  const ring = joined([net.feather.line, net.backMedial.line, net.topline.line, net.backLateral.line]).xy;
  return { xy: ring.slice(0, ring.length - 2) };
}

/**
 * Fairs the flat shell's edges, makes the two back edges equally long and finds the named places on them. With `halves` "mean" topline
 * and back are the mean of both halves; each feather edge stays its own.
 */
export function netUpper(last: Last, lines: Lines, flat: LaidOnLast, halves: HalvesChoice = "separate"): NetUpper {
  const sign = medialSign(last.side);
  const { medial, lateral } = halves === "mean" ? unfolded(meanForm(foldedHalves(flat))) : ownHalves(flat, sign);
  const backs = trueBacks(medial.back, lateral.back);
  const feather = joined([lateral.feather, reversed(medial.feather)]);
  const topline = joined([medial.topline, reversed(lateral.topline)]);
  const featherEdge = edgeOf(evenLine(withEnds(feather, backs.seatLateral, backs.seatMedial)));
  const toplineEdge = edgeOf(evenLine(topline));
  return {
    feather: featherEdge,
    backMedial: edgeOf(backs.medial),
    topline: toplineEdge,
    backLateral: edgeOf(reversed(backs.lateral)),
    places: placesOn(last, lines, flat, sign, featherEdge, toplineEdge),
    backDifferenceMm: backs.differenceMm,
  };
}

/** The flat shell's own edges, as of a right one. */
function ownHalves({ shell: { edges }, uv }: LaidOnLast, sign: 1 | -1): Readonly<Record<Half, HalfEdges>> {
  const line = (vertices: Uint32Array): Polyline => edgeLine(uv, vertices, sign);
  return {
    medial: { topline: line(edges.toplineMedial), back: line(edges.backMedial), feather: line(edges.featherMedial) },
    lateral: { topline: line(edges.toplineLateral), back: line(edges.backLateral), feather: line(edges.featherLateral) },
  };
}

/** Both back edges (seat → topline) faired and stretched from the back point to their mean length. */
export function trueBacks(medialRaw: Polyline, lateralRaw: Polyline) {
  const medial = evenLine(medialRaw);
  const lateral = evenLine(lateralRaw);
  const a = lengthOf(medial);
  const b = lengthOf(lateral);
  const mean = (a + b) / 2;
  const trueMedial = scaledFromEnd(medial, mean / a);
  const trueLateral = scaledFromEnd(lateral, mean / b);
  return {
    medial: trueMedial,
    lateral: trueLateral,
    seatMedial: [trueMedial.xy[0]!, trueMedial.xy[1]!] as const,
    seatLateral: [trueLateral.xy[0]!, trueLateral.xy[1]!] as const,
    differenceMm: a - b,
  };
}

function scaledFromEnd({ xy }: Polyline, factor: number): Polyline {
  const n = xy.length;
  const x = xy[n - 2]!;
  const y = xy[n - 1]!;
  return { xy: xy.map((v, i) => (i % 2 === 0 ? x + factor * (v - x) : y + factor * (v - y))) };
}

/** The line with its ends moved to new places, the move dying away evenly over 40 mm of running length. */
export function withEnds(line: Polyline, start: Xy, end: Xy): Polyline {
  const arc = arcLengths(line);
  const total = arc[arc.length - 1]!;
  const { xy } = line;
  const n = xy.length;
  const move = [start[0] - xy[0]!, start[1] - xy[1]!, end[0] - xy[n - 2]!, end[1] - xy[n - 1]!] as const;
  const fade = (d: number): number => (d >= 40 ? 0 : (1 - d / 40) * (1 - d / 40));
  const out = xy.slice();
  for (let i = 0; i < arc.length; i++) {
    const a = fade(arc[i]!);
    const b = fade(total - arc[i]!);
    out[2 * i] = xy[2 * i]! + a * move[0] + b * move[2];
    out[2 * i + 1] = xy[2 * i + 1]! + a * move[1] + b * move[3];
  }
  return { xy: out };
}

function placesOn(last: Last, lines: Lines, flat: LaidOnLast, sign: 1 | -1, feather: Edge, topline: Edge): UpperPlaces {
  const { edges } = flat.shell;
  const on = (edge: Edge, p: Xy): number => nearestOn(edge.line, edge.arc, p[0], p[1]).s;
  const carried = (edge: Edge, vertices: Uint32Array, p: Point3): number => on(edge, carriedTo(flat, vertices, p, sign));
  const marks = (vertices: Uint32Array, of: readonly HeightMark[]): readonly number[] => of.map((m) => carried(topline, vertices, m.at));
  return withWaists({
    toe: on(feather, [0, 0]),
    jointMedial: carried(feather, edges.featherMedial, last.landmarks.jointMedial),
    jointLateral: carried(feather, edges.featherLateral, last.landmarks.jointLateral),
    breastMedial: on(feather, edgePlaceAtX(flat, edges.featherMedial, breastShare, sign)),
    breastLateral: on(feather, edgePlaceAtX(flat, edges.featherLateral, breastShare, sign)),
    throat: on(topline, throatOf(flat, sign)),
    quarterMedial: marks(edges.toplineMedial, lines.quarterHeights.medial),
    quarterLateral: marks(edges.toplineLateral, lines.quarterHeights.lateral),
    lowestMedial: carried(topline, edges.toplineMedial, lines.lowestMedial.at),
    lowestLateral: carried(topline, edges.toplineLateral, lines.lowestLateral.at),
  });
}

/** The throat point is the last vertex of the centre. */
function throatOf(flat: LaidOnLast, sign: 1 | -1): Xy {
  const { centre } = flat.shell.edges;
  const v = centre[centre.length - 1]!;
  return [flat.uv[2 * v]!, sign * flat.uv[2 * v + 1]!];
}

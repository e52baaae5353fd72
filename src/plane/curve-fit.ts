import { arcLengths } from "./along.ts";
import type { CurvePath } from "./curve-path.ts";
import { halfTurn, sectionsOf, type Section } from "./curve-sections.ts";
import { SpanFit } from "./curve-span.ts";
import { tangentsOf } from "./curve-tangents.ts";

export interface CurveFitOptions {
  /** How far the curves may pass from any point of the line, mm. */
  readonly pointMm?: number;
  /**
   * How far they may stand off the chords between its points, mm: the points lie on the curve that was meant, the chords inside it.
   * Where the line is so coarse that its own curve stands off farther, that and `pointMm` counts, up to 1.75 times as much as this.
   */
  readonly chordMm?: number;
}

/**
 * The few cubic Béziers, and straight pieces, that a fine polyline was drawn from, as far as can be told from it: every point within
 * `pointMm` of them, they within `chordMm` of its chords. Corners are kept exactly, between them all runs on without a kink. Pieces
 * are as long as the limits allow. The mirror image of a line gives the exact mirror image. Method: docs/method/curves.md.
 */
export function fitCurves(xy: Float64Array, closed: boolean, { pointMm = 0.0025, chordMm = 0.004 }: CurveFitOptions = {}): CurvePath {
  const clean = withoutRepeats(xy, closed);
  const sections = sectionsOf(clean, closed && clean.length > 4);
  const loop = closed && sections.length === 1 && sections[0]!.to === clean.length / 2;
  const pieces = sections.flatMap((section) => fitSection(pointsOf(clean, section, loop), section, loop, { pointMm, chordMm }));
  const first = loop ? 2 * farthest(clean) : 2 * sections[0]!.from;
  const out = new Float64Array(2 + 6 * pieces.length);
  out.set(clean.subarray(first, first + 2));
  pieces.forEach((p, k) => out.set(p.xy, 2 + 6 * k));
  return { xy: out, straight: Uint8Array.from(pieces, (p) => (p.straight ? 1 : 0)), closed };
}

/** One cubic after its start: two control points and the end. */
interface CurvePiece {
  readonly xy: readonly number[];
  readonly straight: boolean;
}

/** A curve whose handles lie this near its chord is a straight piece, mm. */
const straightMm = 1e-4;

/** Fits a section from the end that comes first by x, so that a section and its mirror image are worked the same way. */
function fitSection(xy: Float64Array, { straight, start, end }: Section, loop: boolean, limits: Required<CurveFitOptions>): readonly CurvePiece[] {
  if (straight) return [chordOf(xy, 0, xy.length / 2 - 1)];
  if (!isBackward(xy)) return fitRun(xy, start, end, loop, limits);
  const opposite = (d: Section["start"]) => d && ([-d[0], -d[1]] as const);
  return turnedRound(xy, fitRun(backward(xy), opposite(end), opposite(start), loop, limits));
}

function fitRun(xy: Float64Array, start: Section["start"], end: Section["end"], loop: boolean, { pointMm, chordMm }: Required<CurveFitOptions>): readonly CurvePiece[] {
  const arc = arcLengths({ xy });
  const last = arc.length - 1;
  const tangents = tangentsOf(xy, arc, loop);
  if (start) tangents.set(start, 0);
  if (end) tangents.set(end, 2 * last);
  const at = (k: number) => [tangents[2 * k]!, tangents[2 * k + 1]!] as const;
  const span = new SpanFit({ xy, arc, pointMm, chordMm: roomOfChords(xy, arc, pointMm, chordMm) });
  const pieces: CurvePiece[] = [];
  let guess = 24;
  for (let from = 0, to = 0; from < last; from = to) {
    to = longestSpan(from, last, guess, (k) => span.fits(from, k, at(from), at(k)));
    guess = Math.max(4, to - from);
    if (to === from) pieces.push(chordOf(xy, from, ++to));
    else pieces.push(pieceOf(xy, from, to, span.settled(from, to, at(from), at(to))));
  }
  return pieces;
}

/** What the curve may stand off each chord: its own bow, by the turns at its ends, is no fault of the fit. */
function roomOfChords(xy: Float64Array, arc: Float64Array, pointMm: number, chordMm: number): Float64Array {
  const last = arc.length - 1;
  const turn = (k: number): number => (k > 0 && k < last ? Math.abs(halfTurn(xy, 2 * k - 2, 2 * k, 2 * k + 2)) : 0);
  return Float64Array.from({ length: last }, (_, k) => {
    const bow = ((arc[k + 1]! - arc[k]!) * Math.max(turn(k), turn(k + 1))) / 4;
    return Math.min(1.75 * chordMm, Math.max(chordMm, bow + pointMm));
  });
}

/** The farthest point up to which one piece is good, about; `from` where none is. */
function longestSpan(from: number, last: number, guess: number, good: (to: number) => boolean): number {
  let low = from, high = last + 1;
  let to = Math.min(last, from + guess);
  while (low < last && (high > last || high - low > Math.max(1, (low - from) >> 3))) {
    if (good(to)) low = to;
    else high = to;
    to = high > last ? Math.min(last, from + Math.max(2, ((to - from) * 3) >> 1)) : low === from ? from + ((high - from) >> 1) : (low + high) >> 1;
    if (to <= low) break;
  }
  return low;
}

function pieceOf(xy: Float64Array, from: number, to: number, inner: readonly number[]): CurvePiece {
  const x = xy[2 * from]!, y = xy[2 * from + 1]!, dx = xy[2 * to]! - x, dy = xy[2 * to + 1]! - y;
  const d = Math.sqrt(dx * dx + dy * dy);
  const off = (i: number): number => Math.abs(dx * (inner[i + 1]! - y) - dy * (inner[i]! - x)) / d;
  if (off(0) <= straightMm && off(2) <= straightMm) return chordOf(xy, from, to);
  return { xy: [...inner, xy[2 * to]!, xy[2 * to + 1]!], straight: false };
}

function chordOf(xy: Float64Array, from: number, to: number): CurvePiece {
  const x0 = xy[2 * from]!, y0 = xy[2 * from + 1]!, x1 = xy[2 * to]!, y1 = xy[2 * to + 1]!;
  return { xy: [(2 * x0 + x1) / 3, (2 * y0 + y1) / 3, (x0 + 2 * x1) / 3, (y0 + 2 * y1) / 3, x1, y1], straight: true };
}

/** The pieces walked from their last end to their start, which is the first point of `xy` backward. */
function turnedRound(xy: Float64Array, pieces: readonly CurvePiece[]): readonly CurvePiece[] {
  const starts = [[xy[xy.length - 2]!, xy[xy.length - 1]!], ...pieces.map((p) => [p.xy[4]!, p.xy[5]!])];
  return pieces.map((p, k): CurvePiece => ({ xy: [p.xy[2]!, p.xy[3]!, p.xy[0]!, p.xy[1]!, ...starts[k]!], straight: p.straight })).reverse();
}

function pointsOf(xy: Float64Array, { from, to }: Section, loop: boolean): Float64Array {
  const n = xy.length / 2;
  const first = loop ? farthest(xy) : from;
  const out = new Float64Array(2 * (to - from + 1));
  for (let k = 0; k <= to - from; k++) {
    const i = 2 * ((first + k) % n);
    out[2 * k] = xy[i]!;
    out[2 * k + 1] = xy[i + 1]!;
  }
  return out;
}

/** The point of greatest x: a start that a loop and its mirror image share. Of several, the one farther from the x axis. */
function farthest(xy: Float64Array): number {
  let best = 0;
  for (let i = 2; i < xy.length; i += 2) {
    if (xy[i]! > xy[2 * best]! || (xy[i] === xy[2 * best] && Math.abs(xy[i + 1]!) > Math.abs(xy[2 * best + 1]!))) best = i / 2;
  }
  return best;
}

/** Whether the first x that differs, taken from both ends, is the greater at the start. */
function isBackward(xy: Float64Array): boolean {
  for (let i = 0, j = xy.length - 2; i < j; i += 2, j -= 2) if (xy[i] !== xy[j]) return xy[i]! > xy[j]!;
  return false;
}

function backward(xy: Float64Array): Float64Array {
  const out = new Float64Array(xy.length);
  for (let i = 0, j = xy.length - 2; j >= 0; i += 2, j -= 2) {
    out[i] = xy[j]!;
    out[i + 1] = xy[j + 1]!;
  }
  return out;
}

/** The line without points that lie within a nanometre of the one before; ends of an open line stay. */
function withoutRepeats(xy: Float64Array, closed: boolean): Float64Array {
  const same = (a: number, b: number): boolean => Math.abs(xy[a]! - xy[b]!) < 1e-6 && Math.abs(xy[a + 1]! - xy[b + 1]!) < 1e-6;
  const last = xy.length - 2;
  const kept: number[] = [];
  for (let i = 0; i <= last; i += 2) {
    if (i > 0 && same(i, i - 2) && (closed || i < last)) continue;
    if (closed && i === last && i > 0 && same(i, 0)) continue;
    kept.push(xy[i]!, xy[i + 1]!);
  }
  return Float64Array.from(kept);
}

import { finding, type Finding } from "#base/findings.ts";
import type { FeatherLine, Last } from "./last.ts";
import { sizeOfStick } from "./measures-by-size.ts";

/** What is needed of a last to tell its size. */
type Sized = Pick<Last, "feather" | "landmarks" | "measures">;

/** The EU size of a last, to the half size, with and without the point of its toe. */
export interface NominalSize {
  /** By the stick length as it is: 20/3 mm a size (Paris point, ISO/TS 19407:2015). */
  readonly byStick: number;
  /** By the stick length without the point: what the last is most likely called. */
  readonly withoutPoint: number;
  /** What the point adds to the length, mm; 0 on round and square toes. */
  readonly pointMm: number;
}

/** The toes begin where the bottom is so broad, as a share of the ball width: scanned feet are 4 to 9 mm behind their tips (median of five 6.3). */
const toesShare = 0.4;
/** A round toe is so broad this far behind its tip, as a share of the ball width: 5 mm, hardly less than a foot. Our own forms and the synthetic lasts, no source. */
const roundShare = 0.065;
/** Half a size: less is not told, and the stick length stays what it is. */
const toldMm = 10 / 3;

/**
 * The size a last is most likely called. A pointed toe is longer than the toes reach, and its stick length with it: makers take the
 * point off by feel (common practice, no source; The Shoe and Leather Lexicon of 1918 has lasts draw 8 to 13 mm over their marked
 * size). Here the point is what lies farther from the toe point to where the bottom is two fifths of the ball width than on a round toe.
 */
export function nominalSize({ feather, landmarks, measures }: Sized): NominalSize {
  const broadMm = behindToe(feather, landmarks.toePoint[0], toesShare * measures.ballWidth);
  const point = broadMm - roundShare * measures.ballWidth;
  const pointMm = point < toldMm ? 0 : point;
  return { byStick: toHalf(sizeOfStick(measures.stickLength)), withoutPoint: toHalf(sizeOfStick(measures.stickLength - pointMm)), pointMm };
}

/** Says so where the point of the toe makes the last read a larger size. */
export function pointFindings(last: Sized): Finding[] {
  const { byStick, withoutPoint, pointMm } = nominalSize(last);
  return byStick === withoutPoint ? [] : [finding("size-counts-point", { stickMm: last.measures.stickLength, byStick, withoutPoint, pointMm }, last.landmarks.toePoint)];
}

const toHalf = (size: number): number => Math.round(2 * size) / 2;

/** How far behind the toe point the feather line is first so broad, mm; a point is nowhere longer than a third of the last. */
function behindToe(feather: FeatherLine, toeX: number, breadth: number): number {
  let [from, to] = [0, toeX / 3];
  for (let step = 0; step < 30; step++) {
    const middle = (from + to) / 2;
    if (breadthAt(feather.points, toeX - middle) < breadth) from = middle;
    else to = middle;
  }
  return to;
}

/** Across the feather line at one x, mm. */
function breadthAt(points: Float64Array, x: number): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0, j = points.length - 3; i < points.length; j = i, i += 3) {
    const [a, b] = [points[j]!, points[i]!];
    if (a > x === b > x) continue;
    const y = points[j + 1]! + ((points[i + 1]! - points[j + 1]!) * (x - a)) / (b - a);
    [low, high] = [Math.min(low, y), Math.max(high, y)];
  }
  return high > low ? high - low : 0;
}

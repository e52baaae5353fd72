import { printedWidth } from "../measure.ts";
import type { Sketch, Xy } from "./sketch.ts";

/** Letters of a drawing are as high as the smallest of the book, mm. */
export const letterMm = 2;
/** Free about a letter, mm. */
const clearMm = 0.3;
/** So far from its place a letter may stand, mm, nearest first. */
const reachesMm = [2, 2.8, 3.8, 5, 6.5, 8.5] as const;
const ways = 16;
/** From where on a line leads from a letter to its place, mm. */
const leaderFromMm = 2.4;

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface PlacedLetter {
  readonly text: string;
  /** Lower left corner of its capitals. */
  readonly x: number;
  readonly y: number;
  readonly box: Box;
  /** From beside the letter to what it names. */
  readonly leader?: readonly [number, number, number, number];
}

/** Every letter of a sketch where no stroke and no other letter is, as near to its place as that goes. */
export function placedLetters({ letters, strokes }: Sketch): readonly PlacedLetter[] {
  const segments = strokes.flatMap(({ xy, closed }) => segmentsOf(xy, closed));
  const placed: PlacedLetter[] = [];
  for (const { text, at, toward } of letters) {
    const wide = printedWidth(text, letterMm, true);
    let best: PlacedLetter | undefined, least = Infinity;
    for (const middle of places(at, toward)) {
      const one = letterAt(text, wide, middle, at);
      const cost = placed.reduce((sum, other) => sum + (apart(one.box, other.box) ? 0 : 100), 0) + segments.reduce((sum, s) => sum + (crosses(s, one.box) ? 1 : 0), 0);
      if (cost < least) [best, least] = [one, cost];
      if (cost === 0) break;
    }
    placed.push(best!);
  }
  return placed;
}

function letterAt(text: string, wide: number, [mx, my]: Xy, [ax, ay]: Xy): PlacedLetter {
  const x = mx - wide / 2, y = my - letterMm / 2;
  const box = { minX: x - clearMm, maxX: x + wide + clearMm, minY: y - clearMm - hangMm(text), maxY: y + letterMm + clearMm };
  const far = Math.sqrt((mx - ax) ** 2 + (my - ay) ** 2);
  if (far < leaderFromMm) return { text, x, y, box };
  const from = (letterMm / 2 + 0.5) / far;
  return { text, x, y, box, leader: [mx + from * (ax - mx), my + from * (ay - my), ax, ay] };
}

/** What hangs below the base line. */
const hangMm = (text: string): number => (/[gjpqy]/.test(text) ? 0.3 * letterMm : 0);

/** Places about a point, in the wanted way first, then turning away from it to both sides, then farther off. */
function* places([x, y]: Xy, [wx, wy]: Xy): Generator<Xy> {
  const wanted = Math.atan2(wy, wx);
  for (const reach of reachesMm) {
    for (let k = 0; k < ways; k++) {
      const turn = wanted + (k % 2 === 0 ? 1 : -1) * Math.ceil(k / 2) * ((2 * Math.PI) / ways);
      yield [x + reach * Math.cos(turn), y + reach * Math.sin(turn)];
    }
  }
}

type Segment = readonly [number, number, number, number];

function segmentsOf(xy: readonly number[], closed: boolean): readonly Segment[] {
  const out: Segment[] = [];
  for (let i = 2; i < xy.length; i += 2) out.push([xy[i - 2]!, xy[i - 1]!, xy[i]!, xy[i + 1]!]);
  if (closed) out.push([xy[xy.length - 2]!, xy[xy.length - 1]!, xy[0]!, xy[1]!]);
  return out;
}

const apart = (a: Box, b: Box): boolean => a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;

/** Whether a segment meets a box: neither the box's own sides nor the segment's line parts them. */
export function crosses([x0, y0, x1, y1]: Segment, { minX, minY, maxX, maxY }: Box): boolean {
  if (Math.max(x0, x1) < minX || Math.min(x0, x1) > maxX || Math.max(y0, y1) < minY || Math.min(y0, y1) > maxY) return false;
  const side = (x: number, y: number): number => (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0);
  const sides = [side(minX, minY), side(minX, maxY), side(maxX, minY), side(maxX, maxY)];
  return sides.some((s) => s >= 0) && sides.some((s) => s <= 0);
}

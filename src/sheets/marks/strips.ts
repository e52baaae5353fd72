import { textWidth } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import type { TapeMark } from "./tape-marks.ts";

/** A printed tape to be cut out and laid on the last: zero at one end, a tick at each length. Names by which it is read back. */
export const zeroName = (strip: string): string => `zero-${strip}`;
export const tickName = (mark: TapeMark): string => `tick-${mark.key}`;

export interface Strip {
  readonly name: string;
  /** Where its zero is laid. */
  readonly zero: string;
  readonly title: string;
  readonly marks: readonly TapeMark[];
}

/** Room after the last tick, mm. */
const endMm = 8;
export const stripWidthMm = 17;
const letterMm = 2.2;

/** How long a strip is, ticks that would pass `mostMm` left off. */
export const marksWithin = (marks: readonly TapeMark[], mostMm: number): readonly TapeMark[] => marks.filter((m) => m.lengthMm + endMm <= mostMm);
export const stripLength = (marks: readonly TapeMark[]): number => Math.max(...marks.map((m) => m.lengthMm), 20) + endMm;

/**
 * Draws a strip upward from (x, y) or, `lying`, to the right. Ticks come from the edge that is laid on the line; their words
 * stand beside them, spread where lengths lie close.
 */
export function inkStrip(ink: PageInk, { name, zero, title, marks }: Strip, x: number, y: number, lying: boolean): void {
  const length = stripLength(marks);
  const point = (along: number, across: number): readonly [number, number] => (lying ? [x + along, y + across] : [x + stripWidthMm - across, y + along]);
  const line = (a: readonly [number, number], b: readonly [number, number]) => ink.line(a[0], a[1], b[0], b[1]);
  const width = lying ? 13 : stripWidthMm;
  ink.style(0.18);
  ink.stroke([...point(0, 0), ...point(length, 0), ...point(length, width), ...point(0, width)], true);
  ink.style(0.5);
  ink.named(zeroName(name), () => line(point(0, 0), point(0, width)));
  ink.style(0.35);
  for (const mark of marks) ink.named(tickName(mark), () => line(point(mark.lengthMm, 0), point(mark.lengthMm, 4)));
  ink.style(0.18);
  if (lying) {
    const wide = (m: TapeMark) => textWidth(label(m), letterMm) + 1.5;
    const places = spread(marks.map((m) => m.lengthMm), marks.map(wide), 10 + textWidth(zero, letterMm) / 2, length);
    marks.forEach((mark, i) => {
      line(point(mark.lengthMm, 4), point(places[i]!, 5.4));
      ink.text(label(mark), x + places[i]! - textWidth(label(mark), letterMm) / 2, y + 5.9, letterMm);
    });
    ink.text(title, x + 2, y + 10, letterMm, { bold: true });
    ink.text(zero, x + 0.8, y + 1, 1.8);
    return;
  }
  const places = spread(marks.map((m) => m.lengthMm), marks.map(() => letterMm + 1.2), 10, length);
  marks.forEach((mark, i) => {
    line(point(mark.lengthMm, 4), point(places[i]!, 5));
    const text = label(mark);
    ink.text(text, x + stripWidthMm - 5.4 - textWidth(text, letterMm), y + places[i]! - letterMm / 2, letterMm);
  });
  ink.text(title, x + 3, y + 12, letterMm, { bold: true, angleDeg: 90 });
  ink.text(zero, x + 2, y + 1.2, 1.8);
}

/** A length as the hand can use it. */
export const half = (mm: number): string => (Math.round(mm * 2) / 2).toFixed(1);
const label = (m: TapeMark): string => `${m.tick} ${half(m.lengthMm)}`;

/** Middles for labels near their wished places, in order, none closer than their sizes, from `least` on and at most `most`. */
export function spread(wished: readonly number[], sizes: readonly number[], least: number, most: number): readonly number[] {
  const order = wished.map((_, i) => i).sort((a, b) => wished[a]! - wished[b]! || a - b);
  const out = [...wished];
  let edge = least;
  for (const i of order) {
    out[i] = Math.max(wished[i]!, edge + sizes[i]! / 2);
    edge = out[i]! + sizes[i]! / 2;
  }
  edge = most;
  for (const i of [...order].reverse()) {
    if (out[i]! + sizes[i]! / 2 > edge) out[i] = edge - sizes[i]! / 2;
    edge = out[i]! - sizes[i]! / 2;
  }
  return out;
}

import { textWidth } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import type { TapeMark } from "./tape-marks.ts";

/** A printed tape to be cut out and laid on the last: zero at one end, a tick at each length. Names by which it is read back. */
export const zeroName = (strip: string): string => `zero-${strip}`;
export const tickName = (mark: { readonly key: string }): string => `tick-${mark.key}`;

export interface Strip {
  readonly name: string;
  /** Where its zero is laid. */
  readonly zero: string;
  /** First line bold. */
  readonly title: readonly string[];
  readonly marks: readonly TapeMark[];
}

/** Room after the last tick for the title of an upright strip, mm. */
const endMm = 12;
export const stripWidthMm = 20;
export const lyingStripHighMm = 12;
const letterMm = 2.2;
const smallLetterMm = 1.8;
/** From the right edge of an upright strip to the end of a mark's words, mm. */
const wordsFromTickMm = 5.4;

/** Marks whose strip is no longer than `mostMm`. */
export const marksWithin = (marks: readonly TapeMark[], mostMm: number): readonly TapeMark[] => marks.filter((m) => m.lengthMm + endMm <= mostMm);
const longest = (marks: readonly TapeMark[]): number => Math.max(...marks.map((m) => m.lengthMm), 20);

/** Draws a strip upward from (x, y). Ticks come from its right edge; their words stand beside them, spread where lengths lie close. */
export function inkUprightStrip(ink: PageInk, { name, zero, title, marks }: Strip, x: number, y: number): void {
  const length = longest(marks) + endMm;
  const right = x + stripWidthMm;
  ink.style(0.18);
  ink.box(x, y, stripWidthMm, length);
  ink.style(0.5);
  ink.named(zeroName(name), () => ink.line(right, y, x, y));
  const places = spread(marks.map((m) => m.lengthMm), marks.map(() => letterMm + 1), 6, length - 7);
  marks.forEach((mark, i) => {
    ink.style(0.35);
    ink.named(tickName(mark), () => ink.line(right, y + mark.lengthMm, right - 4, y + mark.lengthMm));
    ink.style(0.18);
    ink.line(right - 4, y + mark.lengthMm, right - 5, y + places[i]!);
    const text = label(mark);
    // Long words go into smaller letters, so that they stay on the strip.
    const letters = textWidth(text, letterMm) <= stripWidthMm - wordsFromTickMm - 1 ? letterMm : smallLetterMm;
    ink.text(text, right - wordsFromTickMm - textWidth(text, letters), y + places[i]! - letters / 2, letters);
  });
  title.forEach((words, i) => ink.text(words, x + 1.2, y + length - 3.2 - 3 * i, i === 0 ? letterMm : 1.8, { bold: i === 0 }));
  ink.text(zero, x + 1.2, y + 1.2, 1.8);
}

/** Draws a strip to the right from (x, y), for a single length. Its tick comes from the lower edge. */
export function inkLyingStrip(ink: PageInk, { name, zero, title, marks }: Strip, x: number, y: number): void {
  ink.style(0.18);
  ink.box(x, y, longest(marks) + 2, lyingStripHighMm);
  ink.style(0.5);
  ink.named(zeroName(name), () => ink.line(x, y, x, y + lyingStripHighMm));
  for (const mark of marks) {
    ink.style(0.35);
    ink.named(tickName(mark), () => ink.line(x + mark.lengthMm, y, x + mark.lengthMm, y + 5));
    ink.text(label(mark), x + mark.lengthMm - 1 - textWidth(label(mark), letterMm), y + 2, letterMm);
  }
  title.forEach((words, i) => ink.text(words, x + 1.5, y + lyingStripHighMm - 3.4 - 3 * i, i === 0 ? letterMm : 1.8, { bold: i === 0 }));
  ink.text(zero, x + 1.5, y + 1.2, 1.8);
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

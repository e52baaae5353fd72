import type { Line } from "./block.ts";
import { brokenAt, printedWidth } from "./measure.ts";

/** How words are written: height of their capitals, and from one line to the next, mm. */
export interface Letters {
  readonly heightMm: number;
  readonly stepMm: number;
  readonly bold?: boolean;
}
export const body: Letters = { heightMm: 2.5, stepMm: 3.9 };
export const strong: Letters = { ...body, bold: true };
export const small: Letters = { heightMm: 2.1, stepMm: 3.3 };
/** What is read before the work, and what to take care of at it. */
export const reading: Letters = { heightMm: 2.3, stepMm: 3.55 };
export const readingStrong: Letters = { ...reading, bold: true };
/** Small words in a narrow column. */
export const close: Letters = { heightMm: 2.1, stepMm: 3.25 };
/** Sources, and what is looked up rather than read. */
export const fine: Letters = { heightMm: 2, stepMm: 3.2 };
export const smallStrong: Letters = { ...small, bold: true };
export const heading: Letters = { heightMm: 3.5, stepMm: 5.6, bold: true };
export const large: Letters = { heightMm: 5, stepMm: 8, bold: true };

/** Where letters stand in their line: what hangs below the base line has room. */
export const baseOf = ({ heightMm, stepMm }: Letters): number => heightMm + (stepMm - heightMm) * 0.35;

/** One line of words, `indent` to the right, as they are. */
export function line(text: string, letters: Letters, indent = 0): Line {
  return { highMm: letters.stepMm, ink: (ink, x, top) => ink.text(text, x + indent, top - baseOf(letters), letters.heightMm, { bold: letters.bold ?? false }) };
}

/** Words broken to a width. */
export const brokenWords = (text: string, width: number, { heightMm, bold = false }: Letters): readonly string[] => brokenAt(text, heightMm, width, bold);

/** Words as lines of a cell. */
export const lines = (text: string, width: number, letters: Letters = body): readonly Line[] => brokenWords(text, width, letters).map((words) => line(words, letters));

/** Words led in by a short sign, further lines set in below the words. */
export function hanging(sign: string, text: string, width: number, letters: Letters = body, indent = 3.2): readonly Line[] {
  return brokenWords(text, width - indent, letters).map((words, i): Line => {
    const told = line(words, letters, indent);
    if (i > 0) return told;
    const lead = line(sign, letters);
    return { highMm: told.highMm, ink: (ink, x, top) => [lead, told].forEach((l) => l.ink(ink, x, top)) };
  });
}

/** A word in bold and what it says behind it, further lines below it. */
export function labelled(label: string, text: string, width: number, letters: Letters = small): readonly Line[] {
  const bold = { ...letters, bold: true };
  const after = printedWidth(`${label} `, letters.heightMm, true) + 0.6;
  const [first = "", ...more] = brokenAt(text, letters.heightMm, width, letters.bold, after);
  const [lead, told] = [line(label, bold), line(first, letters, after)];
  return [{ highMm: letters.stepMm, ink: (ink, x, top) => [lead, ...(first ? [told] : [])].forEach((l) => l.ink(ink, x, top)) }, ...more.map((words) => line(words, letters))];
}

/** Lines that are never parted, and that may stand alone on either side of a parting. */
export function together(all: readonly Line[], indent = 0): Line {
  return {
    lines: Math.max(2, all.length),
    highMm: all.reduce((mm, l) => mm + l.highMm, 0),
    ink: (ink, x, top) => {
      let y = top;
      for (const l of all) {
        l.ink(ink, x + indent, y);
        y -= l.highMm;
      }
    },
  };
}

/** An amount with what stands in brackets behind it on a line of its own: both are short. */
export const amountLines = (text: string, width: number, letters: Letters = body): readonly Line[] => text.split(/ (?=\()/).flatMap((part, i) => lines(part, width, i === 0 ? letters : { ...small, bold: letters.bold ?? false }));

/** Blank. */
export const blank = (highMm: number): Line => ({ highMm, blank: true, ink: () => undefined });

/** Numbers and such at the right end of a width. */
export function atRight(text: string, width: number, letters: Letters = body): readonly Line[] {
  return brokenWords(text, width, letters).map((words) => line(words, letters, width - printedWidth(words, letters.heightMm, letters.bold)));
}

import { capitalShare, textWidth } from "#sheets/lettering.ts";
import type { PageInk } from "#sheets/pdf/page-ink.ts";

/** Words of a page as they stand on it, mm: from where to where along their line, and their base line. */
export interface WordsOnPage {
  readonly text: string;
  readonly heightMm: number;
  readonly from: number;
  readonly to: number;
  readonly y: number;
}

/** Bytes of Windows Latin 1 that are other letters than in Latin 1 (the sheets' own words use no more). */
const windowsLetters: Readonly<Record<string, string>> = { "80": "€", "85": "…", "91": "‘", "92": "’", "93": "“", "94": "”", "95": "•", "96": "–", "97": "—" };

/** All level words of a page, read from what was drawn; widths as the font's own table has them. */
export function wordsOnPage(ink: PageInk): readonly WordsOnPage[] {
  return [...ink.content().matchAll(/BT \/(Plain|Bold) (\S+) Tf 1\.0+ 0 0 1\.0+ (\S+) (\S+) Tm <([0-9A-Fa-f]+)> Tj ET/g)].map(([, face, size, x, y, hex]) => {
    const text = (hex!.match(/../g) ?? []).map((byte) => windowsLetters[byte.toLowerCase()] ?? String.fromCharCode(parseInt(byte, 16))).join("");
    const heightMm = Number(size) * capitalShare;
    return { text, heightMm, from: Number(x), to: Number(x) + textWidth(text, heightMm, face === "Bold"), y: Number(y) };
  });
}

/** How far words hang below their base line: a third of a capital at most, and hardly where no letter does. */
const hangs = ({ text, heightMm }: WordsOnPage): number => (/[gjpqyQ,;()/[\]|]/.test(text) ? 0.3 : 0.02) * heightMm;

/** Pairs of words that lie on one another. */
export function overlaps(words: readonly WordsOnPage[]): readonly string[] {
  const out: string[] = [];
  words.forEach((a, i) => {
    for (const b of words.slice(i + 1)) {
      const across = Math.min(a.to, b.to) - Math.max(a.from, b.from);
      const up = Math.min(a.y + a.heightMm, b.y + b.heightMm) - Math.max(a.y - hangs(a), b.y - hangs(b));
      if (across > 0.05 && up > 0.05) out.push(`“${a.text}” and “${b.text}”`);
    }
  });
  return out;
}

/** Words that a straight stroke of a page goes through: level and upright lines, and the sides of boxes; what is drawn of shoes and pieces is left out. */
export function struckThrough(ink: PageInk, words: readonly WordsOnPage[]): readonly string[] {
  const content = ink.content(), sides: (readonly [number, number, number, number])[] = [];
  for (const [, ...at] of content.matchAll(/^(\S+) (\S+) m (\S+) (\S+) l S$/gm)) sides.push(at.map(Number) as [number, number, number, number]);
  for (const [, ...at] of content.matchAll(/^(\S+) (\S+) (\S+) (\S+) re S$/gm)) {
    const [x, y, w, h] = at.map(Number) as [number, number, number, number];
    sides.push([x, y, x + w, y], [x, y + h, x + w, y + h], [x, y, x, y + h], [x + w, y, x + w, y + h]);
  }
  return words.filter((word) =>
    sides.some(([x0, y0, x1, y1]) => {
      const across = Math.min(Math.max(x0, x1), word.to - 0.1) - Math.max(Math.min(x0, x1), word.from + 0.1);
      const up = Math.min(Math.max(y0, y1), word.y + word.heightMm - 0.1) - Math.max(Math.min(y0, y1), word.y - 0.1);
      return (x0 === x1 || y0 === y1) && across >= 0 && up >= 0;
    }),
  ).map((word) => word.text);
}

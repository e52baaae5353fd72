import { textWidth } from "../lettering.ts";
import { marginMm, topStripMm } from "../paper.ts";
import type { PageInk } from "./page-ink.ts";
import { barAcross } from "./scale-bars.ts";

/** What stands in the strip at the top of a page. */
export interface Head {
  readonly title: string;
  /** "size EU 38", or nothing. */
  readonly sizeWords: string;
  readonly page: number;
  readonly pages: number;
  /** Which set the page belongs to, where it belongs to one. */
  readonly set: string;
  /** What this page shows; things in a row are parted by "; ". */
  readonly shows: string;
}

const numberMm = 4;
/** Height of the letters of set and size, and of what the page shows where one line takes it, mm. */
const toldMm = 2.5;
const oneLineMm = [3, 2.5] as const;
/** The same where it takes more: the first line runs above the bar, two more end beside it. */
const manyLinesMm = [2.2, 1.8] as const;
const smallToldMm = 1.8;
const lineMm = 2.7;
const besideBarMm = 4;

/**
 * Page number, set and size, what the page shows, and the bar. Nothing is cut short: what one line does not take goes into three smaller
 * ones, and what those do not take is counted. The title stands here where there is room for all of it, and on the left strip always.
 */
export function inkHead(ink: PageInk, head: Head): void {
  const { widthMm, heightMm, barMm } = ink.page;
  const top = heightMm - marginMm, right = widthMm - marginMm;
  barAcross(ink, right - barMm, top - topStripMm + 0.5, barMm);
  const number = `Page ${head.page} of ${head.pages}`;
  ink.text(number, marginMm, top - 4.5, numberMm, { bold: true });
  const told = [head.set, head.sizeWords].filter(Boolean).join(", ");
  const after = marginMm + textWidth(number, numberMm, true) + besideBarMm;
  const width = right - barMm - besideBarMm - after;
  const height = oneLineMm.find((h) => textWidth(head.shows, h, true) <= width);
  if (height && textWidth(told, toldMm) <= width) {
    const withTitle = [told, head.title].filter(Boolean).join(", ");
    ink.text(textWidth(withTitle, toldMm) <= width ? withTitle : told, after, top - 2.5, toldMm);
    ink.text(head.shows, after, top - 6.9, height, { bold: true });
    return;
  }
  ink.text(told, marginMm, top - 7.5, smallToldMm);
  const begin = Math.max(after, marginMm + textWidth(told, smallToldMm) + besideBarMm);
  const beside = right - barMm - besideBarMm - begin;
  const { lines, heightMm: letters } = shownIn(head.shows, [right - begin, beside, beside]);
  lines.forEach((line, i) => ink.text(line, begin, top - letters - lineMm * i, letters, { bold: true }));
}

/** What a page shows in lines of given widths, in the largest letters that take it all; else as much as the smallest take, and how many more there are. */
export function shownIn(shows: string, widths: readonly number[]): { readonly lines: readonly string[]; readonly heightMm: number } {
  const parts = shows.split("; ");
  for (let left = 0; left < parts.length; left++) {
    const words = left === 0 ? shows : `${parts.slice(0, -left).join("; ")}; and ${left} more, see the index`;
    for (const heightMm of left === 0 ? manyLinesMm : manyLinesMm.slice(-1)) {
      const lines = brokenTo(words, heightMm, widths);
      if (lines) return { lines, heightMm };
    }
  }
  return { lines: [`${parts.length} pieces, see the index`], heightMm: manyLinesMm[1] };
}

/** Words in lines of given widths, or nothing where they do not fit. */
function brokenTo(words: string, heightMm: number, widths: readonly number[]): readonly string[] | undefined {
  const lines: string[] = [""];
  for (const word of words.split(" ")) {
    const longer = [lines[lines.length - 1], word].filter(Boolean).join(" ");
    if (textWidth(longer, heightMm, true) <= (widths[lines.length - 1] ?? 0)) lines[lines.length - 1] = longer;
    else if (lines.length < widths.length && textWidth(word, heightMm, true) <= widths[lines.length]!) lines.push(word);
    else return undefined;
  }
  return lines;
}

import { capital } from "#base/listed.ts";
import type { CommonSheet } from "../arrange.ts";
import { brokenIntoLines, shortenedTo, textWidth } from "../lettering.ts";
import { leftStripMm, marginMm } from "../paper.ts";
import { correctionWords } from "../print-paper.ts";
import type { Tile } from "../tiling.ts";
import { inkHead } from "./page-head.ts";
import type { PageInk } from "./page-ink.ts";
import type { PageWindow } from "./pdf-pen.ts";
import { barUp } from "./scale-bars.ts";

const printWords = "Print at 100 %, not 'fit to page'.";

/** The window of a tile on its paper. */
export function windowOf(tile: Tile, sheet: CommonSheet): PageWindow {
  return {
    xMm: tile.xMm,
    yMm: tile.yMm,
    widthMm: sheet.grid.windowWidthMm,
    heightMm: tile.heightMm,
    leftOnPaperMm: marginMm + leftStripMm,
    bottomOnPaperMm: marginMm,
  };
}

/** What is printed round the window of a page. */
export interface Frame {
  readonly title: string;
  readonly size: string;
  readonly page: number;
  readonly pages: number;
  /** Which set the page belongs to, where it belongs to one. */
  readonly set?: string;
  /** What this page shows. */
  readonly shows: string;
}

/** What stands on every page outside its window: number, set, title and size, both scale bars. The size is never cut short. */
export function inkFrame(ink: PageInk, { title, size, page, pages, set = "", shows }: Frame): void {
  const { barMm, correction } = ink.page;
  const sizeWords = size && `size ${size}`;
  inkHead(ink, { title, sizeWords, page, pages, set, shows });
  barUp(ink, marginMm + 4.5, marginMm + 1, barMm);
  ink.text(printWords, marginMm + 8.5, marginMm + 1, 2.5, { angleDeg: 90 });
  const corrected = correctionWords(correction);
  if (corrected) ink.text(`${capital(corrected)}.`, marginMm + 12.5, marginMm + 1, 2.5, { angleDeg: 90 });
  inkSpine(ink, title, sizeWords);
}

/** Room at the top of the left strip for the thumbnail, mm. */
export const thumbnailMm = 60;

/** Title and size along the left strip between bar and thumbnail, the whole title if two lines hold it. */
function inkSpine(ink: PageInk, title: string, sizeWords: string): void {
  const from = marginMm + ink.page.barMm + 8;
  const length = ink.page.heightMm - marginMm - 12 - thumbnailMm - from;
  let x = marginMm + 5;
  const line = (text: string, heightMm: number, bold: boolean) => {
    ink.text(text, x, from, heightMm, { angleDeg: 90, bold });
    x += heightMm + 2.2;
  };
  if (sizeWords) line(sizeWords, [5, 3.5, 2.5, 1.8].find((h) => textWidth(sizeWords, h, true) <= length) ?? 1.8, true);
  const lines = brokenIntoLines(title, 3.5, length);
  lines.slice(0, 2).forEach((text, i) => line(shortenedTo(length, i === 1 ? lines.slice(1).join(" ") : text, 3.5), 3.5, false));
}

/** Pieces of a page in few words: "upper, left; outsole, both". */
export function piecesInWords(pieces: readonly { readonly name: string; readonly side: string }[]): string {
  const sides = new Map<string, string[]>();
  for (const { name, side } of pieces) sides.set(name, [...(sides.get(name) ?? []), side]);
  return [...sides].map(([name, of]) => `${name}, ${new Set(of).size > 1 ? "both" : of[0]!}`).join("; ");
}

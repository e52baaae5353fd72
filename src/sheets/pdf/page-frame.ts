import type { CommonSheet } from "../arrange.ts";
import { brokenIntoLines, shortenedTo, textWidth } from "../lettering.ts";
import { leftStripMm, marginMm, topStripMm, type Paper } from "../paper.ts";
import type { Tile, Tiling } from "../tiling.ts";
import type { PageInk } from "./page-ink.ts";
import type { PageWindow } from "./pdf-pen.ts";
import { barAcross, barMm, barUp } from "./scale-bars.ts";

const printWords = "Print at 100 %, not 'fit to page'.";

/** The window of a tile on its paper. */
export function windowOf(tile: Tile, sheet: CommonSheet): PageWindow {
  return {
    xMm: tile.xMm,
    yMm: tile.yMm,
    widthMm: sheet.grid.windowWidthMm,
    heightMm: sheet.grid.windowHeightMm,
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
  /** What this page shows. */
  readonly shows: string;
}

/** What stands on every page outside its window: number, title and size, both scale bars. The size is never cut short. */
export function inkFrame(ink: PageInk, paper: Paper, { title, size, page, pages, shows }: Frame): void {
  const top = paper.heightMm - marginMm;
  const number = `Page ${page} of ${pages}`;
  ink.text(number, marginMm, top - 4.5, 4, { bold: true });
  const after = marginMm + textWidth(number, 4, true) + 4;
  const width = paper.widthMm - marginMm - barMm - 4 - after;
  const sizeWords = size && `size ${size}`;
  const rest = width - (sizeWords && title ? textWidth(`${sizeWords}, `, 2.5) : 0);
  const short = rest > 12 || !sizeWords ? shortenedTo(rest, title, 2.5) : "";
  ink.text([sizeWords, short].filter(Boolean).join(", "), after, top - 2.5, 2.5);
  ink.text(shortenedTo(width, shows, 2.5), after, top - 6.5, 2.5);
  barAcross(ink, paper.widthMm - marginMm - barMm, top - topStripMm + 1.5);
  barUp(ink, marginMm + 4.5, marginMm + 1);
  ink.text(printWords, marginMm + 8.5, marginMm + 1, 2.5, { angleDeg: 90 });
  inkSpine(ink, paper, title, sizeWords);
}

/** Room at the top of the left strip for the thumbnail, mm. */
export const thumbnailMm = 60;

/** Title and size along the left strip between bar and thumbnail, the whole title if two lines hold it. */
function inkSpine(ink: PageInk, paper: Paper, title: string, sizeWords: string): void {
  const from = marginMm + barMm + 8;
  const length = paper.heightMm - marginMm - 12 - thumbnailMm - from;
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

/**
 * The pages at a small scale, this one bold; upper left corner at (x, y), at most `width × height` mm. On a page of the pattern
 * only those that are joined with it, so that the numbers can be read.
 */
export function inkThumbnail(ink: PageInk, sheet: CommonSheet, tiling: Tiling, page: number | undefined, covers: number, x: number, y: number, width: number, height: number): void {
  const { windowWidthMm: w, windowHeightMm: h } = sheet.grid;
  const group = page === undefined ? undefined : tiling.tiles[page]!.group;
  const shown = tiling.tiles.map((t, i) => ({ t, i })).filter(({ t }) => group === undefined || t.group === group);
  const x0 = Math.min(...shown.map(({ t }) => t.xMm)), x1 = Math.max(...shown.map(({ t }) => t.xMm + w));
  const y0 = Math.min(...shown.map(({ t }) => t.yMm)), y1 = Math.max(...shown.map(({ t }) => t.yMm + h));
  const scale = Math.min(width / Math.max(x1 - x0, 2 * w), height / (y1 - y0));
  const left = x - scale * x0, low = y - scale * y1;
  const set = (xy: ArrayLike<number>, every: number): number[] => {
    const out: number[] = [];
    for (let i = 0; i < xy.length; i += 2 * every) out.push(left + scale * xy[i]!, low + scale * xy[i + 1]!);
    return out;
  };
  ink.style(0.18);
  sheet.placed.forEach(({ outline }, p) => {
    if (shown.some(({ i }) => tiling.tilesOfPiece[p]!.includes(i))) ink.stroke(set(outline, Math.max(1, Math.floor(outline.length / 2 / 60))), true);
  });
  for (const { t, i } of shown) {
    ink.style(i === page ? 0.5 : 0.18);
    ink.box(left + scale * t.xMm, low + scale * t.yMm, scale * w, scale * h);
    const label = String(i + 1 + covers);
    // Where a page is too small for figures that can be read, none.
    const size = [3.5, 2.5, 1.8].find((mm) => textWidth(label, mm, true) < 0.6 * scale * w);
    if (size) ink.text(label, left + scale * (t.xMm + w) - textWidth(label, size, true) - 0.6, low + scale * t.yMm + 0.8, size, { bold: true });
  }
}

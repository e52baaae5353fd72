import type { CommonSheet } from "../arrange.ts";
import { shortenedTo, textWidth } from "../lettering.ts";
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

/** What stands on every page outside its window: number, title, both scale bars. `onPage` says which pieces it shows. */
export function inkFrame(ink: PageInk, paper: Paper, page: number, pages: number, heading: string, onPage: string): void {
  const top = paper.heightMm - marginMm;
  const number = `Page ${page} of ${pages}`;
  ink.text(number, marginMm, top - 4.5, 4, { bold: true });
  const after = marginMm + textWidth(number, 4, true) + 4;
  ink.text(shortenedTo(paper.widthMm - marginMm - barMm - 4 - after, heading, 2.5), after, top - 2.5, 2.5);
  ink.text(shortenedTo(paper.widthMm - marginMm - barMm - 4 - after, onPage, 2.5), after, top - 6.5, 2.5);
  barAcross(ink, paper.widthMm - marginMm - barMm, top - topStripMm + 1.5);
  barUp(ink, marginMm + 4.5, marginMm + 1);
  ink.text(printWords, marginMm + 8.5, marginMm + 1, 2.5, { angleDeg: 90 });
}

/** The tiling at a small scale with this page filled; upper left corner at (x, y), at most `width × height` mm. */
export function inkThumbnail(ink: PageInk, sheet: CommonSheet, tiling: Tiling, page: number | undefined, covers: number, x: number, y: number, width: number, height: number): void {
  const scale = Math.min(width / sheet.widthMm, height / sheet.heightMm);
  const bottom = y - scale * sheet.heightMm;
  const set = (xy: ArrayLike<number>, every: number): number[] => {
    const out: number[] = [];
    for (let i = 0; i < xy.length; i += 2 * every) out.push(x + scale * xy[i]!, bottom + scale * xy[i + 1]!);
    return out;
  };
  ink.style(0.18);
  for (const p of sheet.placed) ink.stroke(set(p.outline, Math.max(1, Math.floor(p.outline.length / 2 / 60))), true);
  const { windowWidthMm: w, windowHeightMm: h } = sheet.grid;
  tiling.tiles.forEach((t, i) => {
    const left = x + scale * t.xMm, low = bottom + scale * t.yMm;
    ink.style(i === page ? 0.5 : 0.18);
    ink.box(left, low, scale * w, scale * h);
    const label = String(i + 1 + covers);
    const size = Math.min(2.5, scale * w * 0.4);
    if (size >= 1.2) ink.text(label, left + scale * w - textWidth(label, size, true) - 0.5, low + 0.6, size, { bold: true });
  });
}

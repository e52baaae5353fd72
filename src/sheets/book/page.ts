import { capital } from "#base/listed.ts";
import { shortenedTo } from "../lettering.ts";
import { marginMm } from "../paper.ts";
import { barAcross, barUp } from "../pdf/scale-bars.ts";
import { PageInk } from "../pdf/page-ink.ts";
import { correctionWords, type PageSize } from "../print-paper.ts";
import { inkBlock } from "./block.ts";
import type { BookPage, BookRoom } from "./flow.ts";
import { brokenAt, printedWidth } from "./measure.ts";

/** Blank beside the left margin, for holes to file it or hang it by; the upright bar stands in it, mm. */
const bindingMm = 12;
const headMm = 15;
/** Room for the bar across below what stands on a page, mm. */
const footMm = 9;
/** Lines no longer than the eye can follow, and no narrower than a table needs; mm. */
const mostWideMm = 270;
const leastWideMm = 165;
const gutterMm = 10;

/** Where everything but head and bars stands on a page: in one column, on broad paper in more. */
export function bookRoom({ widthMm, heightMm }: PageSize): BookRoom {
  const left = marginMm + bindingMm, whole = widthMm - marginMm - left;
  const columns = Math.max(1, Math.floor((whole + gutterMm) / (leastWideMm + gutterMm)));
  const width = Math.min(mostWideMm, (whole - (columns - 1) * gutterMm) / columns);
  return { left, width, columns, step: width + gutterMm, top: heightMm - marginMm - headMm, low: marginMm + footMm, barlessLow: marginMm };
}

/** What stands at the head of every page. */
export interface BookHead {
  readonly title: string;
  readonly size: string;
  readonly page: number;
  readonly pages: number;
}

/** One page: chapter and page number readable at arm's length, whose shoe it is, the blocks, and the bars where something is drawn to scale. */
export function inkBookPage(size: PageSize, room: BookRoom, page: BookPage, head: BookHead): PageInk {
  const ink = new PageInk(size);
  inkHeadOf(ink, room, page, head);
  for (const { block, x, top } of page.placed) inkBlock(ink, block, x, top, room.width, top === room.top);
  if (page.placed.some(({ block }) => block.drawn)) inkBars(ink, room);
  return ink;
}

function inkHeadOf(ink: PageInk, { left }: BookRoom, { title, more }: BookPage, head: BookHead): void {
  const top = ink.page.heightMm - marginMm, right = ink.page.widthMm - marginMm;
  const number = `Page ${head.page} of ${head.pages}`;
  const numbered = printedWidth(number, 4, true);
  ink.text(number, right - numbered, top - 4.5, 4, { bold: true });
  ink.text(shortenedTo(right - numbered - 6 - left, more ? `${title}, more` : title, 5, true), left, top - 5.2, 5, { bold: true });
  const sized = head.size && `size ${head.size}`;
  // The size is never cut short.
  const sizedHigh = [2.5, 2].find((h) => printedWidth(sized, h, true) <= right - left) ?? 1.2;
  const sizedMm = printedWidth(sized, sizedHigh, true);
  if (sized) ink.text(sized, right - sizedMm, top - 10.4, sizedHigh, { bold: true });
  if (right - sizedMm - 4 - left > 20) ink.text(shortenedTo(0.98 * (right - sizedMm - 4 - left), head.title, 2.5), left, top - 10.4, 2.5);
  ink.style(0.5);
  ink.line(left, top - 12.2, right, top - 12.2);
}

function inkBars(ink: PageInk, { left }: BookRoom): void {
  const { barMm, widthMm, correction } = ink.page;
  const right = widthMm - marginMm;
  barAcross(ink, right - barMm, marginMm + 0.5, barMm);
  barUp(ink, marginMm + 5, marginMm + 1, barMm);
  const corrected = correctionWords(correction), room = right - barMm - 4 - left;
  const told = ["Print at 100 %.", ...(corrected ? [`${capital(corrected)}.`] : [])];
  const broken = told.flatMap((words) => brokenAt(words, 2, room));
  broken.forEach((words, i) => ink.text(words, left, marginMm + 0.8 + 2.8 * (broken.length - 1 - i), 2));
}

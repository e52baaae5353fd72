import { brokenIntoLines, shortenedTo, textWidth } from "../lettering.ts";
import { draftsInWords } from "../lasting-key.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import { strokeStyles, type StrokeKind } from "../pen.ts";
import type { PageSize } from "../print-paper.ts";
import type { Cover } from "./cover-input.ts";
import { markLines, longMarkMm } from "./joint-mark.ts";
import type { PageInk } from "./page-ink.ts";
import { inkMap } from "./page-map.ts";

const steps = (barMm: number): readonly string[] => [
  `Print every page at 100 % (actual size), not 'fit to page'. Lay a rule on both bars of each page: they must measure ${barMm} mm, at most half a millimetre off. If they do not, do not cut: set the printer right, or enter what both bars read and print again.`,
  "Join only pages that have joining marks. Cut a page along its dashed line, left or top, and lay it on its neighbour so that marks with the same number meet: the slanting lines cross on the joint, the long line runs straight on. A broken cross means too far apart or too close. Where two ticks meet instead of the long line, the page is shifted, a quarter of a millimetre for each tick. When both ends are right, tape.",
  "Glue to card and cut on the full outer line, on a mat, with the knife moving away from your fingers. Upper and lining are seen from outside: the upper shows its grain, the lining its flesh side, for its grain lies against the foot. The bottom is seen from above. Left is the exact mirror of right.",
];

/** Height of the legend below the index, mm. */
export const legendMm = 13;
/** The map and the sample of the marks beside the steps: width and, with the heading, height. */
const thumbMm = 46;
const besideMm = 79;
const mostWideMm = 150;
/** From the frame to the heading, and from there to the first step, mm. */
const headMm = 6;
const stepsMm = 14.5;
const letterMm = 2.5;
const lineMm = 4.1;
const betweenMm = 1.4;

/** The steps broken into lines. What the numbers on the margin mean comes last and takes the whole width, below the map. */
function brokenSteps({ sheet }: Cover, page: PageSize): { readonly beside: readonly (readonly string[])[]; readonly below: readonly (readonly string[])[] } {
  const drafts = draftsInWords(sheet.placed.map((p) => p.piece));
  const whole = page.widthMm - 2 * marginMm - leftStripMm;
  return {
    beside: steps(page.barMm).map((step) => brokenIntoLines(step, letterMm, besideWidth(page) - 8)),
    below: drafts ? [brokenIntoLines(drafts, letterMm, whole - 6)] : [],
  };
}

const besideWidth = (page: PageSize): number => Math.min(mostWideMm, page.widthMm - 2 * marginMm - leftStripMm - thumbMm - 4);
const highOf = (broken: readonly (readonly string[])[]): number => broken.reduce((mm, lines) => mm + lineMm * lines.length + betweenMm, 0);

/** Height of the instructions above the index, mm. */
export function howToHeight(cover: Cover, page: PageSize): number {
  const { beside, below } = brokenSteps(cover, page);
  return headMm + Math.max(besideMm, stepsMm + highOf(beside)) + highOf(below) + 2;
}

/** Steps, map of all pages and a sample of the marks. */
export function inkHowTo(ink: PageInk, cover: Cover, covers: number): void {
  const { heading, title, size = "", sheet, tiling } = cover;
  const top = ink.page.heightMm - marginMm - topStripMm - headMm;
  const left = marginMm + leftStripMm;
  const width = besideWidth(ink.page);
  const sizeWords = size && `size ${size}`;
  // The size stands alone in the line below where both do not fit in one.
  const oneLine = textWidth(heading, 5, true) <= width;
  ink.text(oneLine ? heading : shortenedTo(width, title, 5, true), left, top - (oneLine ? 5 : 4), 5, { bold: true });
  if (!oneLine && sizeWords) ink.text(sizeWords, left, top - 9.3, 3.5, { bold: true });
  const { beside, below } = brokenSteps(cover, ink.page);
  inkSteps(ink, beside, 1, left, top - stepsMm);
  inkSteps(ink, below, 1 + beside.length, left, top - Math.max(besideMm, stepsMm + highOf(beside)));
  const right = ink.page.widthMm - marginMm;
  const mapLeft = Math.min(left + width + 4, right - thumbMm);
  inkMap(ink, sheet, tiling, covers, { x: mapLeft, y: top, width: right - mapLeft, height: 49 });
  inkSample(ink, mapLeft + longMarkMm + 1, top - 57, [0, 0], "right");
  inkSample(ink, mapLeft + longMarkMm + 1, top - 69, [0.5, 0.5], "wrong");
}

/** Numbered steps one below the other, the first line of the first at (left, top). */
function inkSteps(ink: PageInk, broken: readonly (readonly string[])[], first: number, left: number, top: number): void {
  let y = top;
  broken.forEach((lines, i) => {
    ink.text(String(first + i), left, y, 3.5, { bold: true });
    for (const line of lines) {
      ink.text(line, left + 6, y, letterMm);
      y -= lineMm;
    }
    y -= betweenMm;
  });
}

/** A joined mark, its lower page lying `apart` mm too low and `along` to the right. */
function inkSample(ink: PageInk, x: number, y: number, [along, apart]: readonly [number, number], word: string): void {
  const draw = (a: readonly [number, number], b: readonly [number, number], dx = 0, dy = 0) => ink.line(x + a[0] + dx, y + a[1] + dy, x + b[0] + dx, y + b[1] + dy);
  ink.style(0.18);
  for (const [a, b] of markLines(longMarkMm, 1)) draw(a, b);
  for (const [a, b] of markLines(longMarkMm, -1)) {
    // Through the gap more of the upper page is seen.
    draw(a, [a[0] - ((b[0] - a[0]) * apart) / b[1], a[1] - apart]);
    draw(a, b, along, -apart);
  }
  draw([-longMarkMm - 1, -apart], [longMarkMm + 1, -apart]);
  ink.text(word, x + longMarkMm + 3, y - 1.2, 2.5);
}

const legend: readonly (readonly [StrokeKind, string])[] = [
  ["cut", "cut: full"],
  ["net", "net line: dashes"],
  ["stitch", "stitch: dots"],
  ["fold", "fold: dash, two dots"],
  ["centre", "centre: dash, dot"],
  ["joint", "joint line: thin"],
  ["skive", "skive: short dashes"],
  ["place", "place: dash, short dash"],
];

/** Height of the legend's letters, mm. */
const legendLetterMm = 2.2;
const columnsOfLegend = 4;
const sampleMm = { gap: 1, after: 3, most: 16 } as const;

/** Two rows of four, each column as wide as its words, each sample as long as there is room for, to show its dashes. */
export function inkLegend(ink: PageInk): void {
  const left = marginMm + leftStripMm;
  const words = Array.from({ length: columnsOfLegend }, (_, c) => Math.max(...legend.filter((_, i) => i % columnsOfLegend === c).map(([, told]) => textWidth(told, legendLetterMm))));
  const room = ink.page.widthMm - marginMm - left - 11 + sampleMm.after - words.reduce((a, b) => a + b, 0);
  const long = Math.min(sampleMm.most, room / columnsOfLegend - sampleMm.gap - sampleMm.after);
  ink.text("Lines:", left, marginMm + 6.8, 2.5, { bold: true });
  legend.forEach(([kind, told], i) => {
    const column = i % columnsOfLegend;
    const before = words.slice(0, column).reduce((a, b) => a + b, 0);
    const x = left + 11 + before + column * (long + sampleMm.gap + sampleMm.after), y = marginMm + (i < columnsOfLegend ? 8 : 3);
    ink.style(strokeStyles[kind].widthMm, strokeStyles[kind].dashMm);
    ink.line(x, y, x + long, y);
    ink.text(told, x + long + sampleMm.gap, y - 1.1, legendLetterMm);
  });
}

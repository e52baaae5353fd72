import { brokenIntoLines, shortenedTo, textWidth } from "../lettering.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import { strokeStyles, type StrokeKind } from "../pen.ts";
import type { Cover } from "./cover-input.ts";
import { markLines, longMarkMm } from "./joint-mark.ts";
import type { PageInk } from "./page-ink.ts";
import { inkMap } from "./page-map.ts";

const steps = (barMm: number): readonly string[] => [
  `Print every page at 100 % (actual size), not 'fit to page'. Lay a rule on both bars of each page: they must measure ${barMm} mm, at most half a millimetre off. If they do not, do not cut: set the printer right, or enter what both bars read and print again.`,
  "Join only pages that have joining marks. Cut a page along its dashed line, left or top, and lay it on its neighbour so that marks with the same number meet: the slanting lines cross on the joint, the long line runs straight on. A broken cross means too far apart or too close. Where two ticks meet instead of the long line, the page is shifted, a quarter of a millimetre for each tick. When both ends are right, tape.",
  "Glue to card and cut on the full outer line, on a mat, with the knife moving away from your fingers. Upper and lining are seen from outside: the upper shows its grain, the lining its flesh side, for its grain lies against the foot. The bottom is seen from above. Left is the exact mirror of right.",
];

/** Height of the instructions above the index and of the legend below it, mm. */
export const howToMm = 85;
export const legendMm = 13;
const thumbMm = 46;
const mostWideMm = 150;

/** Steps, map of all pages and a sample of the marks. */
export function inkHowTo(ink: PageInk, { heading, title, size = "", sheet, tiling }: Cover, covers: number): void {
  const top = ink.page.heightMm - marginMm - topStripMm - 6;
  const left = marginMm + leftStripMm;
  const width = Math.min(mostWideMm, ink.page.widthMm - 2 * marginMm - leftStripMm - thumbMm - 4);
  const sizeWords = size && `size ${size}`;
  // The size stands alone in the line below where both do not fit in one.
  const oneLine = textWidth(heading, 5, true) <= width;
  ink.text(oneLine ? heading : shortenedTo(width, title, 5, true), left, top - (oneLine ? 5 : 4), 5, { bold: true });
  if (!oneLine && sizeWords) ink.text(sizeWords, left, top - 9.3, 3.5, { bold: true });
  let y = top - 14.5;
  steps(ink.page.barMm).forEach((step, i) => {
    ink.text(String(i + 1), left, y, 3.5, { bold: true });
    for (const line of brokenIntoLines(step, 2.5, width - 8)) {
      ink.text(line, left + 6, y, 2.5);
      y -= 4.1;
    }
    y -= 1.4;
  });
  const right = ink.page.widthMm - marginMm;
  const mapLeft = Math.min(left + width + 4, right - thumbMm);
  inkMap(ink, sheet, tiling, covers, { x: mapLeft, y: top, width: right - mapLeft, height: 49 });
  inkSample(ink, mapLeft + longMarkMm + 1, top - 57, [0, 0], "right");
  inkSample(ink, mapLeft + longMarkMm + 1, top - 69, [0.5, 0.5], "wrong");
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

/** Two rows of four, each sample long enough to show its dashes. */
export function inkLegend(ink: PageInk): void {
  const left = marginMm + leftStripMm;
  const step = Math.min(52, (ink.page.widthMm - marginMm - left - 11) / 4);
  const long = Math.min(16, step - 31);
  ink.text("Lines:", left, marginMm + 6.8, 2.5, { bold: true });
  legend.forEach(([kind, words], i) => {
    const x = left + 11 + step * (i % 4), y = marginMm + (i < 4 ? 8 : 3);
    ink.style(strokeStyles[kind].widthMm, strokeStyles[kind].dashMm);
    ink.line(x, y, x + long, y);
    ink.text(words, x + long + 1, y - 1.1, 2.2);
  });
}

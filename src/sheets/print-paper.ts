import { trueBarMm, type SheetChoices } from "./choices.ts";
import { framedMm, papers, type Paper, type PaperName } from "./paper.ts";

/** What a true 100 mm comes out as on the maker's printer, mm. */
export interface Correction {
  readonly acrossMm: number;
  readonly upMm: number;
}
const noCorrection: Correction = { acrossMm: trueBarMm, upMm: trueBarMm };

/**
 * The paper that a pattern is laid out on. All sizes are as they come out of the maker's printer, so that layout and drawing
 * know of no correction: only the file is drawn larger or smaller, by {@link PageSize}.
 */
export interface PrintPaper {
  readonly name: PaperName;
  readonly widthMm: number;
  /** Of a roll: the longest page. */
  readonly heightMm: number;
  /** As it lies in the printer; of a roll the width alone counts. */
  readonly inPrinter: { readonly widthMm: number; readonly heightMm: number };
  readonly correction: Correction;
  /** Length of both scale bars, as they must measure. */
  readonly barMm: number;
}

/** Longest page from a roll, mm: readers of the format stop at 14 400 points, 5080 mm (from memory). */
const longestMm = 4800;
/** Shortest page from a roll, mm: holds the upright bar, the thumbnail and room for the title. */
const shortestMm = 330;
/** The least height of its window, mm. */
export const leastRolledMm = shortestMm - framedMm;
/** Paper at least this wide has bars of 200 mm, which show half the error. */
const wideMm = 280;

export function printPaper({ paper, rollWidthMm, barAcrossMm, barUpMm }: SheetChoices): PrintPaper {
  const inPrinter = paper === "roll" ? { widthMm: rollWidthMm, heightMm: longestMm } : papers[paper];
  return {
    name: paper,
    // A printer that draws too small leaves a rim blank. One that draws too large must not be given more than the paper holds.
    widthMm: inPrinter.widthMm * Math.min(1, barAcrossMm / trueBarMm),
    heightMm: inPrinter.heightMm * Math.min(1, barUpMm / trueBarMm),
    inPrinter,
    correction: { acrossMm: barAcrossMm, upMm: barUpMm },
    barMm: inPrinter.widthMm >= wideMm ? 200 : 100,
  };
}

/** One page: its size as drawn on, and the same in the file with what takes the one to the other: file = drawn · stretch + shift, mm. */
export interface PageSize {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly fileWidthMm: number;
  readonly fileHeightMm: number;
  readonly stretch: readonly [number, number];
  readonly shift: readonly [number, number];
  readonly correction: Correction;
  readonly barMm: number;
}

/** A page of the paper; from a roll one with a window of `windowMm`. */
export function pageSize(paper: PrintPaper, windowMm?: number): PageSize {
  const { correction, inPrinter, barMm, widthMm } = paper;
  const stretch = [trueBarMm / correction.acrossMm, trueBarMm / correction.upMm] as const;
  const rolled = paper.name === "roll" ? Math.min(paper.heightMm, Math.max(shortestMm, (windowMm ?? 0) + framedMm)) : undefined;
  const heightMm = rolled ?? paper.heightMm;
  const fileWidthMm = inPrinter.widthMm, fileHeightMm = rolled ? rolled * stretch[1] : inPrinter.heightMm;
  // Printed too large, the page is kept in the middle of the file's, so that as much is cut off on either side.
  const shift = [(fileWidthMm - widthMm * stretch[0]) / 2, (fileHeightMm - heightMm * stretch[1]) / 2] as const;
  return { widthMm, heightMm, fileWidthMm, fileHeightMm, stretch, shift, correction, barMm };
}

/** The page of a paper from a printer that is taken to be true. */
export function truePage({ widthMm, heightMm }: Paper): PageSize {
  return { widthMm, heightMm, fileWidthMm: widthMm, fileHeightMm: heightMm, stretch: [1, 1], shift: [0, 0], correction: noCorrection, barMm: trueBarMm };
}

/** Points of a file x0 y0 …, mm, as they come out of the maker's printer on the page's lower left corner. */
export const asPrinted = (xy: Float64Array, { stretch, shift }: PageSize): Float64Array => xy.map((v, i) => (v - shift[i % 2]!) / stretch[i % 2]!);

/** "corrected for a printer that prints 100 as 99.2 across and 99.7 up", or nothing for a true one. */
export function correctionWords({ acrossMm, upMm }: Correction): string {
  if (acrossMm === trueBarMm && upMm === trueBarMm) return "";
  const told = (v: number) => String(Math.round(v * 100) / 100);
  return `corrected for a printer that prints 100 as ${told(acrossMm)} across and ${told(upMm)} up`;
}

/** The page of the marks sheet: it is never wider than a broad desk needs, and cut from a roll as long as A4 is high. */
export function marksPage(paper: PrintPaper): PageSize {
  if (paper.name !== "roll") return pageSize(paper);
  const page = pageSize(paper, papers.A4.heightMm);
  return { ...page, widthMm: Math.min(page.widthMm, papers.A3.widthMm) };
}

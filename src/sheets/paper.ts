/** Paper as it lies in the printer, portrait, mm. ISO 216 A4, A3, A2; North American Letter 8½ × 11 in; or from a roll, each page as long as it needs. */
export const paperNames = ["A4", "Letter", "A3", "A2", "roll"] as const;
export type PaperName = (typeof paperNames)[number];
export type CutPaperName = Exclude<PaperName, "roll">;
export interface Paper {
  readonly name: CutPaperName;
  readonly widthMm: number;
  readonly heightMm: number;
}
export const papers: Readonly<Record<CutPaperName, Paper>> = {
  A4: { name: "A4", widthMm: 210, heightMm: 297 },
  Letter: { name: "Letter", widthMm: 215.9, heightMm: 279.4 },
  A3: { name: "A3", widthMm: 297, heightMm: 420 },
  A2: { name: "A2", widthMm: 420, heightMm: 594 },
};

/** No common printer needs more than this blank at the edges. Common practice, no source. */
export const marginMm = 10;
/** Width of the strip that two neighbouring pages both show; the joint runs along its middle. */
export const overlapMm = 10;
/** Strips inside the margins for the scale bars, the page number and the thumbnail; cut away when pages are joined. */
export const leftStripMm = 20;
export const topStripMm = 8;
/** What margins and strips take of a page's height, mm. */
export const framedMm = 2 * marginMm + topStripMm;

/** How a large sheet is cut into pages of one window each: `columns × rows`, row 0 at the top. */
export interface Grid {
  readonly windowWidthMm: number;
  readonly windowHeightMm: number;
  readonly overlapMm: number;
  /** Pages from a roll: a window is no higher than what it shows needs, and `windowHeightMm` at most. */
  readonly roll?: boolean;
}

/** The window of a page in which the pattern is printed, and so the grid of pages of that paper. */
export function gridOf(paper: { readonly widthMm: number; readonly heightMm: number; readonly name: PaperName }): Grid {
  return {
    windowWidthMm: paper.widthMm - 2 * marginMm - leftStripMm,
    windowHeightMm: paper.heightMm - framedMm,
    overlapMm,
    ...(paper.name === "roll" && { roll: true }),
  };
}

/** Pages needed in a row to show `lengthMm`, each showing `windowMm`, neighbours sharing `overlap`. At least 1. */
export function pagesAlong(lengthMm: number, windowMm: number, overlap: number): number {
  // A length that ends exactly at a border needs no further page; the hair guards against rounding only.
  return Math.max(1, Math.ceil((lengthMm - overlap) / (windowMm - overlap) - 1e-9));
}

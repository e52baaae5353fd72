import { layers, type Layer } from "./pen.ts";
import type { PaperName } from "./paper.ts";

/** Which patterns are printed: net cards to check on the last, cutting patterns with all allowances, or both. */
export const sheetSets = ["both", "net", "cutting"] as const;
export type SheetSet = (typeof sheetSets)[number];

/** What the maker decides about the printed sheets. */
export interface SheetChoices {
  readonly paper: PaperName;
  /** Width of the paper on a roll, mm; counts only for paper from a roll. */
  readonly rollWidthMm: number;
  readonly sets: SheetSet;
  /** Every piece begins on a page of its own. */
  readonly onePage: boolean;
  /** What the maker's rule reads on the printed bars, across and up the page, mm; without a reading the printer is taken to be true. */
  readonly barAcrossMm: number;
  readonly barUpMm: number;
  /** What SVG and DXF hold. */
  readonly layers: readonly Layer[];
}

/** Length of the printed bars, mm, and what may be read on one at all. */
export const trueBarMm = 100;
export const mostBarOff = { least: 95, most: 105 } as const;

/** How wide paper on a roll may be, mm. */
export const rollWidths = { least: 200, most: 3000 } as const;

export const usualSheets: SheetChoices = { paper: "A4", rollWidthMm: 610, sets: "both", onePage: false, barAcrossMm: trueBarMm, barUpMm: trueBarMm, layers };

export const sheetChoicesFrom = (own: Partial<SheetChoices> = {}): SheetChoices => ({ ...usualSheets, ...own });

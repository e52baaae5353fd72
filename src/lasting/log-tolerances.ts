import { endNames, type EndName } from "./log.ts";

/** What of a pair is held to a tolerance. */
export const dimensions = [...endNames, "soleMarginMm", "heelHeightMm"] as const;
export type Dimension = (typeof dimensions)[number];

/** How far two shoes may be apart, and each from what was asked, mm. */
export interface Tolerance {
  readonly mm: number;
  readonly source: string;
}

const factory = "A national factory rule of 2014 for shoes";
const view = "common practice, no source; a shoemaker's view: 1 mm is seen or felt at the topline, 2 mm make the heel slip.";

/** Between left and right. The same numbers serve each shoe against what was asked; that is our own choice. */
export const tolerances: Readonly<Record<EndName | "soleMarginMm" | "heelHeightMm", Tolerance>> = {
  throatDepthMm: { mm: 1, source: `${factory}: vamp opening at most 1.0 to 1.5 mm apart.` },
  backHeightMm: { mm: 1, source: `${factory}: back height of low-cut shoes at most 1.0 mm apart.` },
  innerHeightMm: { mm: 1.5, source: `Side heights: ${view}` },
  outerHeightMm: { mm: 1.5, source: `Side heights: ${view}` },
  soleMarginMm: { mm: 0.5, source: `Sole margin: common practice, no source.` },
  heelHeightMm: { mm: 0.5, source: `Heel height: common practice, no source.` },
};

/** Less margin than this is left to be cemented, and for a hand to draft, mm (common practice, no source). */
export const leastMarginMm = 8;

/** Margin left at like drafts of both shoes: our own, from memory. More than this says that the upper sits turned or was pulled otherwise. */
export const marginTolerance: Tolerance = { mm: 2, source: "Margins at like drafts: our own, from memory." };

import type { Stitched } from "#pieces/stitching.ts";
import { digits, mm } from "./words.ts";

/** Stitches on a centimetre by what a seam is for (common practice, no source: 5 to 6 along the topline, 4 to 5 in closed seams). */
const perCm: Readonly<Record<Stitched["use"], number>> = { closing: 4.5, lapped: 5, lining: 4.5, topline: 5.5, trimming: 4 };

/** "5.5 stitches to the centimetre". */
export const stitchesWords = (use: Stitched["use"]): string => `${digits(perCm[use])} stitches to the centimetre`;

/** "two rows 1.5 mm from the edge". */
export const insideEdge = (stitchInMm: number): string => `${mm(stitchInMm)} from the edge`;

import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** The lining against the upper; mm. */
export interface LiningSettings {
  readonly liningThicknessMm: number;
  readonly liningTrimMm: number;
  readonly liningBackInTopMm: number;
  readonly liningBackInMiddleMm: number;
  readonly liningBackInFeatherMm: number;
  readonly liningToeInMm: number;
  readonly liningLastingShorterMm: number;
}

export const liningRules: Readonly<Record<keyof LiningSettings, Rule>> = {
  liningThicknessMm: mm("Thickness of the lining", 0.8, 0.4, 1.5, 0.1,
    "Measured on your leather. It lies inside the upper, so it must be cut smaller than the upper.", practice),
  liningTrimMm: mm("Lining left above the topline", 3, 0, 8, 0.5,
    "Stands above the edge while it is stitched and is trimmed off afterwards.", "trade notes on the trim allowance; 3 mm is common practice"),
  liningBackInTopMm: mm("Lining taken in at the back, topline", 2.5, 0, 6, 0.5,
    "The lining runs inside the upper and the stiffener, on a shorter way round the heel. A lining cut too big makes folds.", practice),
  liningBackInMiddleMm: mm("Lining taken in at the back, middle", 3.5, 0, 6, 0.5,
    "Half-way down the heel curve the stiffener is thickest and the way inside it shortest.", practice),
  liningBackInFeatherMm: mm("Lining taken in at the back, feather", 4.5, 0, 8, 0.5,
    "At the seat the heel is fullest, and the lining is drawn under as well.", practice),
  liningToeInMm: mm("Lining taken in at the toe", 2.5, 0, 5, 0.5,
    "The lining is lasted first and lies under the toe puff, so it needs less length than the upper.", practice),
  liningLastingShorterMm: mm("Lining's lasting margin shorter by", 4, 0, 8, 0.5,
    "The lining is lasted first and trimmed on the insole, so that the margins lie in steps and not in a ridge.", practice),
};

import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** How wide the upper is thinned along its edges, from the cutting edge in; mm. */
export interface UpperSkives {
  /** Beside twice the fold. */
  readonly skiveFoldMoreMm: number;
  readonly skiveLapMm: number;
  readonly skiveRawMm: number;
  readonly skiveSeamMm: number;
  readonly skiveToeMm: number;
}

export const upperSkiveRules: Readonly<Record<keyof UpperSkives, Rule>> = {
  skiveFoldMoreMm: mm("Skive of a fold beyond twice its width", 1.5, 1, 2, 0.5,
    "A fold is thinned over twice its width and a little more, to 0.4 to 0.6 mm, so that it turns evenly and no step shows. An uneven skive is the first cause of cracked folds.",
    `trade notes on edge finishing for the evenness; widths are ${practice}`),
  skiveLapMm: mm("Skive of an under-lap", 9, 6, 12, 0.5,
    "Feathered to 0.6 to 0.7 mm, so that the lap does not show as a ridge. Some must be left, for it holds the stitch.", practice),
  skiveRawMm: mm("Skive of a raw edge that lies over", 3.5, 3, 4, 0.5,
    "Thinned to 0.8 mm on the flesh side, so that it lies down on what is under it.", practice),
  skiveSeamMm: mm("Skive of a closed seam", 5.5, 5, 6, 0.5,
    "Thinned to 0.7 to 0.8 mm, so that the opened seam rubs down flat.", practice),
  skiveToeMm: mm("Skive of the lasting edge at the toe", 13, 12, 15, 0.5,
    "Thinned to 0.8 mm where the pleats lie under the insole's edge, and not beyond: an over-thin forepart wrinkles in lasting.", "notes on upper leather for the warning; the width is common practice, no source"),
};

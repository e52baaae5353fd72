import { inUnit } from "../amounts/units.ts";
import type { Waste } from "../need.ts";

/** Both meanings of one loss: a fifth of what is bought is a quarter on top of the pieces. */
export const wasteOf = (ofBought: number, why: string): Waste => ({ ofBought, onPieces: ofBought / (1 - ofBought), why });

/** What has to be bought so that `net` comes out of it. */
export const grossOf = (net: number, waste: Waste): number => net / (1 - waste.ofBought);

/** Published figures give them as gross to net: 8.5 dm² bought for 6 dm² of pieces. */
export const wasteByRatio = (bought: number, pieces: number, why: string): Waste => wasteOf(1 - pieces / bought, why);

/** Loss on boards and sheets: what is bought for what is cut of it. */
export const boardWaste = wasteByRatio(8.5, 6, "8 to 9 dm² of board are bought for 6 dm² of insoles at EU 37 (common practice, no source).");
export const soleWaste = wasteByRatio(5.15, 3.4, "4.8 to 5.5 dm² of sole leather are bought for 3.4 dm² of soles at EU 37 (common practice, no source).");
export const smallPartsWaste = wasteOf(0.2, "About 20 % are lost where small articles are cut (a dictionary of leather, cutting waste).");
export const sheetWaste = wasteOf(0.15, "2 to 15 % are lost in sheets that are alike all over (a page on cutting loss in making sports shoes); small sheets cut by hand lose the most.");

/**
 * What comes out of a skin: measured by laying shoe pieces of 2.09 dm² on one outline of a hide, as it was and scaled down to 0.30 m²
 * (our own measurement, within 2 points): 0.785 less 0.52 times the root of mean piece over skin.
 */
const best = 0.785, perRoot = 0.52;
/** Mean piece over skin, up to which it was measured, and beyond which the formula is a guess; a share below `least` is never told. */
const measuredTo = 0.07, guessFrom = 0.15;
const least = 0.4;

/** Share of a skin that becomes pieces; areas in mm². */
export const yieldOf = (meanPieceMm2: number, skinMm2: number): number => Math.max(least, best - perRoot * Math.sqrt(meanPieceMm2 / skinMm2));

/** The loss on a skin for pieces of this size, mm². */
export function skinWaste(meanPieceMm2: number, skinMm2: number, { said, called = "skin" }: { readonly said: boolean; readonly called?: string }): Waste {
  const share = yieldOf(meanPieceMm2, skinMm2);
  const skin = `${inUnit(skinMm2, "ft2").toFixed(1)} ft²`;
  const beside = meanPieceMm2 / skinMm2;
  const beyond = beside <= measuredTo ? "" : beside <= guessFrom ? " Your pieces are a little larger beside the skin than those of the trial." : " Your pieces are far larger beside the skin than those of the trial, so take it as a guess and lay the patterns on the skin before you buy.";
  const why = `${(100 * share).toFixed(0)} % of a ${called} of ${skin}${said ? "" : " (usual size, common practice, no source)"} comes out as pieces of ${inUnit(meanPieceMm2, "dm2").toFixed(1)} dm² on average: by our own trial of laying shoe pieces on the outline of a hide, within 2 points.${beyond} Holes, scars and loose parts of your ${called} come on top.`;
  return wasteOf(1 - share, why);
}

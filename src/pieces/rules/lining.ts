import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** The lining against the upper, and where it is put together; mm. */
export interface LiningSettings {
  readonly liningThicknessMm: number;
  readonly liningTrimMm: number;
  readonly liningBackInTopMm: number;
  readonly liningBackInMiddleMm: number;
  readonly liningBackInFeatherMm: number;
  readonly liningToeInMm: number;
  readonly liningLastingShorterMm: number;
  readonly liningJointMm: number;
  readonly liningJointBehindBallMm: number;
  readonly liningLapMm: number;
  readonly liningClearMm: number;
  readonly liningPocketTopMm: number;
  readonly liningPocketWingMm: number;
}

/** The wings of the heel pocket grow with the stick length, all else stays. */
export const liningRules = (stickLengthMm: number): Readonly<Record<keyof LiningSettings, Rule>> => ({ ...fixed, ...pocketRules((share) => Math.round(2 * share * stickLengthMm) / 2) });

const fixed = {
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
  liningJointMm: mm("Vamp lining's joint behind the throat", 30, 15, 70, 0.5,
    "Along the topline. Where a seam of the upper is too near, the joint is moved to the nearest place that is clear of it.", "a lap at the side shows less than a seam in the middle (makers' notes on linings); the place is common practice, no source"),
  liningJointBehindBallMm: mm("Vamp lining's joint behind the ball", 25, 12, 60, 0.5,
    "Along the feather line, from the joint. A ridge at the ball rubs with every step.", practice),
  liningLapMm: mm("Lap of the lining's joints", 7, 6, 8, 0.5,
    "What lies under and is skived and cemented. The rear piece lies on top, so that the toes slide over its edge when the shoe is put on.", "makers' notes on linings: lapped and skived; 6 to 8 mm is common practice"),
  liningClearMm: mm("Lining's joints clear of the upper's seams", 10, 6, 20, 0.5,
    "Two seams over each other make a ridge that shows outside and rubs inside.", "makers' notes on linings: no joint under a seam; 10 mm is common practice"),
} as const;

const pocketRules = (of: (shareOfStick: number) => number) => ({
  liningPocketTopMm: mm("Heel pocket along the topline", of(0.3), of(0.26), of(0.35), 0.5,
    "From the back point, measured on the last. Its front edge leans forward from the topline to the feather line.", "common practice, no source: wings of 30 to 35 % of the stick length"),
  liningPocketWingMm: mm("Heel pocket along the feather line", of(0.35), of(0.3), of(0.38), 0.5,
    "From the seat, measured on the last. It covers the stiffener to its ends, so that the foot feels neither its edge nor a joint over it.", "common practice, no source: wings of 30 to 35 % of the stick length"),
});

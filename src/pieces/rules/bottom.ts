import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** Insole, sole, heel and sock; mm. */
export interface BottomSettings {
  readonly insoleInMm: number;
  /** Under the feather at the toe, beside upper and lining; counts for the outsole alone. */
  readonly toePuffMm: number;
  readonly soleFinishForepartMm: number;
  readonly soleFinishWaistMm: number;
  readonly soleFinishHeelMm: number;
  readonly sockInMm: number;
}

const soleAtToe = "a shoemaking textbook's rule of about 2 mm at the toe; the rest is common practice, no source";

export const bottomRules: Readonly<Record<keyof BottomSettings, Rule>> = {
  insoleInMm: mm("Insole inside the feather line", 0.3, 0, 1, 0.1,
    "Leaves room for cement at the edge; a board that stands out shows through the upper.", practice),
  toePuffMm: mm("Thickness of the toe puff", 0.8, 0, 2, 0.1,
    "Lies between lining and upper at the toe, so the sole must reach that much farther there.", practice),
  soleFinishForepartMm: mm("Sole edge, forepart", 2, 0, 6, 0.5,
    "What is left to trim and finish the edge, and a little to be seen from above.", soleAtToe),
  soleFinishWaistMm: mm("Sole edge, waist", 0.5, 0, 4, 0.5,
    "The waist is kept close so that it looks slim.", soleAtToe),
  soleFinishHeelMm: mm("Sole edge, heel", 1.2, 0, 4, 0.1,
    "What is rasped away when the heel and the sole are levelled together.", soleAtToe),
  sockInMm: mm("Sock inside the insole", 0.7, -1, 3, 0.1,
    "The sock must lie flat inside the shoe; if it touches the upper, its edge curls.", practice),
};

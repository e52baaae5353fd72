import { dustCaution, feetCaution, grindingCaution, heatCaution } from "./caution-body.ts";
import { cementCaution } from "./caution-cement.ts";
import { hammerCaution, knifeCaution, machineCaution, pincersCaution } from "./caution-tools.ts";
import { inkCaution } from "./caution-ink.ts";
import { waterGlueCaution } from "./caution-water.ts";
import type { CautionWords } from "./caution-words.ts";
import type { Caution } from "./caution.ts";
import type { HazardId } from "./hazards.ts";
import { roomWords } from "./room-words.ts";
import type { Step } from "../steps/step.ts";

/** What is said of each hazard. */
export const cautionWords: Readonly<Record<HazardId, CautionWords>> = {
  "solvent cement": cementCaution,
  "water-based glue": waterGlueCaution,
  "ink and dye": inkCaution,
  knife: knifeCaution,
  "sewing machine": machineCaution,
  "hammer and nails": hammerCaution,
  "lasting pincers": pincersCaution,
  heat: heatCaution,
  dust: dustCaution,
  grinding: grindingCaution,
  feet: feetCaution,
};

/**
 * One caution for each hazard that the steps carry, in the order in which they meet it. `cementG`: grams of contact cement bought for one pair;
 * `together`: how many pairs are coated at one time at the bench.
 */
export function cautionsOf(steps: readonly Pick<Step, "id" | "hazards">[], cementG = 0, together = 1): readonly Caution[] {
  const met = [...new Set(steps.flatMap(({ hazards }) => hazards))];
  return met.map((hazard) => ({
    hazard,
    ...cautionWords[hazard],
    ...(hazard === "solvent cement" && cementG > 0 && { room: roomWords({ cementG, pairs: together }) }),
    steps: steps.filter(({ hazards }) => hazards.includes(hazard)).map(({ id }) => id),
  }));
}

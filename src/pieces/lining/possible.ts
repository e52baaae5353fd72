import { refuseBeyond, type Possible } from "../possible.ts";
import { liningRules, type LiningSettings } from "../rules/lining.ts";

/** Beyond these nothing is left of a heel pocket, or it is no longer one, mm (our own limits). */
export const liningPossible: Possible<keyof LiningSettings> = {
  liningBackInTopMm: [0, 20],
  liningBackInMiddleMm: [0, 20],
  liningBackInFeatherMm: [0, 20],
  liningPocketTopMm: [40, 160],
  liningPocketWingMm: [40, 160],
};

/** @throws Refusal at the first number that is none or with which no lining in three can be cut */
export const refuseImpossibleLining = (settings: LiningSettings): void => refuseBeyond(liningPossible, liningRules(250), settings);

import { refuseBeyond, type Possible } from "../possible.ts";
import { bottomRules, type BottomSettings } from "../rules/bottom.ts";

/** Beyond these nothing can be built, mm (our own limits). */
export const bottomPossible: Possible<keyof BottomSettings> = {
  insoleInMm: [0, 8],
  firstBoardMm: [0.5, 6],
  secondBoardMm: [0.5, 6],
  shankMm: [40, 180],
  shankWideMm: [5, 30],
  shankThickMm: [0.3, 3],
  marginLeftMm: [3, 30],
  soleMm: [1, 12],
  splitLiftMm: [0.5, 10],
  splitLiftWideMm: [5, 25],
  liftMm: [1.5, 12],
  topPieceMm: [1.5, 15],
  heelOverMm: [0, 5],
  heelTaperMm: [0, 8],
  breastHollowMm: [0, 12],
  sockInMm: [-1, 8],
  sockRoundMm: [0, 20],
};

/** @throws Refusal at the first number that is none or with which no bottom can be built */
export const refuseImpossibleBottom = (settings: BottomSettings): void => refuseBeyond(bottomPossible, bottomRules(250), settings);

import type { Rule } from "#lines/lines.ts";

/** Allowances and thicknesses of a whole-cut upper with back seam and what goes with it; all mm. */
export interface PieceSettings {
  readonly lastingToeMm: number;
  readonly lastingToeSidesMm: number;
  readonly lastingForepartMm: number;
  readonly lastingOuterWaistMm: number;
  readonly lastingInnerWaistMm: number;
  readonly lastingHeelMm: number;
  readonly toplineFoldMm: number;
  readonly backSeamMm: number;
  readonly upperThicknessMm: number;
  readonly liningThicknessMm: number;
  /** Under the feather at the toe, beside upper and lining; counts for the outsole alone. */
  readonly toePuffMm: number;
  readonly liningTrimMm: number;
  readonly liningBackInTopMm: number;
  readonly liningBackInMiddleMm: number;
  readonly liningBackInFeatherMm: number;
  readonly liningToeInMm: number;
  readonly liningLastingShorterMm: number;
  readonly insoleInMm: number;
  readonly soleFinishForepartMm: number;
  readonly soleFinishWaistMm: number;
  readonly soleFinishHeelMm: number;
  readonly sockInMm: number;
}
export type PieceRules = { readonly [K in keyof PieceSettings]: Rule };

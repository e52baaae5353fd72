import type { Finding } from "#base/findings.ts";
import type { SurfaceCurve } from "#last/last.ts";

/**
 * What the maker decides about the topline. Heights lie above the feather line, measured on the surface as a tape lies;
 * depths along the centre ridge from the toe point. All mm but the two places, which are fractions of the last length from
 * the heel, and the roundness, 0 (pointed) … 1 (broad).
 */
export interface LineSettings {
  readonly throatDepthMm: number;
  readonly backHeightMm: number;
  readonly sideHeightMedialMm: number;
  readonly sideHeightLateralMm: number;
  readonly lowestAtMedial: number;
  readonly lowestAtLateral: number;
  readonly throatRoundness: number;
}

/** A value of construction with its default, range, reason and source. */
export interface Rule {
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: "mm" | "of length" | "share" | "deg";
  readonly name: string;
  readonly why: string;
  readonly source: string;
}
export type LineRules = { readonly [K in keyof LineSettings]: Rule };

/** Height of the topline above the feather line at 25, 50 and 75 % of each flank, mm. */
export interface QuarterHeights {
  readonly medial: readonly [number, number, number];
  readonly lateral: readonly [number, number, number];
}

/** The lines drawn on one last. Both halves of the topline run from the back point to the throat point. */
export interface Lines {
  readonly settings: LineSettings;
  readonly toplineMedial: SurfaceCurve;
  readonly toplineLateral: SurfaceCurve;
  /** From the toe point along the centre ridge to the throat. */
  readonly centre: SurfaceCurve;
  /** From the seat point up the back curve to the back point. */
  readonly back: SurfaceCurve;
  readonly quarterHeights: QuarterHeights;
  readonly findings: readonly Finding[];
}

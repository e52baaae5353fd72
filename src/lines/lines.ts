import type { Finding } from "#base/findings.ts";
import type { Point3, SurfaceCurve } from "#last/last.ts";

/**
 * What the maker decides about the topline. Heights lie above the feather line, measured on the surface as a tape lies;
 * depths along the centre ridge from the toe point. All mm but the two places, which are shares of the length from seat point
 * to toe point along the axis, counted from the heel. The throat radius is that of the line where it crosses the centre.
 */
export interface LineSettings {
  readonly throatDepthMm: number;
  readonly backHeightMm: number;
  readonly sideHeightMedialMm: number;
  readonly sideHeightLateralMm: number;
  readonly lowestAtMedial: number;
  readonly lowestAtLateral: number;
  readonly throatRadiusMm: number;
}

/** A value of construction with its default, range, reason and source. */
export interface Rule {
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: "mm" | "of length" | "share" | "deg" | "N";
  readonly name: string;
  readonly why: string;
  readonly source: string;
}
export type LineRules = { readonly [K in keyof LineSettings]: Rule };

/**
 * A place where the maker checks the topline with a tape: from the seat point `alongFeatherMm` along the feather line to
 * `foot`, then straight up `heightMm` on the surface to the topline at `at`. `share` is the place along the flank, from the
 * seat point (0) to below the throat (1), along the axis.
 */
export interface HeightMark {
  readonly share: number;
  readonly alongFeatherMm: number;
  readonly heightMm: number;
  readonly foot: Point3;
  readonly at: Point3;
}

/** Height marks at 25, 50 and 75 % of each flank. */
export interface QuarterHeights {
  readonly medial: readonly HeightMark[];
  readonly lateral: readonly HeightMark[];
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
  /** The truly lowest place of each half; on a rough or odd last it may lie a little beside the asked one. */
  readonly lowestMedial: HeightMark;
  readonly lowestLateral: HeightMark;
  readonly findings: readonly Finding[];
}

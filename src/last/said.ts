import type { Landmarks, Measures, Point3, Side } from "./last.ts";

/** A landmark that the maker may place herself. */
export type LandmarkName = keyof Landmarks;
/** A measure that she may take with her own tape or callipers. */
export type MeasureName = keyof Measures;

/**
 * What the maker says about a scanned last against what was found on it. Points are told in the scan's own coordinates and unit,
 * so that they stay where she put them however the last is stood up or rescaled.
 */
export interface SaidOfScan {
  readonly side?: Side;
  /** What her own callipers and tape read, mm. Stick length and ball width set the scale; the others are held beside what was found. */
  readonly measured?: Partial<Record<MeasureName, number>>;
  /** Places on the scan which the feather line has to pass through, in any order. */
  readonly featherThrough?: readonly Point3[];
  readonly landmarks?: Partial<Record<LandmarkName, Point3>>;
}

import type { Finding } from "#base/findings.ts";
import type { Leather, StripWay } from "./leather.ts";
import type { Likeness } from "./likeness.ts";
import type { Banded, StripCurve } from "./strip-curves.ts";

/** One reading beside what the fitted leather gives there. */
export interface FittedReading {
  /** The strip and the reading on it, as they were said, counted from 0. */
  readonly strip: number;
  readonly reading: number;
  readonly way: StripWay;
  /** N per mm of the strip's width, and the stretch as read; 0.1 is 10 %. */
  readonly pull: number;
  readonly stretch: number;
  /** Length as read less length of the fitted leather, mm; and by how much it may be misread (one standard deviation). */
  readonly restMm: number;
  readonly mayMm: number;
}

/** What strips tell of a leather. */
export interface StripFit {
  /** At the thickness of the strips. */
  readonly leather: Leather;
  readonly findings: readonly Finding[];
  /** Along, across, at 45 degrees: the fitted curve with its band of nine in ten. */
  readonly curves: readonly StripCurve[];
  readonly readings: readonly FittedReading[];
  /** Root of the mean square of the rests, mm; 0 without readings. */
  readonly restMm: number;
  /** Stretch under 10 N on a strip 20 mm wide. */
  readonly told: Readonly<Record<StripWay, Banded>>;
  readonly likeness: Likeness;
}

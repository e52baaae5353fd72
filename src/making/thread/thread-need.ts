import type { Stitched } from "#pieces/stitching.ts";

/** Thread and needle of one seam, one pair. */
export interface ThreadOfSeam {
  readonly name: string;
  /** Stitched length of all rows of both shoes, mm. */
  readonly seamMm: number;
  readonly stitch: Stitched["stitch"];
  /** Needle holes to a cm along the seam, a zigzag's too. */
  readonly stitchesPerCm: number;
  /** What the needle goes through, mm. */
  readonly stackMm: number;
  /** Thread length per seam length. */
  readonly ratio: number;
  /** Needle and bobbin thread together, without ends and waste, mm. */
  readonly threadMm: number;
}

/** The thread of a pair and the needle for it. */
export interface ThreadNeed {
  /** Metric ticket: 3 × 1000 / tex. */
  readonly ticket: number;
  readonly tex: number;
  readonly diameterMm: number;
  /** Metric size, hundredths of a mm, and the American number. */
  readonly needle: { readonly nm: number; readonly us: number };
  readonly seams: readonly ThreadOfSeam[];
  /** All rows of both shoes, mm. */
  readonly seamMm: number;
  /** Left hanging at the ends of all rows, both threads, mm. */
  readonly endsMm: number;
  /** Share added to seams and ends for breaks, bobbin ends and trials. */
  readonly wasteShare: number;
  /** With ends and waste, mm. */
  readonly topMm: number;
  readonly bobbinMm: number;
  readonly totalMm: number;
  readonly reason: string;
  /** What to take where the seams are sewn by hand. */
  readonly byHand: string;
  /** Where numbers come from. */
  readonly source: string;
}

import type { Edge } from "../net-upper.ts";
import { widthsAlong } from "../zones.ts";

/**
 * What becomes of an edge once it is cut: drawn under the insole; sewn grain to grain; laid under another edge; turned over; trimmed off
 * after sewing; sewn and turned out like a bag; or left as it is cut (raw, bound, butted, the piece that lies over).
 */
export const finishes = ["lasting", "seam", "lap", "fold", "trim", "bag", "raw"] as const;
export type Finish = (typeof finishes)[number];

/** What is added to one edge of a panel; all widths one a point of the edge, mm, positive outward of the net. */
export interface Allowance {
  readonly finish: Finish;
  /** Where the cutting line lies. */
  readonly widths: Float64Array;
  /** Where the line lies that is sewn, folded, laid or trimmed by; the net edge itself where nothing is said. */
  readonly at?: Float64Array;
  readonly skive?: Skive;
  /** How far inside the net edge it is stitched down on what lies under it. */
  readonly stitchInMm?: number;
}

/** A band along the cutting line that is thinned. */
export interface Skive {
  readonly mm: number;
  /** Running lengths of the edge between which it is thinned; all of it where not said. */
  readonly between?: readonly [number, number];
}

/** The same width all along an edge. */
export const evenAllowance = (edge: Edge, finish: Finish, mm: number, skiveMm = 0): Allowance => ({
  finish,
  widths: widthsAlong(edge.arc, () => mm),
  ...(skiveMm > 0 && { skive: { mm: skiveMm } }),
});

/** Nothing added: the edge is cut net. */
export const cutNet = (edge: Edge, skiveMm = 0): Allowance => evenAllowance(edge, "raw", 0, skiveMm);

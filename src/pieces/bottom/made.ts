import type { HeelLayer } from "./heel-stack.ts";
import type { SeatEdge } from "./seat.ts";
import type { ShankBend } from "./shank.ts";

/** What a bottom is built of, in numbers; of one shoe, mm. */
export interface BottomMade {
  readonly boards: { readonly firstMm: number; readonly secondMm: number; readonly secondBehindJointMm: number; readonly skiveMm: number };
  readonly shank: {
    readonly lengthMm: number;
    readonly widthMm: number;
    readonly thicknessMm: number;
    /** Rear end from the seat point, front end from the joint line, along the line from the seat to the waist. */
    readonly fromSeatMm: number;
    readonly behindJointMm: number;
    /** The longest that would lie from the middle of the heel to as near the joint line as it may. */
    readonly longestMm: number;
    /** Empty on a taped pattern. */
    readonly bend: readonly ShankBend[];
  };
  /** None where the margins meet. */
  readonly filler?: {
    readonly marginMm: number;
    /** Between the margins, on the flat. */
    readonly areaMm2: number;
    /** None on a taped pattern. */
    readonly depth?: {
      readonly volumeMm3: number;
      readonly mostMm: number;
      /** Where, from the seat along the last's axis. */
      readonly mostFromSeatMm: number;
      /** Thickness at each vertex of the flat bottom, square to the insole. */
      readonly thicknessMm: Float64Array;
    };
  };
  /** None on a taped pattern. */
  readonly heel?: {
    /** From the levelled seat to the ground, under the seat point and at the breast. */
    readonly backMm: number;
    readonly breastMm: number;
    /** By how much the levelled seat falls to the front. */
    readonly pitchDeg: number;
    /** From the sole down; they add up to `backMm` and `breastMm`. */
    readonly layers: readonly HeelLayer[];
    /** How far the sole's edge stands off the levelled seat, outer breast to inner breast: thickness of the split lift at its edge. */
    readonly splitEdge: readonly SeatEdge[];
    readonly splitMostMm: number;
    readonly breastOffMm: number;
  };
}

import type { Finish } from "./allowance.ts";

/**
 * How two cutting lines come together. run on: both go on straight until they meet. mirror: beyond the fold line the other edge is its own
 * mirror image. snip: the fold ends at the seam's stitch line. mitre: two folds meet along the line that halves the corner. dog-tail: a
 * tongue goes on from the folded edge over the seam.
 */
export type CornerKind = { readonly kind: "run on" | "mirror" | "snip" | "mitre" } | DogTail;

export interface DogTail {
  readonly kind: "dog-tail";
  /** How far it reaches beyond the seam, and how far down from the folded edge. */
  readonly longMm: number;
  readonly wideMm: number;
}

/** The rule for what meets in a corner. */
export function usualCorner(before: Finish, after: Finish): CornerKind {
  if (before === "lasting" || after === "lasting" || (before !== "fold" && after !== "fold")) return { kind: "run on" };
  return { kind: before === after ? "mitre" : "mirror" };
}

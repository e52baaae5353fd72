import type { Rule } from "#lines/lines.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import { mm, practice } from "./mm.ts";
import { upperSkiveRules, type UpperSkives } from "./upper-skives.ts";
import { upperTapeRules, type UpperTapes } from "./upper-tapes.ts";

/** Edges and seams of the upper; mm. */
export interface UpperSettings extends UpperSkives, UpperTapes {
  readonly toplineFoldMm: number;
  readonly toplineBagMm: number;
  readonly backSeamMm: number;
  readonly seamMm: number;
  readonly lapUnderMm: number;
  readonly lapFoldMm: number;
  readonly dogTailLongMm: number;
  readonly dogTailWideMm: number;
  readonly stitchInMm: number;
  readonly upperThicknessMm: number;
}

const foldedEdge = "trade notes on edge finishing: 3.5 to 4 mm for light calf and kid, 6 to 6.5 mm for heavy grain; other makers give 4 and 5 mm";

export function upperRules(edge: ToplineEdge): Readonly<Record<keyof UpperSettings, Rule>> {
  const why = unfolded[edge];
  return { ...usual, ...(why === undefined ? {} : { toplineFoldMm: noFold(why) }) };
}

const usual = {
  ...upperSkiveRules,
  ...upperTapeRules,
  toplineFoldMm: mm("Fold at the topline", 4.5, 3, 7, 0.5,
    "Turned over the tape and hammered flat. Thin kid wants less, heavy grain more; it must be skived first.", foldedEdge),
  toplineBagMm: mm("Seam of a bagged topline", 3, 2, 4, 0.5,
    "Upper and lining are sewn grain to grain along the topline and turned out; both need the same seam.", `${practice}; the way of making is told in a sewer's notes on topline edges`),
  backSeamMm: mm("Closed back seam", 1.5, 1, 3, 0.1,
    "Sewn grain to grain, rubbed down and taped. More would lie as a ridge on the heel.", practice),
  seamMm: mm("Closed seam at the waist or sides", 1.5, 1, 3, 0.1,
    "Sewn grain to grain, rubbed down and taped. Soft kid takes 1 to 1.2 mm, calf 1.5 mm.", practice),
  lapUnderMm: mm("Lap under the vamp's edge", 8, 6, 12, 0.5,
    "What lies under and is cemented and stitched. One row of stitches holds in 6 mm; two rows, or calf, want 8 to 10 mm.", practice),
  lapFoldMm: mm("Fold of the vamp's edge at a lap", 0, 0, 6, 0.5,
    "0 leaves the edge raw: skived, inked and stitched down. A fold of 3.5 to 5 mm hides the cut edge but lies thicker.", foldedEdge),
  dogTailLongMm: mm("Length of the dog-tail", 11, 10, 12, 0.5,
    "The tongue runs over the back seam and is stitched down, so that pulling the shoe on does not tear the seam's top.", practice),
  dogTailWideMm: mm("Width of the dog-tail", 8, 6, 10, 0.5,
    "Wide enough for stitches on both sides of the tongue, no wider, or it stands off round the heel.", practice),
  stitchInMm: mm("Stitches inside an edge", 1.5, 1, 3, 0.1,
    "Nearer to the edge than 1.2 mm the holes tear out; farther in, the edge lifts.", practice),
  upperThicknessMm: mm("Thickness of the upper", 1.1, 0.5, 2, 0.1,
    "Measured on your leather. It lies under the sole's edge on both sides, so the sole grows with it.", practice),
} as const;

/** Why nothing is folded at edges that are made in another way. */
const unfolded: Readonly<Partial<Record<ToplineEdge, string>>> = {
  raw: "A raw edge is cut net, then inked or sealed; nothing is turned over.",
  bound: "A bound edge is cut net; the strip is turned round it.",
  wrapped: "A wrapped edge is cut net; the strip goes round it.",
  bagged: "A bagged edge is not folded; it is turned out with the lining.",
};

const noFold = (why: string): Rule => mm("Fold at the topline", 0, 0, 0, 0.5, why, "trade notes on edge finishing");

import type { Rule } from "#lines/lines.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import { mm, practice } from "./mm.ts";

/** Edges and seams of the upper; mm. */
export interface UpperSettings {
  readonly toplineFoldMm: number;
  readonly backSeamMm: number;
  readonly upperThicknessMm: number;
}

const foldedEdge = "trade notes on edge finishing: 3.5 to 4 mm for light calf and kid, 6 to 6.5 mm for heavy grain; other makers give 4 and 5 mm";

export function upperRules(edge: ToplineEdge): Readonly<Record<keyof UpperSettings, Rule>> {
  return { ...usual, ...(edge === "raw" ? rawEdge : {}) };
}

const usual = {
  toplineFoldMm: mm("Fold at the topline", 4.5, 3, 7, 0.5,
    "Turned over the tape and hammered flat. Thin kid wants less, heavy grain more; it must be skived first.", foldedEdge),
  backSeamMm: mm("Closed back seam", 1.5, 1, 3, 0.1,
    "Sewn grain to grain, rubbed down and taped. More would lie as a ridge on the heel.", practice),
  upperThicknessMm: mm("Thickness of the upper", 1.1, 0.5, 2, 0.1,
    "Measured on your leather. It lies under the sole's edge on both sides, so the sole grows with it.", practice),
} as const;

const rawEdge = {
  toplineFoldMm: mm("Fold at the topline", 0, 0, 0, 0.5, "A raw edge is cut net, then inked or sealed; nothing is turned over.", "trade notes on edge finishing"),
} as const;

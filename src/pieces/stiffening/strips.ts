import type { Chosen } from "../choices.ts";
import type { Strip } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";

/** Laid so much shorter than where it lies, as a share (trade notes, little certain: about 1 %). */
const drawnShare = 0.01;

/** The second tape at both flanks, below that in the fold: it holds the lowest part of the topline, which gapes first. None where no tape lies in a fold, nor where the topline is cut open for a gore there. */
export function flankTapes({ edge, gore }: Pick<Chosen, "edge" | "gore">, { toplineFoldMm, flankTapeMm, flankTapeReachMm, stripEndsMm }: Pick<PieceSettings, "toplineFoldMm" | "flankTapeMm" | "flankTapeReachMm" | "stripEndsMm">): readonly Strip[] {
  if (edge !== "taped" || toplineFoldMm === 0 || gore) return [];
  const lengthMm = 2 * flankTapeReachMm * (1 - drawnShare) + 2 * stripEndsMm;
  return [{ name: "flank tape", material: "tape", widthMm: flankTapeMm, lengthMm, perPair: 4, where: `below the fold's tape, ${flankTapeReachMm.toFixed(0)} mm to either side of the lowest place, drawn 1 % shorter; both sides` }];
}

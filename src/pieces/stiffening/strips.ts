import { isFolded, type Chosen } from "../choices.ts";
import type { Strip } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";

/** Laid so much shorter than where it lies, as a share (trade notes, little certain: about 1 %). */
const drawnShare = 0.01;

/** The second tape at both flanks, where an edge is turned: it holds the lowest part of the topline, which gapes first. */
export function flankTapes({ edge }: Pick<Chosen, "edge">, { flankTapeMm, flankTapeReachMm, stripEndsMm }: Pick<PieceSettings, "flankTapeMm" | "flankTapeReachMm" | "stripEndsMm">): readonly Strip[] {
  if (!isFolded(edge)) return [];
  const lengthMm = 2 * flankTapeReachMm * (1 - drawnShare) + 2 * stripEndsMm;
  return [{ name: "flank tape", material: "tape", widthMm: flankTapeMm, lengthMm, perPair: 4, where: `below the fold line, ${flankTapeReachMm.toFixed(0)} mm to either side of the lowest place, drawn 1 % shorter; both sides` }];
}

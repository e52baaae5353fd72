import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** Tapes and binding strips of the upper; mm. */
export interface UpperTapes {
  readonly foldTapeMm: number;
  readonly seamTapeMm: number;
  readonly stripEndsMm: number;
  readonly bindingBoundMm: number;
  readonly bindingWrappedMm: number;
  readonly bindingThickMm: number;
}

export const upperTapeRules: Readonly<Record<keyof UpperTapes, Rule>> = {
  foldTapeMm: mm("Tape in the fold", 3.5, 3, 4, 0.5,
    "Laid along the fold line: it guides an even fold and keeps the edge from stretching in lasting.", practice),
  seamTapeMm: mm("Tape over a closed seam", 14, 14, 16, 1,
    "Laid over the opened seam on the flesh side; it takes the pull off the stitches.", practice),
  stripEndsMm: mm("Left over at a strip's ends", 10, 0, 30, 1,
    "What a strip is cut longer by at each end, to lay it without stretching and trim it there.", practice),
  bindingBoundMm: mm("Binding strip, turned in", 14, 12, 16, 0.5,
    "Sewn on grain to grain, brought over the edge and cemented down inside.", practice),
  bindingWrappedMm: mm("Binding strip, wrapped", 19, 18, 20, 0.5,
    "Goes round the edge with both its own edges turned, so that it is seen on both sides.", practice),
  bindingThickMm: mm("Thickness of the binding strip", 0.6, 0.5, 0.8, 0.05,
    "Thicker leather makes a bead of the edge; both its edges are skived over 3 to 4 mm.", practice),
};

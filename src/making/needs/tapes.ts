import type { Strip } from "#pieces/piece.ts";
import { cutLength } from "../amounts/cut-length.ts";
import type { GoodId } from "../goods.ts";
import type { MakingInput } from "../input.ts";
import type { Need } from "../need.ts";
import { netOf } from "./part-areas.ts";
import { wasteOf } from "./waste.ts";
import type { About } from "./sheets.ts";

const practice = "common practice, no source";

type TapeGood = GoodId & ("fold tape" | "seam tape" | "flank tape");

/** Which roll a strip is cut from; tapes of the lining's seams come off the same roll as those of the upper. */
const goodOf = ({ name, material }: Strip): TapeGood | undefined =>
  material !== "tape" ? undefined : name.startsWith("seam tape") ? "seam tape" : name.startsWith("flank tape") ? "flank tape" : "fold tape";

/** Tapes by length: net as they are laid, gross with the ends that are trimmed. */
export function tapeNeeds({ strips, settings }: MakingInput): readonly Need[] {
  const taken = (good: TapeGood, widthMm: number, about: About): readonly Need[] => tape(good, strips.filter((strip) => goodOf(strip) === good), settings.stripEndsMm, widthMm, about);
  return [
    ...taken("fold tape", settings.foldTapeMm, {
      kind: `narrow tape that does not stretch, ${settings.foldTapeMm} mm, self-adhesive`,
      reason: "Laid on the fold line: it guides an even fold and keeps the edge from stretching in lasting. 3 to 4 mm wide; not used on raw edges.",
      source: practice,
    }),
    ...taken("seam tape", settings.seamTapeMm, {
      kind: `wide tape, ${settings.seamTapeMm} mm, woven or of thin leather`,
      reason: "Laid over the opened seam on the flesh side; it takes the pull off the stitches. 14 or 16 mm wide.",
      source: practice,
    }),
    ...taken("flank tape", settings.flankTapeMm, {
      kind: `tape that does not stretch, ${settings.flankTapeMm} mm, self-adhesive`,
      reason: "A second strip where the topline is lowest and gapes first, laid a little drawn.",
      source: practice,
    }),
  ];
}

function tape(good: TapeGood, strips: readonly Strip[], endsMm: number, widthMm: number, about: About): readonly Need[] {
  if (strips.length === 0) return [];
  const parts = strips.map(({ where, perPair, lengthMm }) => ({ name: where, perPair, net: perPair * Math.max(0, lengthMm - 2 * endsMm) }));
  const net = netOf(parts), gross = strips.reduce((sum, { perPair, lengthMm }) => sum + perPair * cutLength(lengthMm), 0);
  const waste = wasteOf(1 - net / gross, `Each strip is cut ${endsMm} mm longer at both ends, to the next whole millimetre, and trimmed where it lies.`);
  return [{ good, measure: "length", parts, net, gross, ...(gross > net && { waste }), widthMm, ...about }];
}

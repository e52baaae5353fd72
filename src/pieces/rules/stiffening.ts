import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** Counter, toe puff, side lining and flank tape; mm. Sizes of counter and puff that lie under the upper belong to the shell's settings. */
export interface StiffeningSettings {
  readonly puffLastingMm: number;
  readonly puffRoundMm: number;
  readonly counterLastingMm: number;
  readonly counterRakeMm: number;
  readonly counterRoundMm: number;
  readonly sideLiningMm: number;
  readonly sideLiningHeightMm: number;
  readonly sideLiningBelowMm: number;
  readonly sideLiningLapMm: number;
  readonly flankTapeMm: number;
  readonly flankTapeReachMm: number;
}

export const stiffeningRules: Readonly<Record<keyof StiffeningSettings, Rule>> = {
  puffLastingMm: mm("Toe puff under the feather line", 11, 10, 12, 0.5,
    "Drawn over the edge with the lining and trimmed there. More makes a lump under the insole's edge, less lets the edge sink in.", practice),
  puffRoundMm: mm("Ends of the toe puff rounded by", 12, 4, 20, 0.5,
    "A square corner shows through the upper and comes loose first.", practice),
  counterLastingMm: mm("Stiffener under the feather line", 13, 12, 14, 0.5,
    "Lasted over the seat; it must hold on the insole, and no more.", practice),
  counterRakeMm: mm("Ends of the stiffener leaning back by", 12, 0, 25, 0.5,
    "Shorter at the top than along the feather line, so that the end follows the fall of the topline and does not stand up in the waist.", practice),
  counterRoundMm: mm("Ends of the stiffener rounded by", 14, 4, 20, 0.5,
    "A square corner works through the lining.", practice),
  sideLiningMm: mm("Thickness of the side lining", 0.6, 0.3, 1, 0.1,
    "Lies between lining and upper from the stiffener to the toe puff and is lasted under with them, so upper and sole must reach that much farther at joint and waist.", "a workshop of hand shoemakers makes it of thin kid, calf or linen; the thickness is common practice, no source"),
  sideLiningHeightMm: mm("Height of the side lining", 30, 20, 40, 0.5,
    "Above the feather line. Gives a wide joint or a soft upper something to stand on, no higher than it must.", "a workshop of hand shoemakers uses side linings for wide joints and leaves them out where it is hot; the height is common practice, no source"),
  sideLiningBelowMm: mm("Side lining below the topline", 10, 8, 15, 0.5,
    "Its edge must not come into the fold.", practice),
  sideLiningLapMm: mm("Side lining over stiffener and puff", 10, 6, 15, 0.5,
    "Lies on their skived ends, so that no step is left between them.", practice),
  flankTapeMm: mm("Second tape at the flanks", 5, 4, 6, 0.5,
    "Laid below the fold line where the topline is lowest and gapes first.", practice),
  flankTapeReachMm: mm("Reach of the second tape", 40, 20, 60, 1,
    "To either side of the lowest place.", practice),
};

import type { Rule } from "#lines/lines.ts";
import { mm, practice } from "./mm.ts";

/** Strap, gore, bow, back strip and toe cap; mm. */
export interface ExtraSettings {
  readonly strapBehindThroatMm: number;
  readonly strapWidthMm: number;
  readonly strapFoldMm: number;
  readonly strapUnderMm: number;
  readonly strapOverMm: number;
  readonly goreWideMm: number;
  readonly goreDeepMm: number;
  readonly goreLapMm: number;
  readonly bowLongMm: number;
  readonly bowWideMm: number;
  readonly knotWideMm: number;
  readonly backStripTopMm: number;
  readonly backStripFeatherMm: number;
  readonly backStripFoldMm: number;
  readonly toeCapMm: number;
  readonly toeCapBowMm: number;
  readonly toeCapFoldMm: number;
}

export const extraRules: Readonly<Record<keyof ExtraSettings, Rule>> = {
  strapBehindThroatMm: mm("Strap behind the throat, along the topline", 85, 60, 130, 1,
    "Over the instep the strap holds the foot back in the shoe. Nearer to the throat it cuts into the tread of the foot, farther back it rides up the ankle.", practice),
  strapWidthMm: mm("Width of the strap", 12, 8, 20, 0.5, "Finished. Narrower cuts in, wider stands off where the instep bends.", practice),
  strapFoldMm: mm("Fold along the strap", 4, 0, 6, 0.5, "Turned in on both long edges and at the free end; 0 for a raw strap on its lining.", "trade notes on edge finishing: 3.5 to 4 mm for light calf and kid"),
  strapUnderMm: mm("Strap under the inner side", 15, 10, 22, 0.5, "What is sewn in between upper and lining; it carries every step, so two rows of stitches have to find room.", practice),
  strapOverMm: mm("Strap beyond the outer side", 30, 20, 45, 1, "Room for the button or buckle and a hole either way.", practice),
  goreWideMm: mm("Opening of the gore at the topline", 14, 8, 24, 0.5, "What the elastic may give at each side. Wider looks like a hole, narrower gives nothing.", practice),
  goreDeepMm: mm("Depth of the gore", 20, 12, 30, 0.5, "Down from the topline. It must end well above the feather line, or it opens while the upper is lasted.", practice),
  goreLapMm: mm("Elastic under the leather", 8, 6, 12, 0.5, "What is cemented and sewn on each edge of the cut; one row of stitches holds in 6 mm.", practice),
  bowLongMm: mm("Length of the bow", 60, 36, 100, 1, "Finished, from end to end.", practice),
  bowWideMm: mm("Height of the bow", 26, 14, 44, 1, "Finished, at its ends.", practice),
  knotWideMm: mm("Width of the bow's knot", 13, 8, 22, 0.5, "The band that gathers the bow in its middle, finished.", practice),
  backStripTopMm: mm("Back strip at the topline", 16, 14, 18, 0.5, "Finished. It covers the seam's rubbed-down edges and their stitches.", practice),
  backStripFeatherMm: mm("Back strip at the feather line", 24, 22, 26, 0.5, "Finished. It widens downward, as the heel does.", practice),
  backStripFoldMm: mm("Fold along the back strip", 4, 0, 5, 0.5, "Turned in on both edges; 0 where they stay raw.", practice),
  toeCapMm: mm("Toe cap along the centre", 48, 30, 64, 1,
    "From the toe point back. It must end ahead of where the shoe bends, or it creases and its stitches break.", `${practice}; 64 mm is where a hand-welted men's toe ends by a workshop's notes`),
  toeCapBowMm: mm("Bow of the cap's edge", 5, 0, 14, 0.5, "How far the edge's middle lies behind its ends; a straight edge looks hollow once it is round the toe.", practice),
  toeCapFoldMm: mm("Fold of the cap's edge", 0, 0, 6, 0.5, "0 leaves it raw: skived, inked and stitched on.", "trade notes on edge finishing"),
};

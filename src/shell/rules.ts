import type { Last } from "#last/last.ts";
import type { Rule } from "#lines/lines.ts";
import type { Leather, ShellChoices, ShellRules, ShellSettings, ToplineEdge } from "./settings.ts";
import { springRange } from "./spring-range.ts";

const practice = "Common practice, no source.";

function mm(name: string, value: number, min: number, max: number, step: number, why: string, source = practice): Rule {
  return { value, min, max, step, unit: "mm", name, why, source };
}

/** What is chosen where the maker has said nothing. Inner and outer half of a pump differ, so each keeps its own. */
export const shellChoices: ShellChoices = { leather: "kid", edge: "taped", halves: "separate" };

/** How much shorter than on the last a topline is cut, least and most, as shares (common practice, no source). */
export const toplineShares: Readonly<Record<Leather, readonly [number, number]>> = { kid: [0.02, 0.03], firm: [0.01, 0.015], soft: [0.03, 0.04] };

/**
 * The rules for what lies beneath the upper and for its topline, worked out for one last and what the maker chose. Lengths along
 * the heel were written down for EU 37 and grow with the last's length.
 */
export function shellRulesFor(last: { readonly measures: Pick<Last["measures"], "lastLength"> }, { leather = shellChoices.leather, edge = shellChoices.edge }: Partial<ShellChoices> = {}): ShellRules {
  const grown = (n: number): number => Math.round((2 * n * last.measures.lastLength) / 244) / 2;
  return {
    springMm: mm("spring", 0, springRange.usual.min, springRange.usual.max, springRange.usual.step,
      "Swinging the heel ends together lays the piece closer on the skin and presses the flanks of the shoe inward. Too much, and the forepart comes out full and pleats. It does not shorten the topline.",
      "Common practice, no source; that an unsprung pump gapes is taught in shoemaking classes, that an over-sprung one pleats stands in a handbook of 1902."),
    toplineShorter: toplineRule(leather, edge),
    counterMm: mm("thickness of the stiffener", 1, 0, 2.5, 0.1,
      "It lies between lining and upper round the heel, so the upper has farther to go there. Thermo board is 0.8 to 1.2 mm thick, leather 1.8 to 2.5 mm; 0 where there is none."),
    counterBelowMm: mm("stiffener below the topline", 9, 8, 10, 0.5,
      "Higher and its edge is felt and cuts into the fold; lower and the back of the heel collapses. On EU 37 it then stands 40 to 46 mm high.",
      "Common practice, no source, for 8 to 10 mm; a national standard for ready-made orthopaedic footwear has 44 mm of height for women's 240."),
    counterInnerMm: mm("stiffener's inner wing", grown(85), grown(70), grown(95), 0.5,
      "To the heel breast and 10 to 15 mm farther; the inner wing is 5 to 10 mm longer, since the foot leans on it. Longer, and its end breaks through at the waist."),
    counterOuterMm: mm("stiffener's outer wing", grown(78), grown(70), grown(85), 0.5,
      "To the heel breast and 10 to 15 mm farther."),
    puffReachMm: mm("reach of the toe puff", grown(40), grown(35), grown(45), 0.5,
      "It must end before the shoe bends, and at least 12 mm before the throat. A longer one does not stop creases but makes them.",
      "Common practice, no source, for 35 to 45 mm; that lengthening it against creases is a mistake is told by a workshop of hand shoemakers."),
    skiveMm: mm("skiving of stiffener and puff", 15, 12, 18, 0.5,
      "Top edge and ends of the stiffener and the back edge of the puff are pared to nothing over this width, else they show through the upper.",
      "Common practice, no source: stiffener 12 to 18 mm at the top, 15 to 20 mm at its ends; puff 12 to 15 mm."),
    skiveFeatherMm: mm("skiving along the feather line", 9, 8, 10, 0.5,
      "Stiffener and puff are pared to nothing toward the feather line, so that the edge stays sharp and the margin lies flat under it."),
  };
}

/**
 * The share by leather and edge: over a tape the lower half of the leather's range, since tape stops later stretch; folded alone all
 * of it; raw its upper half. The default is the middle of that.
 */
export function toplineRule(leather: Leather, edge: ToplineEdge): Rule {
  const [least, most] = toplineShares[leather];
  const middle = (least + most) / 2;
  const [min, max] = edge === "taped" ? [least, middle] : edge === "raw" ? [middle, most] : [least, most];
  return {
    value: (min + max) / 2, min, max, step: 0.0005, unit: "share", name: "topline shorter than on the last",
    why: "A topline cut as long as it is on the last gapes once the last is drawn. Kid and calf take 2 to 3 %, firm or tightly lined leather 1 to 1.5 %, soft sheep and nappa 3 to 4 %; with a tape in the fold the lower half, since the tape stops later stretch. Too much bites, and the last is hard to draw.",
    source: "Common practice, no source; about 4 to 6 mm a half at EU 37. The upper half for a raw edge is our own reading.",
  };
}

/** The settings that the rules propose, with the maker's own put in place of them. */
export function shellSettingsFrom(rules: ShellRules, own: Partial<ShellSettings> = {}): ShellSettings {
  const numbers = Object.fromEntries(Object.entries(rules).map(([key, rule]) => [key, own[key as keyof ShellRules] ?? rule.value]));
  const { leather = shellChoices.leather, edge = shellChoices.edge, halves = shellChoices.halves } = own;
  return { ...(numbers as unknown as ShellSettings), leather, edge, halves };
}

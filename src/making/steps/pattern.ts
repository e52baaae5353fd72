import { listed } from "#base/listed.ts";
import type { Facts } from "./facts.ts";
import { must, type MayStep } from "./plan.ts";
import { counted, mm, mmMeasured, those } from "./words.ts";

/** Sheets printed and proved, card cut and held to the last, both lasts marked alike. */
export const patternSteps = (facts: Facts): readonly MayStep[] => [
  must("check-print", "pattern", [], () => ({
    title: "Print the pattern and measure its bars",
    todo: [
      "Print the pattern and the sheet of marks at 100 %, without fitting them to the page.",
      "Lay a steel rule on the scale bars of every page, both ways, before you cut anything.",
      "Take your time: minutes in this plan are for both shoes, once you have made some pairs. A first pair takes half as long again to twice as long.",
    ],
    needs: { goods: [], tools: ["steel rule", "scale square"] },
    right: ["Each bar is as long as is written beside it, within 0.5 mm, lengthwise and across."],
    fails: ["The printer shrinks the page to fit, and it shows only when the shoe is sewn."],
    minutes: 5,
    shoes: "together",
    hazards: [],
  })),
  must("cut-cards", "pattern", ["check-print"], () => cards(facts)),
  must("mark-lasts", "pattern", ["check-print"], () => marks(facts)),
];

/** Names of cards without allowance end so. */
const netCard = ", net";

function cards({ from, namesOf, corrected, leathers }: Facts) {
  const net = namesOf("card").flatMap((name) => (name.endsWith(netCard) ? [name.slice(0, -netCard.length)] : []));
  return {
    title: "Cut the card and hold it to the last",
    todo: those(
      "Stick the sheets to thin firm card with glue that does not wet them, and press them flat. When it is dry, cut in the middle of the line and prick every mark through.",
      net.length > 0 && `Hold the net card${net.length > 1 ? "s" : ""} (${listed(net)}) to the last and tape it on along the centre and at the back.`,
      from === "last" && "Throat, back and sides must meet the marks of the sheet; the lower edge must meet the feather line.",
      from === "tape" && "It must lie as the tape lay: throat, back and feather line where you drew them.",
      corrected && `The leather pieces are cut smaller than this card, corrected for ${leathers.upper.name}: hold only the net card to the last.`,
    ),
    needs: { goods: ["pattern card"], tools: ["sheet glue", "masking tape", "clicking knife", "cutting board", "steel rule", "awl", "lasts"] },
    right: ["No light between card and last along the topline.", "The two ends meet at the seam without pull."],
    fails: ["Cutting beside the line: half a millimetre all round makes the upper a size of its own.", "Paper on the last instead of card: it gives where leather would not."],
    minutes: 15,
    shoes: "together",
    hazards: ["knife"],
  } as const;
}

function marks({ from, ends, stiff, has, lasts }: Facts) {
  const { throatDepthMm, backHeightMm, innerHeightMm, outerHeightMm } = ends;
  return {
    title: "Mark both lasts alike",
    todo: those(
      from === "last" ? "Take the strips of the sheet of marks, or a soft tape. Mark the right last, then the left; the numbers are the same, the sides change places." : "Mark the right last with a soft tape, then the left with the same numbers; the sides change places.",
      `Throat: ${mmMeasured(throatDepthMm)} from the toe point along the centre. Back: ${mmMeasured(backHeightMm)} from the feather line up the back.`,
      innerHeightMm !== undefined && outerHeightMm !== undefined && `Lowest places of the topline above the feather line: ${mmMeasured(innerHeightMm)} inside, ${mmMeasured(outerHeightMm)} outside.`,
      has("stiffener") && `Top of the stiffener: ${mmMeasured(backHeightMm - stiff.counterBelowMm)} up the back.`,
      "Mark the centre at toe and seat, both joints, and the places of the drafts, with a soft pencil: silver washes off under damp boards, ink comes through the lining.",
      `Measure both lasts once more before you go on.${lasts > 1 ? ` Mark your ${counted(lasts, "pair")} of lasts in one go, all from the first.` : ""}`,
    ),
    needs: { goods: [], tools: ["lasts", "marking strips", "tape measure", "dividers", "pencil"] },
    right: [`Right and left agree within ${mm(0.5)} at every mark.`],
    fails: ["Marking the second last by eye from the first.", "A tape pulled taut bridges hollows and reads short: let it lie."],
    minutes: 10,
    shoes: "one after the other",
    hazards: [],
  } as const;
}

import { listed } from "#base/listed.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import { nailEveryMm, nailsOfShoe } from "../needs/nails.ts";
import type { Facts } from "./facts.ts";
import { tackInsoles } from "./insole-tacks.ts";
import { toeSteps } from "./lasting-toes.ts";
import { overWords } from "./over-words.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import type { Wait } from "./step.ts";
import { mm, mmMeasured, those } from "./words.ts";

/** Upper and lining drawn over both lasts, side by side, with the same numbers. */
export const lastingSteps = (facts: Facts): readonly MayStep[] => [
  must("tack-insoles", "lasting", ["glue-boards", "mark-lasts"], () => tackInsoles(facts)),
  may("wet-stiffeners", "lasting", ["cut-stiffening", "check-uppers", "tack-insoles"], facts.has("stiffener") && facts.stiffenerOfLeather, () => wet(facts)),
  must("set-stiffeners", "lasting", ["check-uppers", "cut-stiffening", "tack-insoles", "wet-stiffeners"], () => set(facts)),
  must("draft-uppers", "lasting", ["set-stiffeners"], () => draft(facts)),
  must("check-drafts", "lasting", ["draft-uppers"], () => check(facts)),
  must("last-sides", "lasting", ["check-drafts"], () => sides(facts)),
  ...toeSteps(facts),
];

function wet({ stiff }: Facts): Said {
  return {
    title: "Wet the stiffeners",
    todo: [
      `Soak the leather stiffeners (${mm(stiff.counterMm)}) until no bubbles rise.`,
      "Wring them gently and lay them on a cloth until about four fifths of the water is gone: mellow, cool to the cheek, no longer dark all over.",
      "Wet them on the evening on which you close the heels: from here that takes two hours and a half. If something comes between, wrap them in a damp cloth.",
    ],
    needs: { goods: ["stiffener"], tools: ["bowl of water"] },
    right: ["Bent round a thumb it stays bent, and no water comes out."],
    fails: ["Set in wet: water draws marks through the upper.", "Set in dry: it never takes the heel's form."],
    minutes: 5,
    wait: { leastMin: 30, wellMin: 60, mostMin: 8 * 60, what: "the stiffeners turn mellow", source: "soaked, then used when about four fifths dry: makers' notes; how long it takes is common practice, no source" },
    shoes: "together",
    hazards: [],
  };
}

/** The glue beneath can still be moved when what comes next begins. */
const stillMoves = (what: string, glue: string, restMin: number, mostMin: number): Wait => ({ leastMin: restMin, wellMin: restMin, mostMin, what, source: `common practice, no source; the label of your ${glue} comes first` });
const glueOf = ({ stiffenerOfLeather, has }: Facts): string => (has("stiffener") && stiffenerOfLeather ? "paste" : "latex");

function set({ has, countOf, stiffenerOfLeather, stiff, settings: s, threeLinings }: Facts): Said {
  const sides = countOf("side lining") > 0, stiffener = has("stiffener");
  const glue = stiffenerOfLeather ? "paste" : "latex";
  return {
    title: stiffener ? "Set the stiffeners in" : sides ? "Set the side linings in" : "Stick upper and lining together",
    todo: those(
      "From here to the closed heels it is one go of an hour and a half: last stand, pincers, tacks and nails lie ready, both lasts stand with their insoles on. Open upper and lining from below like a bag.",
      sides && `Stick the side linings between, latex on both their faces, up to ${mm(s.sideLiningBelowMm)} below the topline.`,
      stiffener && `Brush ${glue} on both faces of the stiffener, thinly to its very edge. Slip it in to ${mm(stiff.counterBelowMm)} below the topline, centre on the back; the longer wing lies inside.`,
      stiffener && !stiffenerOfLeather && "Board that bends when it is warm is warmed as its maker says, just before you draw the back.",
      `Brush latex that grips slowly on ${stiffener || sides ? "the rest of " : ""}upper and lining as far as the joints${threeLinings ? " (the pocket's grain is scuffed)" : ""}; the forepart stays loose.`,
      "Stroke lining and upper together round your fist, from the middle outward, so that no air and no fold is trapped.",
    ),
    needs: {
      goods: ["upper leather", "lining leather", ...(stiffener ? (["stiffener"] as const) : []), ...(sides ? (["side lining"] as const) : []), ...(stiffener && stiffenerOfLeather ? (["paste"] as const) : []), "latex"],
      tools: ["paste brush", "bone folder", ...(stiffener && !stiffenerOfLeather ? (["hair dryer"] as const) : [])],
    },
    right: [`Nothing has come up to the topline: you feel its edge free of ${stiffener ? "stiffener and glue" : "glue"}.`, ...(stiffener ? ["Both stiffeners stand equally high, by the prick at the back."] : [])],
    fails: [...(stiffener ? ["Too high: its edge cuts into the topline."] : []), "Left lying flat once it is stuck, or for another evening: it keeps that form, and the heel folds."],
    minutes: 15,
    wait: stillMoves("the glue between upper and lining grips and can still be moved", glue, 5, 20),
    shoes: "one after the other",
    hazards: stiffener && !stiffenerOfLeather ? ["heat"] : [],
  };
}

/** What to do at each kind of draft of the textbook's order. */
const draftWords: Readonly<Record<string, (facts: Facts) => string>> = {
  "toe centre": () => "upper centred, draw lining and upper over the tip so that it is tight at the back and taut to both sides; no jerk, no twist. Tack it so that it cannot turn.",
  "toe corner": () => "lengthwise first, then across, both alike, lining with upper.",
  back: ({ ends }) => `draw down until the topline stands at ${mmMeasured(ends.backHeightMm)}, on the mark. Lower gives no grip, higher cuts in.`,
  "seat side": () => "where the bulge of the heel drops into the waist; aslant, not straight across.",
  joint: () => "across the forepart, just past tight, in a row of light pulls.",
};

/** The drafts that place the upper; the waists are closed afterwards. */
export function draftSentences(facts: Facts): readonly string[] {
  const groups = new Map<string, { readonly numbers: number[]; readonly halves: string[] }>();
  for (const { number, name } of draftOrder) {
    const [base, half] = name.split(", ") as [string, string?];
    const group = groups.get(base) ?? { numbers: [], halves: [] };
    groups.set(base, group);
    group.numbers.push(number);
    if (half) group.halves.push(half);
  }
  return [...groups].flatMap(([base, { numbers, halves }]) => {
    const words = draftWords[base];
    return words ? [`${listed(numbers.map(String))}, ${base}${halves.length > 1 ? "s" : ""}${halves.length > 0 ? `, ${listed(halves)}` : ""}: ${words(facts)}`] : [];
  });
}

/** Drafts before the waists. */
const placing = draftOrder.filter(({ place }) => place !== "waist").length;

function draft(facts: Facts): Said {
  return {
    title: "Draft the uppers over the lasts",
    todo: [...draftSentences(facts), `One lasting tack to each draft, its head standing: ${placing} to a shoe. After each draft on the right shoe do the same one on the left: the same grip, the same pull.`],
    needs: { goods: ["lasting tacks"], tools: ["lasts", "last stand", "lasting pincers", "lasting hammer"] },
    right: ["No light between topline and last, and the edge does not cut in.", "Lining and upper move as one."],
    fails: ["One shoe lasted to the end before the other is begun: they are never a pair.", "Overstretched on the first side: the other cannot be matched.", "Jerked, or a firm dry toe forced: the grain cracks at its corners. Hold it over steam for a minute or two first, your hands beside it."],
    minutes: 30,
    wait: stillMoves("the glue beneath can still be moved", glueOf(facts), 0, 15),
    // Draft by draft, from one shoe to the other.
    shoes: "together",
    hazards: ["lasting pincers", "hammer and nails", "heat"],
  };
}

function check(facts: Facts): Said {
  const { from, ends, settings: s, corrected, leathers } = facts;
  const { throatDepthMm, backHeightMm, innerHeightMm, outerHeightMm, over } = ends;
  const heights = innerHeightMm !== undefined && outerHeightMm !== undefined ? `, lowest places ${mmMeasured(innerHeightMm)} inside and ${mmMeasured(outerHeightMm)} outside` : "";
  return {
    title: "Measure both shoes before anything is stuck",
    todo: those(
      `The topline must meet the marks on the last: throat ${mmMeasured(throatDepthMm)}, back ${mmMeasured(backHeightMm)}${heights}. ${over ? `A tape laid over leather and stiffening reads more: ${overWords(ends, over)}.` : "A tape laid over leather and stiffening reads more."}`,
      `Inside the feather line must show, of the upper: ${mm(s.lastingToeMm)} at the toe, ${mm(s.lastingForepartMm)} at the joints, ${mm(s.lastingHeelMm)} at the heel; of the lining ${mm(s.liningLastingShorterMm)} less.`,
      "Compare right with left at every mark. Ease one draft and pull the one across from it until they agree; then set its tack anew, the head still standing.",
      from === "last" && "Entered in the log, what the tape reads says which shoe is farther off and which draft to ease.",
      "Do not stop here: what is glued sets as it hangs now. Close waists and heels in the same go.",
      corrected && `The upper was cut for ${leathers.upper.name}: if it lies short all round, pull once more before you blame the pattern.`,
    ),
    needs: { goods: [], tools: ["tape measure", "dividers", "marking strips", "lasting pincers", "tack lifter"] },
    right: ["Between right and left: throat and back within 1 mm (a factory's rule of 2014), sides within 1.5 mm.", "Seen from behind, the back stands upright within 1.5 mm."],
    fails: ["Measured at the end: what is stuck cannot be eased."],
    minutes: 10,
    wait: stillMoves("the glue beneath can still be moved", glueOf(facts), 0, 15),
    shoes: "together",
    hazards: ["lasting pincers", "hammer and nails"],
  };
}

const waistNumbers = draftOrder.filter(({ place }) => place === "waist").map(({ number }) => String(number));

const nails = (mmRound: number | undefined): string => (mmRound === undefined ? "" : ` In the end there are some ${nailsOfShoe(mmRound)} nails in a shoe, one every ${nailEveryMm} mm, closer at toe and heel than along the waist.`);

function sides({ has, stiff, settings: s, nailedMm }: Facts): Said {
  return {
    title: "Close waists and heels",
    todo: those(
      `Waists, drafts ${listed(waistNumbers)}, a tack to each: pull inner and outer in turns, until little air is left under the arch. ${mm(s.lastingInnerWaistMm)} of margin lie inside, ${mm(s.lastingOuterWaistMm)} outside.`,
      "Heel: lay the margin in fine pleats from the back to the front, a thin lasting nail to each, lining first and then all together.",
      has("stiffener") && stiff.counterMm > 0 && "Rub the back down with the hammer's face until the stiffener's edge at the seat is sharp.",
      "Leave the toe open, as far as 40 mm to either side of its centre.",
      `Do the same on the other shoe.${nails(nailedMm)} Count as you drive, and write it down.`,
    ),
    needs: { goods: ["lasting tacks", "lasting nails"], tools: ["lasts", "last stand", "lasting pincers", "lasting hammer", "pencil"] },
    right: ["The feather edge is crisp all round the heel, no pleat runs over it.", "The topline has not moved from its marks."],
    fails: ["Pulled hard at the waist alone: the side sinks and gapes later.", "Big pleats at the seat: the sole rocks on them."],
    minutes: 20,
    shoes: "one after the other",
    hazards: ["lasting pincers", "hammer and nails"],
  };
}

import { draftOrder } from "#pieces/draft-order.ts";
import type { Facts } from "./facts.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { listed, mm, mmMeasured, those } from "./words.ts";

/** Upper and lining drawn over both lasts, side by side, with the same numbers. */
export const lastingSteps = (facts: Facts): readonly MayStep[] => [
  must("tack-insoles", "lasting", ["glue-boards", "mark-lasts"], tackInsoles),
  may("wet-stiffeners", "lasting", ["cut-stiffening", "check-uppers", "tack-insoles"], facts.has("stiffener") && facts.stiffenerOfLeather, () => wet(facts)),
  must("set-stiffeners", "lasting", ["check-uppers", "cut-stiffening", "tack-insoles", "wet-stiffeners"], () => set(facts)),
  must("draft-uppers", "lasting", ["set-stiffeners"], () => draft(facts)),
  must("check-drafts", "lasting", ["draft-uppers"], () => check(facts)),
  must("last-sides", "lasting", ["check-drafts"], () => sides(facts)),
  may("set-puffs", "lasting", ["last-sides", "cut-stiffening"], facts.has("toe puff"), () => puffs(facts)),
  must("last-toes", "lasting", ["last-sides", "set-puffs"], () => toes(facts)),
];

/** Tacks that hold an insole to its last (common practice, no source). */
const insoleTacks = 3;

function tackInsoles(): Said {
  return {
    title: "Tack the insoles to the lasts",
    todo: [
      "Dust both lasts with French chalk.",
      `Tack each insole on with ${insoleTacks} tacks: seat, waist and forepart, in the middle. Leave the heads standing so that they can be drawn.`,
      `Write ${2 * insoleTacks} on the bench: so many have to come out again.`,
      "Look that the marks on both lasts can still be read.",
    ],
    needs: { goods: ["insole tacks"], tools: ["lasts", "lasting hammer", "French chalk", "pencil"] },
    right: ["The insole's edge follows the feather line all round; a finger feels no step outward."],
    fails: ["Tacks at the edge: they stand in the way of the margin.", "Heads driven home: they are forgotten, and the foot finds them."],
    minutes: 8,
    shoes: "together",
    hazards: ["hammer and nails"],
  };
}

function wet({ stiff }: Facts): Said {
  return {
    title: "Wet the stiffeners",
    todo: [
      `Soak the leather stiffeners (${mm(stiff.counterMm)}) until no bubbles rise.`,
      "Wring them gently and lay them on a cloth until about four fifths of the water is gone: mellow, cool to the cheek, no longer dark all over.",
      "If you cannot go on the same day, wrap them in a damp cloth.",
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

function set({ has, countOf, stiffenerOfLeather, stiff, settings: s }: Facts): Said {
  const sides = countOf("side lining") > 0, stiffener = has("stiffener");
  const glue = stiffenerOfLeather ? "paste" : "latex";
  return {
    title: stiffener ? "Set the stiffeners in" : sides ? "Set the side linings in" : "Stick upper and lining together",
    todo: those(
      "Open upper and lining from below like a bag.",
      sides && `Stick the side linings to the flesh side of the lining with latex, up to ${mm(s.sideLiningBelowMm)} below the topline.`,
      stiffener && `Brush ${glue} on both faces of the stiffener, thinly to its very edge. Slip it in to ${mm(stiff.counterBelowMm)} below the topline, centre on the back; the longer wing lies inside.`,
      stiffener && !stiffenerOfLeather && "Board that bends when it is warm is warmed as its maker says, just before you draw the back.",
      `Brush latex on ${stiffener || sides ? "the rest of " : ""}both flesh sides as far as the joints; the forepart stays loose.`,
      "Stroke lining and upper together round your fist, from the middle outward, so that no air and no fold is trapped.",
    ),
    needs: {
      goods: ["upper leather", "lining leather", ...(stiffener ? (["stiffener"] as const) : []), ...(sides ? (["side lining"] as const) : []), ...(stiffener && stiffenerOfLeather ? (["paste"] as const) : []), "latex"],
      tools: ["paste brush", "bone folder", ...(stiffener && !stiffenerOfLeather ? (["hair dryer"] as const) : [])],
    },
    right: [`Nothing has come up to the topline: you feel its edge free of ${stiffener ? "stiffener and glue" : "glue"}.`, ...(stiffener ? ["Both stiffeners stand equally high, by the prick at the back."] : [])],
    fails: [...(stiffener ? ["Too high: its edge cuts into the topline."] : []), "Left lying flat once it is stuck: it keeps that form, and the heel folds. Draft at once."],
    minutes: 15,
    wait: { leastMin: 5, wellMin: 5, mostMin: 90, what: "the glue between upper and lining grips and can still be moved", source: `common practice, no source; the label of your ${glue} comes first` },
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
    needs: { goods: ["lasting tacks"], tools: ["lasts", "last stand", "lasting pincers", "lasting hammer", "goggles"] },
    right: ["No light between topline and last, and the edge does not cut in.", "Lining and upper move as one."],
    fails: ["One shoe lasted to the end before the other is begun: they are never a pair.", "Overstretched on the first side: the other cannot be matched.", "Jerked, or a firm dry toe forced: the grain cracks at its corners. Hold it over steam for a minute or two first."],
    minutes: 30,
    shoes: "one after the other",
    hazards: ["lasting pincers", "hammer and nails"],
  };
}

function check({ from, ends, settings: s, corrected, leathers, has, stiffenerOfLeather }: Facts): Said {
  const { throatDepthMm, backHeightMm, innerHeightMm, outerHeightMm } = ends;
  const heights = innerHeightMm !== undefined && outerHeightMm !== undefined ? `, lowest places ${mmMeasured(innerHeightMm)} inside and ${mmMeasured(outerHeightMm)} outside` : "";
  return {
    title: "Measure both shoes before anything is stuck",
    todo: those(
      `The topline must meet the marks on the last: throat ${mmMeasured(throatDepthMm)}, back ${mmMeasured(backHeightMm)}${heights}. A tape laid over leather and stiffening reads more${from === "last" ? "; the sheet of marks says how much" : ""}.`,
      `Inside the feather line must show, of the upper: ${mm(s.lastingToeMm)} at the toe, ${mm(s.lastingForepartMm)} at the joints, ${mm(s.lastingHeelMm)} at the heel; of the lining ${mm(s.liningLastingShorterMm)} less.`,
      "Compare right with left at every mark. Ease one draft and pull the one across from it until they agree; then drive the tacks.",
      from === "last" && "Entered in the log, what the tape reads says which shoe is farther off and which draft to ease.",
      has("stiffener") && stiffenerOfLeather && "If you have to stop here, keep the stiffeners mellow: a damp cloth round both heels.",
      corrected && `The upper was cut for ${leathers.upper.name}: if it lies short all round, pull once more before you blame the pattern.`,
    ),
    needs: { goods: [], tools: ["tape measure", "dividers", "marking strips", "lasting pincers", "tack lifter"] },
    right: ["Between right and left: throat and back within 1 mm (a factory's rule of 2014), sides within 1.5 mm.", "Seen from behind, the back stands upright within 1.5 mm."],
    fails: ["Measured at the end: what is stuck cannot be eased."],
    minutes: 10,
    shoes: "one after the other",
    hazards: ["lasting pincers", "hammer and nails"],
  };
}

const waistNumbers = draftOrder.filter(({ place }) => place === "waist").map(({ number }) => String(number));

/** Lasting nails stand about so far apart, mm (common practice, no source). */
const nailEveryMm = 10;
const nails = (mmRound: number | undefined): string => (mmRound === undefined ? "" : ` In the end there are some ${Math.round(mmRound / nailEveryMm)} nails in a shoe, one every ${nailEveryMm} mm, closer at toe and heel than along the waist.`);

function sides({ has, stiff, settings: s, nailedMm }: Facts): Said {
  return {
    title: "Close waists and heels",
    todo: those(
      `Waists, drafts ${listed(waistNumbers)}, a tack to each: pull inner and outer in turns, until little air is left under the arch. ${mm(s.lastingInnerWaistMm)} of margin lie inside, ${mm(s.lastingOuterWaistMm)} outside.`,
      "Heel: lay the margin in fine pleats from the back to the front, a thin lasting nail to each, lining first and then all together.",
      has("stiffener") && stiff.counterMm > 0 && "Rub the back down with the hammer's face until the stiffener's edge at the seat is sharp.",
      "Leave the toe open, as far as 40 mm to either side of its centre.",
      `Do the same on the other shoe.${nails(nailedMm)} Count as you drive.`,
    ),
    needs: { goods: ["lasting tacks", "lasting nails"], tools: ["lasts", "last stand", "lasting pincers", "lasting hammer", "goggles"] },
    right: ["The feather edge is crisp all round the heel, no pleat runs over it.", "The topline has not moved from its marks."],
    fails: ["Pulled hard at the waist alone: the side sinks and gapes later.", "Big pleats at the seat: the sole rocks on them."],
    minutes: 20,
    shoes: "one after the other",
    hazards: ["lasting pincers", "hammer and nails"],
  };
}

function puffs({ settings: s, stiff, puffOfLeather }: Facts): Said {
  return {
    title: "Last the toe lining and set the puffs",
    todo: [
      "Draw the three tacks of the toe and turn the upper back. Pull the lining over the toe, stick it to the insole with latex and trim it there, its pleats flat.",
      `Brush ${puffOfLeather ? "paste" : "latex"} on both faces of the puff (${mm(s.toePuffMm)}) and lay it on the lining, centre to centre, its edge on its mark; ${mm(s.puffLastingMm)} go under the feather line.`,
      "Draw it over the edge, snip its margin where it gathers, and trim it so that no lump lies under the insole's edge.",
      `Feel its back edge: skived over ${mm(stiff.skiveMm)}, it must end in nothing.`,
    ],
    needs: { goods: ["toe puff", "lining leather", "latex", ...(puffOfLeather ? (["paste"] as const) : [])], tools: ["paste brush", "lasting pincers", "scissors", "skiving knife", "tack lifter"] },
    right: ["In side light no edge shows.", "It ends well before the foot bends, on both shoes alike."],
    fails: ["Let dry before the upper is over it: upper and puff never become one."],
    minutes: 17,
    shoes: "one after the other",
    hazards: ["lasting pincers", "knife"],
  };
}

function toes({ has, stiffenerOfLeather, settings: s }: Facts): Said {
  const leather = has("stiffener") && stiffenerOfLeather;
  return {
    title: "Last the toes, and let the shoes dry",
    todo: [
      `Pull ${listed(draftOrder.filter(({ place }) => place === "toe").map(({ number }) => String(number)))} again to where they were: the throat stands on its mark.`,
      `Forepart from the joints forward, then the toe last: the margin of ${mm(s.lastingToeSidesMm)} beside it in many fine pleats, a nail to each, none running over the edge.${has("toe puff") ? "" : " Lining first, trimmed on the insole, then the upper."}`,
      "Tap the edge round toe and heel with the hammer's face.",
      "Write on the bench how many tacks and nails each shoe holds. Both stand to dry in the air of the room, on their lasts.",
    ],
    needs: { goods: ["lasting nails"], tools: ["lasts", "last stand", "lasting pincers", "lasting hammer", "goggles", "pencil"] },
    right: ["Pleats end at the feather line; above it the toe is smooth.", "Throat depths agree within 1 mm."],
    fails: ["Few pleats: they are thick, and the sole shows them.", "Taken off while damp: it shrinks back and the topline opens."],
    minutes: 20,
    wait: {
      leastMin: 24 * 60,
      wellMin: (leather ? 3 : 2) * 24 * 60,
      what: `${listed(["upper", ...(has("stiffener") ? ["stiffener"] : []), ...(has("toe puff") ? ["puff"] : [])])} ${has("stiffener") || has("toe puff") ? "dry" : "dries"} on the lasts`,
      source: `at least 24 hours in a maker's round of work; two days, and three to seven with an unheated leather stiffener, are common practice, no source${leather ? "; a class leaves a week" : ""}`,
    },
    shoes: "one after the other",
    hazards: ["lasting pincers", "hammer and nails"],
  };
}

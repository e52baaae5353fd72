import { listed } from "#base/listed.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import { tacksOfInsole } from "../needs/nails.ts";
import type { Facts } from "./facts.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { mm } from "./words.ts";

/** Lining, puff and upper over the toe, in one go. */
export const toeSteps = (facts: Facts): readonly MayStep[] => [
  may("set-puffs", "lasting", ["last-sides", "cut-stiffening"], facts.has("toe puff"), () => puffs(facts)),
  must("last-toes", "lasting", ["last-sides", "set-puffs"], () => toes(facts)),
];

const toeDrafts = listed(draftOrder.filter(({ place }) => place === "toe").map(({ number }) => String(number)));

function puffs({ settings: s, stiff, puffOfLeather }: Facts): Said {
  return {
    title: "Last the toe lining and set the puffs",
    todo: [
      `Draw the tacks of ${toeDrafts}, keep them for the same shoe, and turn the upper back. Pull the lining over the toe, stick it to the insole with latex and trim it there, its pleats flat.`,
      `Brush ${puffOfLeather ? "paste" : "latex"} on both faces of the puff (${mm(s.toePuffMm)}) and lay it on the lining, centre to centre, its edge on its mark; ${mm(s.puffLastingMm)} go under the feather line.${puffOfLeather ? "" : " A sheet that turns soft in warmth is warmed just before, as its label says."}`,
      "Draw it over the edge, snip its margin where it gathers, and trim it so that no lump lies under the insole's edge.",
      `Feel its back edge: skived over ${mm(stiff.skiveMm)}, it must end in nothing.`,
    ],
    needs: { goods: ["toe puff", "lining leather", "latex", ...(puffOfLeather ? (["paste"] as const) : [])], tools: ["paste brush", "lasting pincers", "scissors", "skiving knife", "tack lifter", ...(puffOfLeather ? [] : (["hair dryer"] as const))] },
    right: ["In side light no edge shows.", "It ends well before the foot bends, on both shoes alike."],
    fails: ["Let dry before the upper is over it: upper and puff never become one. Go straight on to the toes."],
    minutes: 17,
    wait: { leastMin: 0, wellMin: 0, mostMin: 15, what: "puff and glue can still be moved", source: `common practice, no source; the label of your ${puffOfLeather ? "paste" : "latex"} comes first` },
    shoes: "one after the other",
    hazards: puffOfLeather ? ["lasting pincers", "knife", "hammer and nails"] : ["lasting pincers", "knife", "hammer and nails", "heat"],
  };
}

function toes({ has, stiffenerOfLeather, settings: s }: Facts): Said {
  const leather = has("stiffener") && stiffenerOfLeather;
  return {
    title: "Last the toes, and let the shoes dry",
    todo: [
      `${has("toe puff") ? "" : `Draw the tacks of ${toeDrafts}, last the lining over the toe and trim it on the insole. `}Pull drafts ${toeDrafts} of the upper again to where they were, and drive their tacks anew: the throat stands on its mark, and a shoe has its ${draftOrder.length} tacks again.`,
      `Forepart from the joints forward, then the toe last: the margin of ${mm(s.lastingToeSidesMm)} beside it in many fine pleats, a nail to each, none running over the edge.`,
      "Tap the edge round toe and heel with the hammer's face.",
      `Write down for each shoe how many nails it holds beside its ${draftOrder.length} tacks of the drafts and the ${tacksOfInsole} of the insole. Both stand to dry in the air of the room, on their lasts.`,
    ],
    needs: { goods: ["lasting nails"], tools: ["lasts", "last stand", "lasting pincers", "lasting hammer", "tack lifter", "pencil"] },
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

import type { HeelLayer } from "#pieces/bottom/heel-stack.ts";
import type { GoodId } from "../goods.ts";
import { bondHolds, cementTools, dryToTouch, firstCoat, lastCoat, overnightMin, wakeHazards, wakeTools, wakeWords } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { heelNailWords } from "./heel-nails.ts";
import { may, type MayStep, type Said } from "./plan.ts";
import { mm, mmMeasured, those } from "./words.ts";

/** The heel built on the sole, layer by layer, to the height at which the last stands. */
export function heelSteps(facts: Facts): readonly MayStep[] {
  const { made, has } = facts;
  // What was traced without a last has no height to build to: the maker's own last says it.
  const heel = !made?.heel || made.heel.layers.length > 0 || has("split lift");
  return [
    may("prime-heels", "heel", ["trim-soles"], heel, () => prime(facts)),
    may("coat-heels", "heel", ["prime-heels"], heel, () => coat(facts)),
    may("build-heels", "heel", ["coat-heels"], heel, () => build(facts)),
    may("level-heels", "heel", ["build-heels"], heel, () => level(facts)),
  ];
}

/** Without a last nobody knows whether the seat is round: it is tried on. */
const splits = ({ made, has }: Facts): boolean => !made?.heel || has("split lift");

/** Leathers of the layers that this heel has. */
const leathers = (facts: Facts): readonly GoodId[] => {
  const layers = facts.made?.heel?.layers;
  const lifts = !layers || splits(facts) || layers.some(({ name }) => name !== "top piece"), tops = !layers || layers.some(({ name }) => name === "top piece");
  return [...(lifts ? (["lift leather"] as const) : []), ...(tops ? (["top piece leather"] as const) : [])];
};

function prime(facts: Facts): Said {
  const { made, settings: s, cement } = facts;
  const split = splits(facts);
  return {
    title: split ? "Pare the split lifts and prime the heels" : "Prime the heels",
    todo: those(
      split && `A horseshoe ${mm(s.splitLiftWideMm)} wide, of ${mm(s.splitLiftMm)} leather, levels the round seat: pare it to nothing inside.`,
      split && (made?.heel ? `At its edge it is as thick as the seat stands off, ${mmMeasured(made.heel.splitMostMm)} at the most; its card says how much round the edge.` : "At its edge it is as thick as the seat stands off a flat board: try it on, pare, try again."),
      split && "Lay it on dry and set the heel on the block, until nothing rocks.",
      "Roughen the sole's grain under the heel, and every face of lifts and top pieces that meets another; brush the dust off.",
      "First coat on all of them, thin.",
    ),
    needs: { goods: [...leathers(facts), cement], tools: ["skiving knife", "paring stone", "thickness gauge", "heel block", "rasp", "abrasive paper", "steel rule", "vacuum cleaner", ...cementTools[cement]] },
    right: split ? ["A steel rule on edge across the seat touches from side to side and from back to breast."] : ["The seat is flat under a steel rule, and dull all over."],
    fails: [...(split ? ["Left out: a gap at the edge that no cement fills."] : []), "Coated over smooth grain: a lift comes off at the first kerb."],
    minutes: split ? 20 : 12,
    wait: firstCoat(cement, "the first coat on seat and lifts dries"),
    shoes: "one after the other",
    hazards: ["knife", "dust", "grinding"],
  };
}

function coat(facts: Facts): Said {
  const { cement } = facts;
  return {
    title: "Second coat on the heels",
    todo: [
      `Second coat: the sole under the heel, ${splits(facts) ? "both faces of the split lift, " : ""}every lift on both faces, the top piece on one.`,
      "Lay them out in the order in which they go on, right and left apart.",
    ],
    needs: { goods: [...leathers(facts), cement], tools: cementTools[cement] },
    right: [dryToTouch[cement]],
    fails: ["Top piece coated on its wearing face."],
    minutes: 6,
    wait: lastCoat(cement, "the second coat on seat and lifts dries"),
    shoes: "together",
    hazards: [],
  };
}

const even = ({ backMm, breastMm }: HeelLayer): boolean => Math.abs(backMm - breastMm) < 0.05;
const layerWords = (layer: HeelLayer): string => `${layer.name}: ${even(layer) ? mmMeasured(layer.backMm) : `${mmMeasured(layer.backMm)} at the back and ${mmMeasured(layer.breastMm)} at the breast`}`;

function build(facts: Facts): Said {
  const { made, settings: s, cement } = facts;
  const heel = made?.heel;
  return {
    title: "Build the heels",
    todo: those(
      those(wakeWords(cement), splits(facts) && "Split lift first, its edges flush with the sole's.").join(" ") || undefined,
      heel ? `Then, from the sole down: ${heel.layers.map(layerWords).join("; ")}. Together ${mmMeasured(heel.backMm)} at the back and ${mmMeasured(heel.breastMm)} at the breast.` : `Then lifts of ${mm(s.liftMm)}, the first pared so that the shoe stands as your last does, and the top piece of ${mm(s.topPieceMm)}.`,
      `Centre each on the line from seat to waist, not on the toe. Press, pare flat on the block, hammer; only then the next.`,
      heelNailWords(facts),
      `Top piece last, even all over. The heel runs in by ${mm(s.heelTaperMm)} toward the ground.`,
      "The same layer on the other shoe before you go on.",
    ),
    needs: { goods: [...leathers(facts), "heel nails"], tools: ["heel block", "lasting hammer", "nail set", "nippers", "clicking knife", "level plate", ...wakeTools(cement)] },
    right: ["On a flat table the shoe does not rock and the tread touches.", "Both heels are equally high within 0.5 mm and stand upright from behind."],
    fails: ["Lifts not pared flat before the next: the heel leans.", "Nails too long, or near the edge where the rasp meets them.", "Cement that closed before its layer's turn: coat it again and wait."],
    minutes: 22,
    wait: bondHolds(cement, "the heels' cement comes to its first strength", overnightMin),
    shoes: "one after the other",
    hazards: ["hammer and nails", "knife", "dust", ...wakeHazards(cement)],
  };
}

function level({ settings: s, made }: Facts): Said {
  return {
    title: "Level the heels",
    todo: [
      `Rasp sole edge and lifts together: ${mm(s.heelOverMm)} of lift and ${mm(s.soleFinishHeelMm)} of sole go, down to the line of the upper.`,
      `Cut the breast square to the line from seat to waist${s.breastHollowMm > 0 ? `, hollowed by ${mm(s.breastHollowMm)}` : ""}.`,
      `Set both shoes on a level plate and rub the top pieces until neither rocks${made?.heel ? ` and lifts and top piece measure ${mmMeasured(made.heel.backMm)} together at the back and ${mmMeasured(made.heel.breastMm)} at the breast` : ""}.`,
    ],
    needs: { goods: [], tools: ["rasp", "abrasive paper", "clicking knife", "heel block", "steel rule", "level plate", "vacuum cleaner"] },
    right: ["Heel heights agree within 0.5 mm.", "The breast stands at right angles to the waist's line on both."],
    fails: ["Rasped down to a nail.", "Made level one at a time: one is always lower than the other."],
    minutes: 12,
    shoes: "one after the other",
    hazards: ["dust", "grinding", "knife"],
  };
}

import type { HeelLayer } from "#pieces/bottom/heel-stack.ts";
import { bondHolds, cementTools, dryToTouch, lastCoat, overnightMin } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { may, type MayStep, type Said } from "./plan.ts";
import { mm, mmMeasured, those } from "./words.ts";

/** The heel built on the sole, layer by layer, to the height at which the last stands. */
export function heelSteps(facts: Facts): readonly MayStep[] {
  const { made, has } = facts;
  // What was traced without a last has no height to build to: the maker's own last says it.
  const heel = !made?.heel || made.heel.layers.length > 0 || has("split lift");
  return [
    may("pare-split-lifts", "heel", ["trim-soles"], heel && (!made?.heel || has("split lift")), () => split(facts)),
    may("coat-heels", "heel", ["trim-soles", "pare-split-lifts"], heel, () => coat(facts)),
    may("build-heels", "heel", ["coat-heels"], heel, () => build(facts)),
    may("level-heels", "heel", ["build-heels"], heel, () => level(facts)),
  ];
}

function split({ made, settings: s }: Facts): Said {
  return {
    title: "Pare the split lifts",
    todo: those(
      `A horseshoe ${mm(s.splitLiftWideMm)} wide of ${mm(s.splitLiftMm)} leather levels the round seat. Pare it to nothing inside.`,
      made?.heel ? `At its edge it is as thick as the seat stands off: the card tells how much round the edge, ${mmMeasured(made.heel.splitMostMm)} at the most.` : "At its edge it is as thick as the seat stands off a flat board: try it on, pare, try again.",
      "Lay it on dry and set the shoe's heel on the block until nothing rocks.",
    ),
    needs: { goods: ["heel leather"], tools: ["skiving knife", "paring stone", "thickness gauge", "heel block"] },
    right: ["A straight edge across the seat touches all the way, from side to side and from back to breast."],
    fails: ["Left out: a gap at the edge that no paste fills."],
    minutes: 20,
    shoes: "one after the other",
    hazards: ["knife"],
  };
}

function coat({ has, made }: Facts): Said {
  return {
    title: "Coat the heels",
    todo: those(
      "Roughen the sole's grain under the heel, and every face of lifts and top pieces that meets another; brush the dust off.",
      `Coat all of them thinly: the sole, ${!made || has("split lift") ? "both faces of the split lift, " : ""}every lift on both faces, the top piece on one. A second thin coat where leather drinks the first at once.`,
      "Lay them out in the order in which they go on, right and left apart.",
    ),
    needs: { goods: ["heel leather", "contact cement"], tools: ["rasp", "abrasive paper", "dust mask", ...cementTools] },
    right: [dryToTouch],
    fails: ["Coated over the smooth grain: a lift comes off at the kerb."],
    minutes: 10,
    wait: lastCoat("the cement on lifts and seat dries"),
    shoes: "together",
    hazards: ["solvent cement", "dust"],
  };
}

const even = ({ backMm, breastMm }: HeelLayer): boolean => Math.abs(backMm - breastMm) < 0.05;
const layerWords = (layer: HeelLayer): string => `${layer.name} ${even(layer) ? mmMeasured(layer.backMm) : `${mmMeasured(layer.backMm)} at the back and ${mmMeasured(layer.breastMm)} at the breast`}`;

/** So much of a nail's way is left over, so that its point stays out of the insole, mm. */
const nailShortMm = 0.5;

/** The longest nail through the first layer that ends before the insole: through it, sole and second board, at the thinnest place; whole mm. */
export function longestNailMm({ made, settings: s }: Pick<Facts, "made" | "settings">): number {
  const first = made?.heel?.layers[0];
  const layerMm = first ? Math.min(first.backMm, first.breastMm) : s.liftMm;
  return Math.floor(layerMm + s.soleMm + s.secondBoardMm - nailShortMm);
}

function build(facts: Facts): Said {
  const { made, settings: s, has } = facts;
  const heel = made?.heel;
  const nailMm = longestNailMm(facts);
  return {
    title: "Build the heels",
    todo: those(
      (!made || has("split lift")) && "Split lift first, its edges flush with the sole's.",
      heel ? `Then, from the sole down: ${heel.layers.map(layerWords).join(", ")}. Together ${mmMeasured(heel.backMm)} at the back and ${mmMeasured(heel.breastMm)} at the breast.` : `Then lifts of ${mm(s.liftMm)}, the first pared so that the shoe stands as your last does, and the top piece of ${mm(s.topPieceMm)}.`,
      `Centre each on the line from seat to waist, not on the toe. Press, pare flat on the block, hammer; only then the next.`,
      `Nails at the crosses, none over another, well inside the edge. From the first layer up to the insole it is little: no nail there longer than ${mm(nailMm)}. Sink the heads.`,
      `Top piece last, even all over. The heel runs in by ${mm(s.heelTaperMm)} toward the ground.`,
      "The same layer on the other shoe before you go on.",
    ),
    needs: { goods: ["heel leather", "heel nails"], tools: ["heel block", "lasting hammer", "nail set", "nippers", "clicking knife", "goggles"] },
    right: ["On a flat table the shoe does not rock and the tread touches.", "Both heels are equally high within 0.5 mm and stand upright from behind."],
    fails: ["Lifts not pared flat before the next: the heel leans.", "Nails too long, or near the edge where the rasp meets them."],
    minutes: 25,
    wait: bondHolds("the heels' cement comes to its first strength", overnightMin),
    shoes: "one after the other",
    hazards: ["hammer and nails", "knife"],
  };
}

function level({ settings: s, made }: Facts): Said {
  return {
    title: "Level the heels",
    todo: [
      `Rasp sole edge and lifts together: ${mm(s.heelOverMm)} of lift and ${mm(s.soleFinishHeelMm)} of sole go, down to the line of the upper.`,
      `Cut the breast square to the line from seat to waist${s.breastHollowMm > 0 ? `, hollowed by ${mm(s.breastHollowMm)}` : ""}.`,
      `Set both shoes on a level plate and rub the top pieces until neither rocks${made?.heel ? ` and sole to ground is ${mmMeasured(made.heel.backMm)} at the back` : ""}.`,
    ],
    needs: { goods: [], tools: ["rasp", "abrasive paper", "clicking knife", "heel block", "steel rule", "dust mask"] },
    right: ["Heel heights agree within 0.5 mm.", "The breast stands at right angles to the waist's line on both."],
    fails: ["Rasped down to a nail.", "Made level one at a time: one is always lower than the other."],
    minutes: 12,
    shoes: "one after the other",
    hazards: ["dust", "grinding", "knife"],
  };
}

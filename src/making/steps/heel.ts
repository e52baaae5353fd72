import { listed } from "#base/listed.ts";
import type { HeelLayer } from "#pieces/bottom/heel-stack.ts";
import type { GoodId } from "../goods.ts";
import { bondHolds, cementTools, dryToTouch, firstCoat, lastCoat, overnightMin, wakeHazards, wakeTools, wakeWords, withSource } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { heelNailed, heelNailWords } from "./heel-nails.ts";
import { may, type MayStep, type Said } from "./plan.ts";
import { mm, mmMeasured, those } from "./words.ts";

/** The heel built on the sole, layer by layer, to the height at which the last stands. */
export function heelSteps(facts: Facts): readonly MayStep[] {
  const { heel } = facts;
  return [
    may("prime-heels", "heel", ["trim-soles"], heel, () => prime(facts)),
    may("coat-heels", "heel", ["prime-heels"], heel, () => coat(facts)),
    may("build-heels", "heel", ["coat-heels"], heel, () => build(facts)),
    may("level-heels", "heel", ["build-heels"], heel, () => level(facts)),
  ];
}

/** Layers beyond the usual lift and top piece, each of which takes its time. */
const moreLayers = ({ made }: Facts): number => Math.max(0, (made?.heel?.layers.length ?? 0) - 2);
/** So many layers are built while solvent cement is open (our own); of more the next ones are coated meanwhile. */
const layersAtOnce = 3;
const coatedInTurn = (facts: Facts): boolean => facts.cement === "contact cement" && 2 + moreLayers(facts) > layersAtOnce;

/** Without a last nobody knows whether the seat is round: it is tried on. */
const splits = ({ made, has }: Facts): boolean => !made?.heel || has("split lift");

/** Leathers of the layers that this heel has; none where no heel is built. */
export const heelLeathers = (facts: Facts): readonly GoodId[] => {
  if (!facts.heel) return [];
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
      !made && `Cut lifts of ${mm(s.liftMm)} and top pieces of ${mm(s.topPieceMm)} from the seat's outline with ${mm(s.heelOverMm)} beyond it, as many as your last's height asks for.`,
      split && `A horseshoe ${mm(s.splitLiftWideMm)} wide, of ${mm(s.splitLiftMm)} leather, levels the round seat: pare it to nothing inside.`,
      split && (made?.heel ? `At its edge it is as thick as the seat stands off, ${mmMeasured(made.heel.splitMostMm)} at the most; its card says how much round the edge.` : "At its edge it is as thick as the seat stands off a flat board: try it on, pare, try again."),
      split && "Lay it on dry and set the heel on the block, until nothing rocks.",
      "Roughen the sole's grain under the heel, and every face of lifts and top pieces that meets another; brush the dust off.",
      "First coat on all of them, thin.",
    ),
    needs: { goods: [...heelLeathers(facts), cement], tools: [...(made ? [] : (["clicking knife", "cutting board"] as const)), "skiving knife", "paring stone", "thickness gauge", "heel block", "rasp", "abrasive paper", "steel rule", "vacuum cleaner", ...cementTools[cement]] },
    right: split ? ["A steel rule on edge across the seat touches from side to side and from back to breast."] : ["The seat is flat under a steel rule, and dull all over."],
    fails: [...(split ? ["Left out: a gap at the edge that no cement fills."] : []), "Coated over smooth grain: a lift comes off at the first kerb."],
    minutes: (split ? 20 : 12) + 2 * moreLayers(facts) + (made ? 0 : 10),
    wait: firstCoat(cement, "the first coat on seat and lifts dries"),
    shoes: "one after the other",
    hazards: ["knife", "dust", "grinding"],
  };
}

function coat(facts: Facts): Said {
  const { cement } = facts;
  return {
    title: "Second coat on the heels",
    todo: those(
      `Second coat: the sole under the heel, ${splits(facts) ? "both faces of the split lift, " : ""}every lift on both faces, the top piece on one.`,
      "Lay them out in the order in which they go on, right and left apart.",
      coatedInTurn(facts) && `Of so many layers coat the lowest ${layersAtOnce} first, and the next ones while you build: none may wait until its cement has closed.`,
    ),
    needs: { goods: [...heelLeathers(facts), cement], tools: cementTools[cement] },
    right: [dryToTouch[cement]],
    fails: ["Top piece coated on its wearing face."],
    minutes: 6 + moreLayers(facts),
    wait: lastCoat(cement, "the second coat on seat and lifts dries"),
    shoes: "together",
    hazards: [],
  };
}

const even = ({ backMm, breastMm }: HeelLayer): boolean => Math.abs(backMm - breastMm) < 0.05;
const thickness = (layer: HeelLayer): string => (even(layer) ? mmMeasured(layer.backMm) : `${mmMeasured(layer.backMm)} at the back and ${mmMeasured(layer.breastMm)} at the breast`);

/** Layers that are alike are told together: "lift 2, lift 3 and lift 4: 5 mm each". */
function layersToLay(layers: readonly HeelLayer[]): string {
  const told: (readonly [HeelLayer, readonly string[]])[] = [];
  for (const layer of layers) {
    const last = told.at(-1);
    if (last && even(layer) && layer.name !== "top piece" && thickness(last[0]) === thickness(layer)) told[told.length - 1] = [layer, [...last[1], layer.name]];
    else told.push([layer, [layer.name]]);
  }
  return told.map(([layer, names]) => `${listed(names)}: ${thickness(layer)}${names.length > 1 ? " each" : ""}`).join("; ");
}

function build(facts: Facts): Said {
  const { made, settings: s, cement } = facts;
  const heel = made?.heel, nailed = heelNailed(facts), turns = coatedInTurn(facts);
  return {
    title: "Build the heels",
    todo: those(
      those(wakeWords(cement), splits(facts) && "Split lift first, its edges flush with the sole's.").join(" ") || undefined,
      heel ? `Then, from the sole down: ${layersToLay(heel.layers)}. Together ${mmMeasured(heel.backMm)} at the back and ${mmMeasured(heel.breastMm)} at the breast.` : `Then lifts of ${mm(s.liftMm)}, the first pared so that the shoe stands as your last does, and the top piece of ${mm(s.topPieceMm)}.`,
      `Centre each on the line from seat to waist, not on the toe. Press, pare flat on the block, hammer; only then the next.`,
      heelNailWords(facts),
      `Top piece last, even all over. The heel runs in by ${mm(s.heelTaperMm)} toward the ground.`,
      "The same layer on the other shoe before you go on.",
    ),
    needs: { goods: [...heelLeathers(facts), ...(nailed ? (["heel nails"] as const) : []), ...(turns ? [cement] : [])], tools: ["heel block", "lasting hammer", ...(nailed ? (["nail set", "nippers"] as const) : []), "clicking knife", "level plate", ...(turns ? cementTools[cement] : []), ...wakeTools(cement)] },
    right: ["On a flat table the shoe does not rock and the tread touches.", "Both heels are equally high within 0.5 mm and stand upright from behind."],
    fails: ["Lifts not pared flat before the next: the heel leans.", ...(nailed ? ["Nails too long, or near the edge where the rasp meets them."] : []), "Cement that closed before its layer's turn: coat it again and wait."],
    minutes: Math.min(40, 22 + 4 * moreLayers(facts)),
    wait: withSource(bondHolds(cement, "the heels' cement comes to its first strength", overnightMin), "that lifts are built with cement: common practice, no source"),
    // Layer by layer, from one shoe to the other: neither waits for the whole of the other heel.
    shoes: "together",
    hazards: ["hammer and nails", "knife", "dust", ...wakeHazards(cement)],
  };
}

function level(facts: Facts): Said {
  const { settings: s, made } = facts;
  return {
    title: "Level the heels",
    todo: [
      `Rasp sole edge and lifts together: ${mm(s.heelOverMm)} of lift and ${mm(s.soleFinishHeelMm)} of sole go, down to the line of the upper.`,
      `Cut the breast square to the line from seat to waist${s.breastHollowMm > 0 ? `, hollowed by ${mm(s.breastHollowMm)}` : ""}.`,
      `Set both shoes on a level plate and rub the top pieces until neither rocks${made?.heel ? ` and lifts and top piece measure ${mmMeasured(made.heel.backMm)} together at the back and ${mmMeasured(made.heel.breastMm)} at the breast` : ""}.`,
    ],
    needs: { goods: [], tools: ["rasp", "abrasive paper", "clicking knife", "heel block", "steel rule", "level plate", "vacuum cleaner"] },
    right: ["Heel heights agree within 0.5 mm.", "The breast stands at right angles to the waist's line on both."],
    fails: [...(heelNailed(facts) ? ["Rasped down to a nail."] : []), "Made level one at a time: one is always lower than the other."],
    minutes: 12,
    shoes: "one after the other",
    hazards: ["dust", "grinding", "knife"],
  };
}

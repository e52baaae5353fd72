import { corkFor } from "../needs/bottom.ts";
import { bondHolds, cementTools, dryToTouch, firstCoat, lastCoat, wakeHazards, wakeTools, wakeWords } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { may, type MayStep, type Said } from "./plan.ts";
import { counted, mm, mmMeasured, those } from "./words.ts";

/** The hollow between the margins filled; each wait of its cement stands between two steps. */
export function fillerSteps(facts: Facts): readonly MayStep[] {
  const hollow = facts.has("bottom filler") || !facts.made;
  return [
    may("fit-fillers", "bottoming", ["rough-bottoms", "cut-bottom"], hollow, () => fit(facts)),
    may("coat-fillers", "bottoming", ["fit-fillers"], hollow, () => coat(facts)),
    may("fill-bottoms", "bottoming", ["coat-fillers"], hollow, () => fill(facts)),
  ];
}

/** Which sheet fills the hollow, as the list of needs counts it. */
function corkWords(mostMm: number): string {
  const { sheetMm, layers } = corkFor(mostMm);
  return layers > 1 ? `${counted(layers, "layer")} of cork of ${mm(sheetMm)} fill it, stuck on each other` : `cork of ${mm(sheetMm)} fills it`;
}

const layersOf = ({ made }: Facts): number => (made?.filler?.depth ? corkFor(made.filler.depth.mostMm).layers : 1);

function fit({ made, settings: s, cement }: Facts): Said {
  const depth = made?.filler?.depth;
  return {
    title: "Fit the fillers and prime the hollows",
    todo: those(
      made ? "Lay the filler dry between the margins and trim it to them: yours may differ from the card." : "Cut cork or felt to lie between the margins; take its outline off the shoe with paper.",
      depth && `The hollow is up to ${mmMeasured(depth.mostMm)} deep, ${mmMeasured(depth.mostFromSeatMm)} from the seat; the card tells how deep at each cross: ${corkWords(depth.mostMm)}, or felt as thick. What stands up is rasped off once it is stuck.`,
      !depth && `It is as thick as the margins stand up: upper and lining are ${mm(s.upperThicknessMm + s.liningThicknessMm)}, and a little for what stiffens heel and toe.`,
      "First coat on the hollow alone, thin; the filler waits for the second.",
    ),
    needs: { goods: ["filler", cement], tools: ["clicking knife", "cutting board", ...cementTools[cement]] },
    right: ["Between filler and margins no gap is wider than a millimetre, and nothing laps."],
    fails: ["Laid over the pleats instead of between them."],
    minutes: 6,
    wait: firstCoat(cement, "the first coat in the hollow dries"),
    shoes: "together",
    hazards: ["knife"],
  };
}

function coat(facts: Facts): Said {
  const { cement } = facts;
  return {
    title: "Coat hollows and fillers",
    todo: [`Second coat on the hollow, and one on the filler, thin and to the edge${layersOf(facts) > 1 ? "; one on each face of its layers that meet, too" : ""}.`, "Lay the fillers beside their shoes, right and left apart, and look at the clock."],
    needs: { goods: ["filler", cement], tools: cementTools[cement] },
    right: [dryToTouch[cement]],
    fails: ["Cement run onto the margins: it clogs the paper when they are sanded."],
    minutes: 5,
    wait: lastCoat(cement, "the coats on hollow and filler dry"),
    shoes: "together",
    hazards: [],
  };
}

function fill({ cement }: Facts): Said {
  return {
    title: "Fill the bottoms",
    todo: those(wakeWords(cement), "Lay each filler in from one end, so that no air is trapped, and roll it down from the middle outward."),
    needs: { goods: ["filler"], tools: ["roller", ...wakeTools(cement)] },
    right: ["Level with the margins or a little above; the rest is rasped off."],
    fails: ["Left high in the middle: the sole rounds and the shoe rocks."],
    minutes: 5,
    wait: bondHolds(cement, "the filler's cement sets before it is sanded", 60),
    shoes: "together",
    hazards: wakeHazards(cement),
  };
}

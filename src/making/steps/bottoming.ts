import { draftOrder } from "#pieces/draft-order.ts";
import { tacksOfInsole } from "../needs/nails.ts";
import { bondHolds, cementTools, dryToTouch, firstCoat, lastCoat, overnightMin, wakeHazards, wakeTools, wakeWords } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { fillerSteps } from "./fillers.ts";
import { must, type MayStep, type Said } from "./plan.ts";
import { mm, those } from "./words.ts";

/** Margins stuck down, the hollow filled, soles on. */
export const bottomingSteps = (facts: Facts): readonly MayStep[] => [
  must("open-margins", "bottoming", ["last-toes"], () => openMargins(facts)),
  must("coat-margins", "bottoming", ["open-margins"], () => coatMargins(facts)),
  must("press-margins", "bottoming", ["coat-margins"], () => pressMargins(facts)),
  must("rough-bottoms", "bottoming", ["press-margins"], () => rough(facts)),
  ...fillerSteps(facts),
  must("prime-soles", "bottoming", ["rough-bottoms", "fill-bottoms", "cut-bottom"], () => prime(facts)),
  must("coat-soles", "bottoming", ["prime-soles"], () => coatSoles(facts)),
  must("lay-soles", "bottoming", ["coat-soles"], () => lay(facts)),
  must("trim-soles", "bottoming", ["lay-soles"], () => trim(facts)),
];

/** So long a margin may stand without its nails, minutes (common practice, no source). */
const openMarginMin = 2 * 60;

function openMargins({ settings: s, cement }: Facts): Said {
  return {
    title: "Open the margins and prime them",
    todo: [
      `From here to the pressed margins it is one go, about ${cement === "contact cement" ? "an hour and a half" : "two hours and a half"}: what lies open creeps back. Have that long before you begin.`,
      `Leave the ${draftOrder.length} tacks of the drafts in. Draw the nails between them, stretch by stretch, drop them in a dish and count.`,
      "Lift the margin; brush its flesh side and the roughened insole beneath clean before you open the cement.",
      `First coat on margin and insole, thin, from the feather line inward, ${mm(s.marginLeftMm)} wide and a little more; between lining and upper too.`,
    ],
    needs: { goods: [cement], tools: ["tack lifter", "nippers", "wire brush", ...cementTools[cement]] },
    right: ["No cement over the feather line: on the upper it stays for good.", "Throat and back have not moved."],
    fails: ["All tacks out at once: the upper creeps back before anything holds it.", "Grain or dust under the cement: it lets go beneath the sole."],
    minutes: 20,
    // A first coat keeps; a margin without its nails does not.
    wait: { ...firstCoat(cement, "the first coat on the margins dries"), mostMin: openMarginMin },
    shoes: "together",
    hazards: ["hammer and nails", "dust"],
  };
}

function coatMargins({ cement }: Facts): Said {
  return {
    title: "Second coat on the margins",
    todo: ["Second coat on margin and insole, and between lining and upper, thin and even.", "Keep margin and insole apart until it is dry. Look at the clock: you press both shoes in one go."],
    needs: { goods: [cement], tools: cementTools[cement] },
    right: [dryToTouch[cement]],
    fails: ["Pressed down wet: what is wet stays in, and the margin slides."],
    minutes: 5,
    wait: lastCoat(cement, "the second coat on the margins dries"),
    shoes: "together",
    hazards: [],
  };
}

function pressMargins({ cement }: Facts): Said {
  return {
    title: "Press the margins down and draw the tacks",
    todo: those(
      wakeWords(cement),
      "Waist, joints, heel, then the toe: pull each stretch once more to where it was, press it down and hammer it flat.",
      `Draw the tacks of the drafts one at a time as their stretch is stuck, and the ${tacksOfInsole} of each insole.`,
      `Lay all tacks and nails in rows of ten. As many must lie there as you wrote down for each shoe, and the ${2 * tacksOfInsole} of the insoles.`,
      "Lay throat and back against their marks once more.",
    ),
    needs: { goods: [], tools: ["lasting pincers", "lasting hammer", "tack lifter", "nippers", ...wakeTools(cement)] },
    right: ["Every tack and nail is out, by number.", "A thumb pushed against the margin moves nothing."],
    fails: ["A tack left in: the last sticks, or the foot finds it."],
    minutes: 20,
    wait: bondHolds(cement, "the margins' cement comes to its first strength", 60),
    shoes: "one after the other",
    hazards: ["hammer and nails", "lasting pincers", ...wakeHazards(cement)],
  };
}

function rough({ settings: s }: Facts): Said {
  return {
    title: "Trim and roughen the margins",
    todo: [
      `Trim the margin to ${mm(s.marginLeftMm)} all round. Pare pleats level: upper at the top, lining and stiffening a step shorter.`,
      "Draw a pencil line a hair inside the feather edge, all round.",
      "Take finish and grain off the margin up to that line with rasp, wire brush or paper, until it is dull and fibrous; then brush off every grain of dust.",
    ],
    needs: { goods: [], tools: ["skiving knife", "rasp", "wire brush", "abrasive paper", "pencil", "steel rule", "vacuum cleaner"] },
    right: ["A steel rule on edge across the bottom rests on both margins.", "No shiny grain inside the line, none roughened outside it."],
    fails: ["Roughened past the line: the scar shows for ever.", "Cut into the feather edge while paring: the upper opens there in wear."],
    minutes: 14,
    shoes: "one after the other",
    hazards: ["knife", "dust", "grinding"],
  };
}

function prime({ settings: s, cement, made }: Facts): Said {
  return {
    title: "Roughen and prime soles and bottoms",
    todo: those(
      !made && `Draw round each lasted shoe on bend of ${mm(s.soleMm)} and cut its outsole, ${mm(s.soleFinishForepartMm)} larger at the forepart, ${mm(s.soleFinishWaistMm)} at the waist and ${mm(s.soleFinishHeelMm)} at the heel; the grain will walk on the ground.`,
      "Rasp and sand filler and margins to one level surface: what stands above goes, the margin keeps its leather.",
      `Roughen the flesh side of the soles (${mm(s.soleMm)}) all over and brush them and the bottoms clean, outdoors or with the dust drawn off.`,
      "First coat, thin, on both: sole to the edge, bottom to the pencil line. It sinks in and primes.",
    ),
    needs: { goods: [cement, "sole leather"], tools: [...(made ? [] : (["clicking knife", "cutting board", "pencil"] as const)), "rasp", "abrasive paper", "wire brush", "steel rule", "vacuum cleaner", ...cementTools[cement]] },
    right: ["A steel rule on edge across the bottom touches both margins and the filler, everywhere.", "Dull all over once dry: no bare and no shiny place."],
    fails: ["Dust left on: cement holds the dust and the dust holds nothing."],
    minutes: made ? 13 : 25,
    wait: firstCoat(cement, "the first coat dries"),
    shoes: "together",
    hazards: [...(made ? [] : (["knife"] as const)), "dust", "grinding"],
  };
}

function coatSoles({ cement }: Facts): Said {
  return {
    title: "Second coat on soles and bottoms",
    todo: [
      "Second coat on both faces, thin and even, from the middle to the edge.",
      "Lay soles and shoes side by side, faces up, where no dust falls. Look at the clock.",
    ],
    needs: { goods: [cement, "sole leather"], tools: cementTools[cement] },
    right: ["It shines evenly.", dryToTouch[cement]],
    fails: ["Heat to hurry it: a skin closes over wet cement."],
    minutes: 8,
    wait: lastCoat(cement, "the second coat dries"),
    shoes: "together",
    hazards: [],
  };
}

function lay({ settings: s, cement }: Facts): Said {
  return {
    title: "Lay the soles",
    todo: those(
      wakeWords(cement),
      "Hold the sole above the shoe, centre over centre at toe and seat. It sticks at the first touch: take your time before it.",
      `Set the toe first with even edges, then the waist, then the heel: ${mm(s.soleFinishForepartMm)} stand out at the forepart, ${mm(s.soleFinishWaistMm)} at the waist, ${mm(s.soleFinishHeelMm)} at the heel.`,
      "Press from the middle outward, then hammer all over, ten to twenty seconds a place; close the edge with the pincers' side.",
      cement === "contact cement" && "If it was open too long, close the tin, carry it out, warm the dry cement to wake it and press at once.",
    ),
    needs: { goods: ["sole leather"], tools: ["lasting hammer", "rubbing stick", "roller", "hair dryer"] },
    right: ["Sole edges stand out alike on both shoes, within 0.5 mm.", "A knife's point goes in nowhere between sole and upper."],
    fails: ["Begun at the heel: it ends a finger's breadth off at the toe.", "Pulled off and laid again: that bond is spent, begin with a new coat."],
    minutes: 14,
    wait: bondHolds(cement, "the soles' cement comes to its first strength", overnightMin),
    shoes: "one after the other",
    hazards: ["hammer and nails", "heat"],
  };
}

function trim({ settings: s, heel }: Facts): Said {
  return {
    title: "Trim the soles",
    todo: [
      `Cut the edge upright with a fresh blade to an even margin: of the ${mm(s.soleFinishForepartMm)} at the forepart leave what you want to see and half a millimetre to rasp; the waist stays close, ${mm(s.soleFinishWaistMm)} at the most.`,
      heel ? "Leave the heel until the lifts are on." : `At the heel, where no lift comes, cut away the ${mm(s.soleFinishHeelMm)} that stand out, down to the line of the upper.`,
      "Guard the upper: a strip of card between it and the blade, goggles on, the holding hand behind the knife.",
      "Hold right and left sole to sole and correct the larger one.",
    ],
    needs: { goods: ["sole leather"], tools: ["clicking knife", "sharpening stone", "cut-resistant glove", "rasp"] },
    right: ["Sole to sole they cover each other within 0.5 mm."],
    fails: [heel ? "Cut to the feather before the heel is on." : "Cut in under the upper at the heel: nothing is put on there that hides it.", "One slip of the knife into the upper: cut along, never towards it."],
    minutes: 10,
    shoes: "one after the other",
    hazards: ["knife", "dust", "grinding"],
  };
}

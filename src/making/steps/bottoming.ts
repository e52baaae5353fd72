import { draftOrder } from "#pieces/draft-order.ts";
import { bondHolds, cementTools, dryToTouch, firstCoat, lastCoat, overnightMin } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { mm, mmMeasured, those } from "./words.ts";

/** Margins stuck down, the hollow filled, soles on. */
export const bottomingSteps = (facts: Facts): readonly MayStep[] => [
  must("open-margins", "bottoming", ["last-toes"], () => openMargins(facts)),
  must("coat-margins", "bottoming", ["open-margins"], coatMargins),
  must("press-margins", "bottoming", ["coat-margins"], pressMargins),
  must("rough-bottoms", "bottoming", ["press-margins"], () => rough(facts)),
  may("fill-bottoms", "bottoming", ["rough-bottoms", "cut-bottom"], facts.has("bottom filler") || !facts.made, () => fill(facts)),
  must("prime-soles", "bottoming", ["rough-bottoms", "fill-bottoms", "cut-bottom"], () => prime(facts)),
  must("coat-soles", "bottoming", ["prime-soles"], coatSoles),
  must("lay-soles", "bottoming", ["coat-soles"], () => lay(facts)),
  must("trim-soles", "bottoming", ["lay-soles"], () => trim(facts)),
];

function openMargins({ settings: s }: Facts): Said {
  return {
    title: "Open the margins and prime them",
    todo: [
      `Leave the ${draftOrder.length} tacks of the drafts in. Draw the nails between them, stretch by stretch, drop them in a dish and count.`,
      "Lift the margin; roughen its flesh side and the insole beneath; brush the dust off before you open the cement.",
      `First coat on both, thin, from the feather line inward, ${mm(s.marginLeftMm)} wide and a little more; between lining and upper too.`,
    ],
    needs: { goods: ["contact cement"], tools: ["tack lifter", "nippers", "abrasive paper", ...cementTools] },
    right: ["No cement over the feather line: on the upper it stays for good.", "Throat and back have not moved."],
    fails: ["All tacks out at once: the upper creeps back before anything holds it.", "Grain or dust under the cement: it lets go beneath the sole."],
    minutes: 12,
    wait: firstCoat("the first coat on the margins dries"),
    shoes: "together",
    hazards: ["solvent cement", "hammer and nails", "dust"],
  };
}

function coatMargins(): Said {
  return {
    title: "Second coat on the margins",
    todo: ["Second coat on margin and insole, thin and even.", "Keep margin and insole apart until it is dry. Look at the clock: you press both shoes in one go."],
    needs: { goods: ["contact cement"], tools: cementTools },
    right: [dryToTouch],
    fails: ["Pressed down wet: the solvent stays in and the margin slides."],
    minutes: 5,
    wait: lastCoat("the second coat on the margins dries"),
    shoes: "together",
    hazards: ["solvent cement"],
  };
}

function pressMargins(): Said {
  return {
    title: "Press the margins down and draw the tacks",
    todo: [
      "Waist, joints, heel, then the toe: pull each stretch once more to where it was, press it down and hammer it flat.",
      "Draw the tacks of the drafts one at a time as their stretch is stuck, and the three of each insole.",
      "Lay all tacks and nails in rows of ten. As many must lie there as you wrote down for each shoe, and the six of the insoles.",
      "Lay throat and back against their marks once more.",
    ],
    needs: { goods: [], tools: ["lasting pincers", "lasting hammer", "tack lifter", "nippers", "goggles"] },
    right: ["Every tack and nail is out, by number.", "A thumb pushed against the margin moves nothing."],
    fails: ["A tack left in: the last sticks, or the foot finds it."],
    minutes: 20,
    wait: bondHolds("the margins' cement comes to its first strength", 60),
    shoes: "one after the other",
    hazards: ["hammer and nails", "lasting pincers"],
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
    needs: { goods: [], tools: ["skiving knife", "rasp", "wire brush", "abrasive paper", "pencil", "dust mask", "goggles"] },
    right: ["A straight edge laid across rests on both margins.", "No shiny grain inside the line, none roughened outside it."],
    fails: ["Roughened past the line: the scar shows for ever.", "Cut into the feather edge while paring: the upper opens there in wear."],
    minutes: 15,
    shoes: "one after the other",
    hazards: ["knife", "dust", "grinding"],
  };
}

function fill({ made, settings: s }: Facts): Said {
  const depth = made?.filler?.depth;
  return {
    title: "Fill the bottoms",
    todo: those(
      made ? "Lay the filler dry between the margins and trim it to them: yours may differ from the card." : "Cut cork or felt to lie between the margins; take its outline off the shoe with paper.",
      depth && `It is up to ${mmMeasured(depth.mostMm)} thick, thickest ${mmMeasured(depth.mostFromSeatMm)} from the seat; the card tells how thick at each cross.`,
      !depth && `It is as thick as the margins stand up: upper and lining are ${mm(s.upperThicknessMm + s.liningThicknessMm)}, and a little for what stiffens heel and toe.`,
      "Coat the hollow; ten minutes later coat it again, and the filler. When both are dry to the touch lay the filler in and roll it down.",
    ),
    needs: { goods: ["filler", "contact cement"], tools: ["clicking knife", "roller", ...cementTools] },
    right: ["Level with the margins or a hair above; the rest is sanded off."],
    fails: ["Thick all over: the sole rounds and the shoe rocks.", "Laid over the pleats instead of between them."],
    minutes: 13,
    wait: bondHolds("the filler's cement sets before it is sanded", 60),
    shoes: "together",
    hazards: ["solvent cement", "knife"],
  };
}

function prime({ settings: s }: Facts): Said {
  return {
    title: "Roughen and prime soles and bottoms",
    todo: [
      "Sand filler and margins to one level surface.",
      `Roughen the flesh side of the soles (${mm(s.soleMm)}) all over and brush them and the bottoms clean, outdoors or with the dust drawn off.`,
      "First coat, thin, on both: sole to the edge, bottom to the pencil line. It sinks in and primes.",
    ],
    needs: { goods: ["contact cement", "sole leather"], tools: ["abrasive paper", "wire brush", "dust mask", ...cementTools] },
    right: ["A straight edge across the bottom touches both margins and the filler, everywhere.", "Dull all over once dry: no bare and no shiny place."],
    fails: ["Dust left on: cement holds the dust and the dust holds nothing."],
    minutes: 13,
    wait: firstCoat("the first coat dries"),
    shoes: "together",
    hazards: ["dust", "solvent cement", "grinding"],
  };
}

function coatSoles(): Said {
  return {
    title: "Second coat on soles and bottoms",
    todo: [
      "Second coat on both faces, thin and even, from the middle to the edge.",
      "Lay soles and shoes side by side, faces up, where no dust falls. Look at the clock.",
    ],
    needs: { goods: ["contact cement", "sole leather"], tools: cementTools },
    right: ["It shines evenly.", dryToTouch],
    fails: ["Heat to hurry it: a skin closes over wet cement."],
    minutes: 8,
    wait: lastCoat("the second coat dries"),
    shoes: "together",
    hazards: ["solvent cement"],
  };
}

function lay({ settings: s }: Facts): Said {
  return {
    title: "Lay the soles",
    todo: [
      "Hold the sole above the shoe, centre over centre at toe and seat. It sticks at the first touch: take your time before it.",
      `Set the toe first with even edges, then the waist, then the heel: ${mm(s.soleFinishForepartMm)} stand out at the forepart, ${mm(s.soleFinishWaistMm)} at the waist, ${mm(s.soleFinishHeelMm)} at the heel.`,
      "Press from the middle outward, then hammer all over, ten to twenty seconds a place; close the edge with the pincers' side.",
      "If it was open too long, warm the dry cement to wake it and press at once.",
    ],
    needs: { goods: ["sole leather"], tools: ["lasting hammer", "rubbing stick", "roller", "hair dryer"] },
    right: ["Sole edges stand out alike on both shoes, within 0.5 mm.", "A knife's point goes in nowhere between sole and upper."],
    fails: ["Begun at the heel: it ends a finger's breadth off at the toe.", "Pulled off and laid again: that bond is spent, begin with a new coat."],
    minutes: 15,
    wait: bondHolds("the soles' cement comes to its first strength", overnightMin),
    shoes: "one after the other",
    hazards: ["hammer and nails", "heat"],
  };
}

function trim({ settings: s }: Facts): Said {
  return {
    title: "Trim the soles",
    todo: [
      `Cut the edge upright with a fresh blade to an even margin: of the ${mm(s.soleFinishForepartMm)} at the forepart leave what you want to see and half a millimetre to rasp; the waist stays close, ${mm(s.soleFinishWaistMm)} at the most.`,
      "Leave the heel until the lifts are on.",
      "Guard the upper: a strip of card between it and the blade.",
      "Hold right and left sole to sole and correct the larger one.",
    ],
    needs: { goods: ["sole leather"], tools: ["clicking knife", "sharpening stone", "rasp"] },
    right: ["Sole to sole they cover each other within 0.5 mm."],
    fails: ["Cut to the feather before the heel is on.", "One slip of the knife into the upper: cut along, never towards it."],
    minutes: 12,
    shoes: "one after the other",
    hazards: ["knife"],
  };
}

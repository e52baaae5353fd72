import { bondFull } from "./cement.ts";
import type { Facts } from "./facts.ts";
import { overWords } from "./over-words.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { mm, mmMeasured, those } from "./words.ts";

/** Edges, lasts out, socks in, measured and put away. */
export const finishingSteps = (facts: Facts): readonly MayStep[] => [
  must("finish-edges", "finishing", ["trim-soles", "level-heels"], () => edges(facts)),
  must("measure-pair", "finishing", ["finish-edges"], () => measure(facts)),
  must("slip-lasts", "finishing", ["measure-pair"], () => slip(facts)),
  may("sew-bows", "finishing", ["slip-lasts", "make-bow"], facts.has("bow"), () => bows(facts)),
  may("close-straps", "finishing", ["slip-lasts"], facts.has("instep strap"), () => straps(facts)),
  must("lay-socks", "finishing", ["slip-lasts", "sew-bows", "close-straps", "cut-lining"], () => socks(facts)),
  must("box-shoes", "finishing", ["lay-socks"], () => box(facts)),
];

function edges({ heel }: Facts): Said {
  return {
    title: "Finish edges and bottoms",
    todo: [
      "Guard the upper with masking tape that comes off without taking its finish.",
      `Scrape the edges of the soles${heel ? " and heels" : ""} with glass or a blade, then paper, coarse to fine, along the edge and never across.`,
      "Damp the edge and rub it with the bone until the fibre lies down.",
      "Colour it thinly in one run and let it dry while you do the other shoe; then wax it and burnish with cloth or bone, or with an edge iron that is warm and does not hiss. The sole's grain likewise, or leave it natural.",
    ],
    needs: { goods: ["edge finish"], tools: ["rasp", "glass", "abrasive paper", "edge iron", "burnishing bone", "bowl of water", "masking tape", "edge wax", "vacuum cleaner", "gloves", "polishing cloth"] },
    right: ["A fingernail drawn along feels no ridge.", "The same margin shows all round from above, on both shoes."],
    fails: ["Scratches of coarse paper left in: colour finds every one.", "Colour on the upper: it does not come off."],
    minutes: 20,
    shoes: "one after the other",
    hazards: ["dust", "grinding", "knife", "heat"],
  };
}

function measure({ from, ends, made, heel: built }: Facts): Said {
  const { throatDepthMm, backHeightMm, innerHeightMm, outerHeightMm, over } = ends;
  const asked = `throat ${mmMeasured(throatDepthMm)}, back ${mmMeasured(backHeightMm)}${innerHeightMm !== undefined && outerHeightMm !== undefined ? `, lowest places ${mmMeasured(innerHeightMm)} inside and ${mmMeasured(outerHeightMm)} outside` : ""}`;
  const heel = made?.heel, heels = built ? "heels and sole edges" : "sole edges";
  return {
    title: "Measure the pair and write it down",
    todo: those(
      "While the lasts still hold both shoes: throat, back and lowest places with the tape along the surface, over the upper.",
      over ? `The tape should read ${overWords(ends, over)}; on the bare last that is ${asked}.` : `On the bare last that should be ${asked}; over leather the tape reads a little more.`,
      !built ? "Sole edges, how far they stand out at forepart and waist." : `Heel heights${heel ? ` (${mmMeasured(heel.backMm)} at the back and ${mmMeasured(heel.breastMm)} at the breast, lifts and top piece together)` : ""} and sole edges.`,
      from === "last" ? "Enter what you read in the log: the next pair of this leather learns from it." : "Write what you read on the card of this pattern: the next pair learns from it.",
      "Write down what you would do otherwise while you still know it.",
    ),
    needs: { goods: [], tools: ["tape measure", "dividers", "steel rule", "pencil"] },
    right: [`Right and left: throat and back within 1 mm, sides within 1.5 mm, ${heels} within 0.5 mm.`],
    fails: ["Measured only where it came out well."],
    minutes: 10,
    shoes: "one after the other",
    hazards: [],
  };
}

function slip({ heel, lasts, pairs }: Facts): Said {
  return {
    title: "Slip the lasts",
    todo: those(
      "Take out a loose block or bend the hinge, if your last has one. Hold the shoe by the heel, hook in the last's hole, and draw up and back in the line of the cone, without twisting.",
      "If it will not come, look for a tack first; warm the heel with your hands and try again.",
      `Feel the whole inside with a hand and a stocking over it, seat and toe above all: no tip of a tack${heel ? " or a heel nail" : ""} may be felt through the insole. Draw, file or clinch what you find.`,
      lasts < pairs && "The lasts are free for the next round: rub chalk and cement off, and see that every mark can be read.",
    ),
    needs: { goods: [], tools: ["last hook", "nippers"] },
    right: ["The topline keeps the form it had on the last.", "Nothing pricks, nowhere."],
    fails: ["Wrenched out sideways: the topline is stretched in one second."],
    minutes: 5,
    shoes: "one after the other",
    hazards: ["hammer and nails"],
  };
}

function bows({ settings: s }: Facts): Said {
  return {
    title: "Sew the bows on",
    todo: [
      "Sew each through its two pricks ahead of the throat, by hand, clear of the topline's stitches; knot inside and stick the knot down flat.",
      `Each is ${mm(s.bowLongMm)} long: its middle lies on the centre line.`,
    ],
    needs: { goods: ["thread", "latex"], tools: ["hand needles", "awl", "thread snips", "paste brush"] },
    right: ["Square to the centre line and equally far from the throat on both shoes, within 1 mm."],
    fails: ["Knots left standing inside: toes find them."],
    minutes: 15,
    shoes: "one after the other",
    hazards: [],
  };
}

function straps({ settings: s }: Facts): Said {
  return {
    title: "Set the straps' buttons",
    todo: [
      "With the shoe on the foot, lay the strap over the instep and mark where it closes with a finger's room beneath.",
      `The strap goes on for ${mm(s.strapOverMm)} beyond the topline: button in the middle of that, with a hole either way.`,
      "Punch the holes from the grain side and set button or buckle, on a scrap of leather inside that takes the pull.",
    ],
    needs: { goods: ["fastenings", "thread", "lining leather"], tools: ["hole punch", "awl", "hand needles", "silver pen"] },
    right: ["Both straps close at the same length and lie flat over the instep."],
    fails: ["Set by the pattern's mark alone: no two insteps are alike."],
    minutes: 15,
    shoes: "one after the other",
    hazards: ["feet"],
  };
}

const sockWords = { full: "full length", half: "half socks", heel: "heel socks" } as const;

function socks({ parts, settings: s, has }: Facts): Said {
  return {
    title: "Lay the socks",
    todo: those(
      has("sock") ? `Lay the socks in dry (${sockWords[parts.sock]}, ${mm(s.sockInMm)} smaller than the insole all round) and trim what touches the upper.` : "Draw the sock round the insole, a little smaller, cut it from thin leather, and lay it in dry.",
      parts.sock === "half" && `Its front edge lies ${mm(s.sockBehindMm)} behind the joint: skive it to nothing over 5 mm.`,
      parts.sock === "heel" && `It ends ${mm(s.sockBeyondMm)} before the heel's breast: skive its front edge to nothing over 5 mm.`,
      "Brush latex on its flesh side, let it turn clear, roll the sock up, set its heel and unroll it forward; rub it down.",
    ),
    needs: { goods: ["sock leather", "latex"], tools: ["paste brush", "scissors", "bone folder", "rubbing stick", "weights"] },
    right: ["It lies flat to the edge all round, no air beneath."],
    fails: ["Too wide: its edge curls.", "Put in before the inside was felt for nails."],
    minutes: 10,
    wait: { leastMin: 30, wellMin: 60, what: "the socks' latex dries", source: "common practice, no source; the label of your latex comes first" },
    shoes: "together",
    hazards: [],
  };
}

function box({ cement }: Facts): Said {
  return {
    title: "Clean the pair and box it",
    todo: [
      "Take off chalk, silver and cement with a dry cloth or a crepe rubber; try anything wet under the heel first. Cream and polish thinly.",
      "Stuff the toes with paper so that the vamp stands; no shoe tree that is larger than the last.",
      "Box them in paper that lets air through, with a note of leather, last, size and date.",
      "First wearing: half an hour on a carpet, then look at the foot.",
    ],
    needs: { goods: [], tools: ["polishing cloth", "crepe rubber", "shoe cream", "tissue paper", "shoe box"] },
    right: ["Set side by side at arm's length, you see one pair and not two shoes."],
    fails: ["Worn the same evening: the cement has not come to its full strength."],
    minutes: 12,
    wait: bondFull(cement, "the cement comes to its full strength before the first wearing"),
    shoes: "together",
    hazards: ["feet"],
  };
}

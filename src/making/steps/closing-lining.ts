import { listed } from "#base/listed.ts";
import type { Facts } from "./facts.ts";
import { may, must, type MayStep, type Said } from "./plan.ts";
import { insideEdge, stitchesWords, threadWords } from "./stitches.ts";
import { mm, mmMeasured, stripLong, those } from "./words.ts";

const edged = ["ink-edges", "tape-topline", "fold-topline", "bind-topline", "fit-gore"] as const;
const upperDone = ["skive-upper", "sew-toe-cap", "sew-side-seams", "sew-back-seam", "tape-seams", "sew-dog-tail", "sew-back-strip", ...edged] as const;

/** The lining joined, set into the upper and stitched to it along the topline. */
export function liningSteps(facts: Facts): readonly MayStep[] {
  const { edge, settings } = facts;
  const bagged = edge === "bagged", wrapped = edge === "wrapped";
  return [
    must("join-lining", "closing", ["cut-lining"], () => join(facts)),
    may("bag-topline", "closing", [...upperDone, "make-strap", "join-lining"], bagged, () => bag(facts)),
    may("line-upper", "closing", [...upperDone, "make-strap", "join-lining"], !bagged, () => line(facts)),
    may("wrap-topline", "closing", ["line-upper"], wrapped, () => wrap(facts)),
    must("stitch-topline", "closing", ["bag-topline", "line-upper", "wrap-topline"], () => stitch(facts)),
    may("trim-lining", "closing", ["stitch-topline"], !bagged && !wrapped && settings.liningTrimMm > 0, () => trim(facts)),
    must("check-uppers", "closing", ["stitch-topline", "trim-lining"], () => check(facts)),
  ];
}

function join({ threeLinings, namesOf, settings: s, strip }: Facts): Said {
  const tape = strip("seam tape of the lining");
  return {
    title: threeLinings ? "Join the linings" : "Sew and tape the linings",
    todo: threeLinings
      ? [
          `Skive what lies under each joint to nothing. Parts: ${listed(namesOf("lining leather").filter((name) => name.includes("lining") && !name.startsWith("strap") || name === "heel pocket"))}.`,
          `Lap them by ${mm(s.liningLapMm)}, the rear part over the front one, so that the toes slide over its edge; one mark meets one, two meet two.`,
          "Scuff the grain with abrasive paper wherever latex meets it, or nothing holds there: within each lap, and all over the heel pocket, whose grain will face stiffener and upper.",
          `Stick with latex and stitch ${insideEdge(s.stitchInMm)}, ${stitchesWords("lining")}; ${threadWords()}.`,
          "The heel pocket goes in turned: its flesh side will lie against the foot.",
        ]
      : those(
          `Lay the ends grain to grain, mark to mark, and sew them as drawn, ${stitchesWords("lining")}; ${threadWords()}.`,
          "Open the seam and rub it down until no ridge is felt: the heel will lie against it.",
          tape && `Brush latex over it and tape it on the flesh side, ${mm(tape.widthMm)} wide, ${stripLong(tape)} to a shoe, ${mm(s.stripEndsMm)} to trim at each end counted in.`,
        ),
    needs: { goods: ["lining leather", "latex", ...(tape ? (["seam tape"] as const) : []), "thread", "needles"], tools: [...(threeLinings ? (["skiving knife", "paring stone", "abrasive paper"] as const) : []), "sewing machine", "paste brush", "bone folder", "thread snips"] },
    right: ["A finger drawn inside from heel to toe is stopped by no edge.", "Laid in the upper it shows no fold at the heel."],
    fails: [threeLinings ? "Front over rear: the toes lift the edge each time the shoe is put on." : "A seam left as a ridge against the heel.", "The joint laid where the upper has a seam: two ridges over each other."],
    minutes: threeLinings ? 20 : 15,
    shoes: "together",
    hazards: threeLinings ? ["knife", "sewing machine", "dust"] : ["sewing machine"],
  };
}

const strapWords = ({ has, settings: s }: Facts): string | false => has("instep strap") && `Set the strap's root between upper and lining at the inner side, ${mm(s.strapUnderMm)} deep, where the topline is marked, and hold it with two rows of stitches, ${stitchesWords("closing")}.`;

function bag(facts: Facts): Said {
  const { settings: s } = facts;
  return {
    title: "Bag the topline out",
    todo: those(
      "Lay lining and upper grain to grain along the topline: throat, back and the marks of the quarters must meet.",
      strapWords(facts),
      `Sew ${mm(s.toplineBagMm)} from the edge, ${stitchesWords("closing")}, ${threadWords()}, beginning and ending at the inner side.`,
      "Snip the seam at the throat every 3 to 4 mm, not into the stitches; thin it where it is thick.",
      "Turn out, roll the seam between the fingers until the lining lies a hair inside, stick it with latex and tap it flat.",
    ),
    needs: { goods: ["upper leather", "lining leather", "latex", "thread", "needles"], tools: ["sewing machine", "scissors", "bone folder", "paste brush", "closing hammer", "thread snips"] },
    right: ["No lining shows from outside.", "The topline is as long on both shoes, within 1 mm."],
    fails: ["Marks left aside: the upper is the larger one, its fullness gathers in one place and the edge puckers there.", "Not snipped at the throat: it turns out in points."],
    minutes: 30,
    shoes: "one after the other",
    hazards: ["sewing machine"],
  };
}

function line(facts: Facts): Said {
  const { settings: s, threeLinings, has } = facts;
  const strap = has("instep strap");
  return {
    title: "Stick the lining in along the topline",
    todo: those(
      `Brush latex on both faces that meet${threeLinings ? " (of the heel pocket that is its grain, scuffed)" : ""}, a finger's breadth along the topline and no deeper: stiffener and puff go in between later.`,
      "Begin at the throat, centre to centre; then the back; then ease the sides in, right and left.",
      s.liningTrimMm > 0 && `${mm(s.liningTrimMm)} of lining stand above the edge all round.`,
      threeLinings && "The heel pocket's flesh side faces you when you look into the shoe.",
      strapWords(facts),
    ),
    needs: { goods: ["upper leather", "lining leather", "latex", ...(strap ? (["thread", "needles"] as const) : [])], tools: ["paste brush", "bone folder", "closing hammer", ...(strap ? (["sewing machine", "thread snips"] as const) : [])] },
    right: ["Bent round as it will be on the foot, the lining lies without a fold.", "Upper and lining can be opened like a bag from below."],
    fails: ["Stuck flat on the table: bent round the heel the lining is too long and folds.", "Stuck too deep: no way in for the stiffener."],
    minutes: strap ? 20 : 15,
    shoes: "one after the other",
    hazards: strap ? ["sewing machine"] : [],
  };
}

function wrap({ settings: s, strip }: Facts): Said {
  return {
    title: "Wrap the topline",
    todo: [
      "Cut the lining flush with the upper along the topline.",
      `Turn both edges of the strip (${mm(strip("topline binding")?.widthMm ?? s.bindingWrappedMm)} wide, ${mm(s.bindingThickMm)} thick) in by what is skived, 3 to 4 mm, and stick them lightly.`,
      "Wrap it round the edge, half outside and half inside, its join at the inner side behind the middle, both ends skived aslant over 6 to 8 mm and stuck on each other; ease it in at the throat.",
      "Stick it with latex, tap it flat, and look that outside and inside end at the same height: one row has to catch both.",
    ],
    needs: { goods: ["upper leather", "latex"], tools: ["scissors", "skiving knife", "paste brush", "bone folder", "closing hammer"] },
    right: ["Equally broad outside, all round and on both shoes."],
    fails: ["Narrower inside than outside: the stitches miss it."],
    minutes: 25,
    shoes: "one after the other",
    hazards: ["knife"],
  };
}

/** Thickness under the needle in the topline's last row. */
const stackWords = ({ stitching }: Facts): string => {
  const row = stitching.find(({ name }) => name === "topline");
  return row ? `: ${mmMeasured(row.stackMm)} lie under the needle` : "";
};

function stitch(facts: Facts): Said {
  const { settings: s, edge, has, backSeam } = facts;
  return {
    title: edge === "bagged" ? "Stitch the bagged topline flat" : "Stitch the topline",
    todo: those(
      `Stitch ${edge === "wrapped" ? `${mm(s.stitchInMm)} inside the wrapping's lower edge` : insideEdge(s.stitchInMm)}, ${stitchesWords("topline")}; ${threadWords()}. Try it on scrap of the same layers first${stackWords(facts)}.`,
      `Begin and end at the inner side${backSeam ? ", never at the back seam" : ", behind the seam"}; draw both ends to the inside and knot them.`,
      "Turn the shoe, not the stitch: at the throat leave the needle down and turn in small steps.",
      has("elastic gore") && `Then a row round each gore, ${mm(s.stitchInMm)} inside its edge, ${stitchesWords("trimming")}, through upper, elastic and lining. Do not stretch the elastic.`,
    ),
    needs: { goods: ["upper leather", "lining leather", "thread", "needles"], tools: ["sewing machine", "thread snips"] },
    right: ["The row keeps its distance to the edge by eye, all round.", "Thread lies in the middle of the stack: no loops above or below."],
    fails: ["Stitches too short cut leather like a stamp.", "Leather pulled through: the topline comes out longer than it was."],
    minutes: 20,
    shoes: "one after the other",
    hazards: ["sewing machine"],
  };
}

function trim({ settings: s }: Facts): Said {
  return {
    title: "Trim the lining at the topline",
    todo: [
      `Cut away the ${mm(s.liningTrimMm)} that stand above the edge, close to it, the blade flat and the upper held out of its way.`,
      "Cut in one long run from the back to the throat and from the throat to the back; do not saw.",
      "Colour the cut edge if it shows.",
    ],
    needs: { goods: ["lining leather", "edge finish"], tools: ["edge trimmer", "scissors", "gloves"] },
    right: ["No lining stands above the edge, no stitch and no upper is nicked."],
    fails: ["Trimmed before it was stitched: it slips back and leaves the edge bare."],
    minutes: 10,
    shoes: "one after the other",
    hazards: ["knife"],
  };
}

function check({ ends, corrected, leathers }: Facts): Said {
  return {
    title: "Hold both uppers together",
    todo: those(
      "Lay right and left lining to lining: topline, throat and back must cover each other.",
      "Cut every thread end inside; feel for knots where the foot will be.",
      `Slip each upper on its last with no pull: the throat should come near ${mmMeasured(ends.throatDepthMm)} from the toe point.`,
      corrected && `Cut smaller for ${leathers.upper.name}, it lies short of the marks until it is drawn.`,
    ),
    needs: { goods: ["upper leather", "lining leather"], tools: ["thread snips", "tape measure", "lasts"] },
    right: ["Back height and throat agree within 1 mm between right and left."],
    fails: ["Hoping that lasting will even out what is sewn unlike: it makes more of it."],
    minutes: 5,
    shoes: "together",
    hazards: [],
  };
}

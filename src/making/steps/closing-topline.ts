import type { Facts } from "./facts.ts";
import { may, type MayStep, type Said } from "./plan.ts";
import { insideEdge, stitchesWords, threadWords } from "./stitches.ts";
import { counted, mm, stripLong, those } from "./words.ts";

const joined = ["skive-upper", "sew-toe-cap", "sew-side-seams", "sew-back-seam", "tape-seams", "sew-dog-tail", "sew-back-strip"] as const;

/** The topline's edge made, and elastic set into it. */
export const toplineSteps = (facts: Facts): readonly MayStep[] => [
  may("tape-topline", "closing", joined, facts.edge === "taped" && toplineTape(facts) !== undefined, () => tape(facts)),
  may("fold-topline", "closing", [...joined, "tape-topline"], facts.folds, () => fold(facts)),
  may("bind-topline", "closing", joined, facts.edge === "bound", () => bind(facts)),
  may("fit-gore", "closing", [...joined, "ink-edges", "fold-topline", "bind-topline"], facts.has("elastic gore"), () => gore(facts)),
];

const toplineTape = ({ strips }: Facts) => strips.find(({ name, where }) => name === "fold tape" && where.includes("topline"));

function tape(facts: Facts): Said {
  const along = toplineTape(facts)!, flank = facts.strip("flank tape");
  return {
    title: "Tape the topline",
    todo: those(
      `Lay tape ${mm(along.widthMm)} wide along the fold line on the flesh side, one strip of ${stripLong(along)} to a shoe, ${mm(facts.settings.stripEndsMm)} to trim at each end counted in, beginning at the ${facts.backSeam ? "back" : "inner seam"}.`,
      "Let it lie: neither drawn nor rippled. Snip its outer edge round the throat, every 3 to 4 mm.",
      flank && `Second tape, ${mm(flank.widthMm)} wide, below it at the lowest place of each side: ${counted(flank.perPair, "strip")} of ${stripLong(flank)}, drawn about 1 % shorter while you lay it.`,
      "Trim the ends where they meet; they do not lap.",
    ),
    needs: { goods: ["upper leather", "fold tape", ...(flank ? (["flank tape"] as const) : [])], tools: ["scissors", "bone folder"] },
    right: ["Pulled between two hands the topline does not give, and lies flat when let go."],
    fails: ["Tape pulled on: the edge puckers and bites.", "One pull round the throat: it slides inward and the fold follows it."],
    minutes: 10,
    shoes: "together",
    hazards: [],
  };
}

function fold({ settings: s, backClosed, parts, dogTail, has, edge }: Facts): Said {
  const top = backClosed && !dogTail && !has("back strip");
  return {
    title: "Fold the topline",
    todo: those(
      `Brush latex thinly over ${mm(2 * s.toplineFoldMm)} from the edge and let it turn clear.`,
      `Turn ${mm(s.toplineFoldMm)} over ${edge === "taped" ? "the tape" : "the fold line"} with thumb and bone, a finger's breadth at a time, from the sides to the throat.`,
      "Where the edge bows outward lay the fold in small pleats; where it is hollow, at the throat, snip it every 3 to 4 mm, no nearer than 1 mm to the line.",
      top && parts.backTop === "mitre" && "At the back the corner turns down onto the seam as its own mirror.",
      top && parts.backTop === "notch" && "At the back the fold is snipped out: both halves end at the seam, edge to edge.",
      "Hammer it flat on the stone, the hammer's face dry and smooth.",
    ),
    needs: { goods: ["upper leather", "latex"], tools: ["paste brush", "bone folder", "closing hammer", "lapstone", "scissors"] },
    right: ["Equally thick all round between finger and thumb.", `The folded edge is the drawn topline: lay the net card on it.`],
    fails: ["Snipped through the line: the tear runs into the throat when it is lasted.", "A throat turned in one piece: it stands up in waves."],
    minutes: 25,
    shoes: "one after the other",
    hazards: ["knife"],
  };
}

function bind(facts: Facts): Said {
  const { settings: s, strip } = facts;
  return {
    title: "Bind the topline",
    todo: [
      `Lay the strip (${mm(strip("topline binding")?.widthMm ?? s.bindingBoundMm)} wide, ${mm(s.bindingThickMm)} thick) grain to grain along the topline, edge to edge, its join at the inner side behind the middle.`,
      "For the join leave the last 20 mm unsewn, skive both ends aslant over 6 to 8 mm, stick the one on the other as long as the topline asks for, and sew on over them.",
      `Sew it on ${insideEdge(s.stitchInMm)}, ${stitchesWords("topline")}; ${threadWords()}; ease it in at the throat, draw it a little at the sides.`,
      "Bring it up over the edge and inside, stick it down with latex and tap it flat.",
    ],
    needs: { goods: ["upper leather", "latex", "thread", "needles"], tools: ["sewing machine", "skiving knife", "paring stone", "paste brush", "bone folder", "closing hammer", "thread snips"] },
    right: ["The roll over the edge is equally high all round, on both shoes.", "The topline is as long as on the card: the strip has drawn nothing in."],
    fails: ["The strip pulled round the throat: it cups inward.", "Seam wandering: the roll grows and shrinks, and every eye sees it."],
    minutes: 30,
    shoes: "one after the other",
    hazards: ["sewing machine", "knife"],
  };
}

function gore({ settings: s, countOf, edge }: Facts): Said {
  return {
    title: "Set the elastic gores in",
    todo: those(
      `${edge === "bagged" || edge === "wrapped" ? "Cut" : "The topline's edge is made now: cut"} the upper out along the drawn lines, ${mm(s.goreWideMm)} wide at the topline and ${mm(s.goreDeepMm)} deep, and the lining alike, which bears the same mark.`,
      `Lay the elastic behind (${counted(countOf("elastic"), "piece")} for the pair) so that it gives along the topline; ${mm(s.goreLapMm)} of it lie under the leather on each edge.`,
      "Stick it on with latex, unstretched. It is sewn with the topline, through the lining as well.",
      "Colour the cut edges of the leather.",
    ),
    needs: { goods: ["upper leather", "elastic", "latex", "edge finish"], tools: ["clicking knife", "paste brush", "bone folder"] },
    right: ["Pulled open and let go, it closes again.", "Both sides give alike, on both shoes."],
    fails: ["Elastic laid across: it gives down instead of along.", "Cut deeper than drawn: the opening tears toward the feather line in lasting."],
    minutes: 20,
    shoes: "together",
    hazards: ["knife"],
  };
}

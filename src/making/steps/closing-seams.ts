import { listed } from "#base/listed.ts";
import type { SeamKind } from "#pieces/choices.ts";
import type { GoodId } from "../goods.ts";
import { usualThread } from "../thread/thread.ts";
import type { Facts } from "./facts.ts";
import { may, type MayStep, type Said } from "./plan.ts";
import { insideEdge, stitchesWords, threadWords } from "./stitches.ts";
import { counted, mm, mmMeasured, stripLong, those } from "./words.ts";

/** The upper sewn together: cap, sides, back, tapes over it, strip or tongue over the back. */
export const seamSteps = (facts: Facts): readonly MayStep[] => [
  may("sew-toe-cap", "closing", ["skive-upper", "ink-edges"], facts.has("toe cap"), () => toeCap(facts)),
  may("sew-side-seams", "closing", ["skive-upper", "ink-edges", "sew-toe-cap"], facts.sideSeam, () => sideSeams(facts)),
  may("sew-back-seam", "closing", ["skive-upper", "sew-side-seams"], facts.backSeam, () => backSeam(facts)),
  may("tape-seams", "closing", ["sew-back-seam", "sew-side-seams"], closedSeams(facts).length > 0, () => tapeSeams(facts)),
  may("sew-dog-tail", "closing", ["tape-seams", "sew-back-seam"], facts.dogTail, () => dogTail(facts)),
  may("sew-back-strip", "closing", ["tape-seams", "sew-back-seam", "ink-edges"], facts.has("back strip"), () => backStrip(facts)),
];

const sideNames = ({ parts }: Facts): string => (parts.cut === "quarters" ? "side seams" : "inner seam");

/** Seams that are opened and taped once they are sewn. */
function closedSeams(facts: Facts): readonly string[] {
  return those(facts.backClosed && "back seam", facts.sideSeam && facts.parts.seam === "closed" && sideNames(facts));
}

function toeCap({ settings: s }: Facts): Said {
  return {
    title: "Sew the toe caps on",
    todo: those(
      `Draw the cap's line faintly on the grain of the vamp, ${mm(s.toeCapMm)} from the toe point along the centre.`,
      s.toeCapFoldMm > 0 && `Turn the cap's edge over by ${mm(s.toeCapFoldMm)} on latex and hammer it flat.`,
      "Lay cap to line, centre to centre. Stick the edge alone, thinly; the rest stays loose, so that it can move in lasting.",
      `Stitch ${insideEdge(s.stitchInMm)}, ${stitchesWords("trimming")}; draw the ends to the flesh side and knot them.`,
    ),
    needs: { goods: ["upper leather", "latex", "thread", "needles"], tools: ["sewing machine", "paste brush", "silver pen", "steel rule", "thread snips"] },
    right: ["Both caps are equally long along the centre, within 1.6 mm (a factory's rule of 2014).", "The edge stands square to the centre line."],
    fails: ["Judged flat: the line bends backward when it is pulled over the toe. It is drawn with a bow for that."],
    minutes: 20,
    shoes: "together",
    hazards: ["sewing machine"],
  };
}

const seamTodo: Readonly<Record<SeamKind, (facts: Facts, allowanceMm: number, where: string) => readonly string[]>> = {
  closed: (_, allowanceMm, where) => [
    "Lay the edges grain to grain, mark to mark: one mark meets one, two meet two.",
    `Sew ${mm(allowanceMm)} from the edge, from the topline down, ${stitchesWords("closing")}; ${threadWords()}. ${where}`,
  ],
  lapped: ({ settings: s, stitching }, _, where) => those(
    s.lapFoldMm > 0 && `Lay tape along the fold line of the edge that lies over, turn it by ${mm(s.lapFoldMm)} on latex and hammer it flat.`,
    `Stick the edge towards the toe over the other, to the drawn line: ${mm(s.lapUnderMm)} lie under. Mark must meet mark.`,
    `Stitch ${insideEdge(s.stitchInMm)}, ${stitchesWords("lapped")}${lapRows(stitching) > 1 ? ", and a second row beside the first" : ""}; ${threadWords()}. ${where}`,
  ),
  butted: (_, __, where) => [
    "Brush latex on the flesh side along both edges. Set them upright against each other on the seam tape, mark to mark; no gap and no lap.",
    `Sew a zigzag over both, ${stitchesWords("closing")}, ${usualThread.zigzagMm} mm wide; ${threadWords()}. It bites equally far into either edge. ${where}`,
  ],
};

/** Rows of stitches in a lapped seam. */
const lapRows = (stitching: Facts["stitching"]): number => Math.max(1, ...stitching.filter(({ use, name }) => use === "lapped" && name.endsWith("seam")).map(({ rows }) => rows));

const seamFails: Readonly<Record<SeamKind, readonly string[]>> = {
  closed: ["More seam than drawn, to be on the sure side: a ridge on the foot.", "One edge eased into the other past the marks: the upper twists."],
  lapped: ["A lap stuck beside its line: the throat ends up skew.", "The under edge left thick: it shows as a step once the leather is drawn."],
  butted: ["Edges cut aslant: they gape when the upper is pulled.", "No tape beneath: the zigzag alone lets go in lasting."],
};

const tapeGood = (kind: SeamKind): readonly GoodId[] => (kind === "butted" ? ["seam tape", "latex"] : []);

function sideSeams(facts: Facts): Said {
  const { parts: { seam, cut }, settings: s, strip } = facts;
  const several = cut === "quarters";
  const folds = seam === "lapped" && strip("fold tape") && s.lapFoldMm > 0;
  return {
    title: several ? "Sew the quarters to the vamp" : "Sew the inner seam",
    todo: seamTodo[seam](facts, s.seamMm, several ? "Inner side first, then the outer; then the other shoe." : "The upper closes into a ring here; the heel stays without a seam."),
    needs: { goods: ["upper leather", ...tapeGood(seam), ...(folds ? (["fold tape"] as const) : []), ...(seam === "lapped" ? (["latex"] as const) : []), "thread", "needles"], tools: ["sewing machine", "bone folder", ...(seam === "lapped" ? (["paste brush", "closing hammer"] as const) : []), "thread snips"] },
    right: ["Ends of topline and feather line meet within 0.5 mm.", several ? "Laid on each other, right and left cover each other." : "The ring lies flat on the table, no wave at the seam."],
    fails: seamFails[seam],
    minutes: several ? 25 : 12,
    shoes: "one after the other",
    hazards: ["sewing machine"],
  };
}

function backSeam(facts: Facts): Said {
  const { parts: { backSeam: kind }, settings: s, dogTail: tongue } = facts;
  return {
    title: "Sew the back seams",
    todo: seamTodo[kind](facts, s.backSeamMm, tongue ? "Stop at the snip below the dog-tail." : "Sew a few stitches back at both ends."),
    needs: { goods: ["upper leather", ...tapeGood(kind), "thread", "needles"], tools: ["sewing machine", "thread snips"] },
    right: ["Topline ends meet within 0.5 mm.", "Held up by the seam, both halves hang alike."],
    fails: seamFails[kind],
    minutes: 10,
    shoes: "one after the other",
    hazards: ["sewing machine"],
  };
}

function tapeSeams(facts: Facts): Said {
  const { strips, folds, parts, backClosed, settings } = facts;
  const tapes = strips.filter(({ name }) => name === "seam tape");
  const notch = folds && backClosed && parts.backTop === "notch";
  const mitre = folds && backClosed && parts.backTop === "mitre";
  return {
    title: "Rub the seams down and tape them",
    todo: those(
      `Open the ${listed(closedSeams(facts))} and rub down with a bone over a rounded edge, then tap with the closing hammer.`,
      tapes.length > 0 && `Brush latex over it, let it turn clear and lay tape ${mm(tapes[0]!.widthMm)} wide on the flesh side: ${tapes.map((t) => `${counted(t.perPair, "piece")} of ${stripLong(t)} ${t.where.replace(", flesh side", "")}`).join(", ")}. ${mm(settings.stripEndsMm)} to trim at each end counted in. Do not stretch it.`,
      notch && "At the top the fold is snipped out over the seam: two folds must not lie on each other.",
      mitre && "At the top the seam's ends are left as they are: the fold, turned down, lies on them as their mirror.",
    ),
    needs: { goods: ["upper leather", "seam tape", "latex"], tools: ["bone folder", "closing hammer", "paste brush", "scissors"] },
    right: ["Rubbed with the thumb from inside, no ridge.", "Pulled across, the seam shows no thread."],
    fails: ["A seam left untaped opens in lasting.", "Tape drawn tight puckers the heel."],
    minutes: 10,
    shoes: "together",
    hazards: [],
  };
}

function dogTail({ settings: s }: Facts): Said {
  return {
    title: "Sew the dog-tails down",
    todo: [
      `Lay the tongue of the outer half, ${mm(s.dogTailLongMm)} long and ${mm(s.dogTailWideMm)} wide, over the seam on its drawn place on the inner half; it points to the inside.`,
      `Stick it thinly and stitch round it, ${insideEdge(s.stitchInMm)}, ${stitchesWords("lapped")}.`,
    ],
    needs: { goods: ["upper leather", "latex", "thread", "needles"], tools: ["sewing machine", "paste brush", "thread snips"] },
    right: ["The tongue lies flat with the heel held round, not only on the table.", "Both tongues stand equally high."],
    fails: ["Sewn down before the seam was opened and taped: a lump where the shoe is pulled on."],
    minutes: 8,
    shoes: "together",
    hazards: ["sewing machine"],
  };
}

function backStrip({ settings: s, ends, parts, folds }: Facts): Said {
  return {
    title: "Sew the back strips on",
    todo: those(
      s.backStripFoldMm > 0 && `Turn both edges over by ${mm(s.backStripFoldMm)} on latex and hammer flat: ${mm(s.backStripTopMm)} wide are left at the topline, ${mm(s.backStripFeatherMm)} at the feather line.`,
      `Lay its centre line on the ${parts.cut === "inner-seam" ? "back line" : "seam"}, its upper line on the topline, ${mmMeasured(ends.backHeightMm)} above the feather line; stick it and stitch both its edges, ${mm(s.stitchInMm)} inside, ${stitchesWords("trimming")}.`,
      `Thin its lower end where it is lasted under, to about 0.8 mm.${folds ? " Its upper end is folded in with the topline." : ""}`,
    ),
    needs: { goods: ["upper leather", "latex", "thread", "needles"], tools: ["sewing machine", "skiving knife", "paste brush", "closing hammer", "thread snips"] },
    right: ["Seen from behind it stands upright within 1.5 mm (a factory's rule of 2014), and both shoes alike."],
    fails: ["Left thick: with seam, tape and stiffener beneath it the back becomes a ridge."],
    minutes: 20,
    shoes: "together",
    hazards: ["sewing machine", "knife"],
  };
}

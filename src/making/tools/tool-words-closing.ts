import type { ToolWords } from "./tool-need.ts";

/** Gluing, folding and closing. */
export const closingTools = {
  "glue brush": { use: "To spread cement thin and even; one brush to each glue.", standIn: "A strip of stiff card, one to each coat; with solvent on it into the metal bin.", must: true, buy: "first" },
  "glue pot": { use: "To keep the little that you need under a lid, away from the tin.", standIn: "A small jar of glass or metal with a lid that closes. No plastic cup: solvent eats it.", must: true, buy: "first" },
  "paste brush": { use: "To spread paste or latex, which must not meet the brush for cement.", standIn: "A flat bristle brush from the kitchen drawer, kept for this alone.", must: false, buy: "first" },
  "bone folder": { use: "To turn edges, rub down tapes and press pleats.", standIn: "The back of a spoon, without an edge.", must: true, buy: "first" },
  "closing hammer": { use: "To tap folds and seams flat; its face is smooth and domed.", standIn: "Any small hammer with a polished face; or rub with the bone.", must: true, buy: "first" },
  lapstone: { use: "Hard and level, to hammer seams and sole leather on.", standIn: "The underside of the marble tile on a folded cloth, or an iron plate.", must: false, buy: "later" },
  roller: { use: "To press cemented faces together without marks.", standIn: "A smooth jar, rolled with both hands.", must: false, buy: "later" },
  clamps: { use: "To hold parts while paste dries.", standIn: "Clothes pegs with scraps of leather between.", must: false, buy: "later" },
  weights: { use: "To hold boards and socks flat while they dry.", standIn: "Books, wrapped.", must: false, buy: "later" },
  "sewing machine": { use: "To close the upper with even stitches; a flat bed does for pumps, a post makes it lighter.", standIn: "A strong household machine with a leather needle and a roller or non-stick foot: try it on two layers first. Or hand needles and patience.", must: true, buy: "first" },
  "hand needles": { use: "To close by hand, to tie off ends, to sew what the machine cannot reach.", noStandIn: "Nothing: they cost little. Take blunt ones, and three-edged ones for thick places.", must: true, buy: "first" },
  "thread snips": { use: "To cut ends close without nicking the leather.", standIn: "Small pointed scissors.", must: false, buy: "first" },
  "edge trimmer": { use: "To cut the lining flush along the topline.", standIn: "Small curved scissors, held flat, with a slow hand.", must: false, buy: "later" },
} as const satisfies Readonly<Record<string, ToolWords>>;

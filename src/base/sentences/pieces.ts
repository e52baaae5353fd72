import { sentence } from "../sentence.ts";

const mm = (value: number, digits = 1): string => `${value.toFixed(digits)} mm`;

/** Which folded edge is meant: of which piece, where on it if that has a name, how wide the fold is and how tight its hollow. */
interface FoldSaid {
  readonly piece: string;
  readonly edge: string;
  readonly where: string | undefined;
  readonly foldMm: number;
  readonly radiusMm: number;
}

const atThe = (where: string | undefined): string => (where === undefined ? "" : /^\d/.test(where) ? ` ${where}` : ` at the ${where}`);

export const pieceSentences = {
  "piece-crosses-itself": sentence("look", (d: { piece: string }) => `The outline of the ${d.piece} crosses itself. Narrow its allowance or smooth the line there.`),
  "edge-uneven": sentence(
    "look",
    (d: { piece: string; changes: number; most: number }) =>
      `Edge uneven: the outline of the ${d.piece} changes its bend ${d.changes} times (${d.most} at most on an even one). Draw it through by eye with a curve or a bent lath before you cut; where the last was scanned, a smoother scan helps too.`,
  ),
  "piece-setting-impossible": sentence(
    "stop",
    (d: { name: string; value: number; least: number; most: number }) => `${d.name}: ${String(d.value)} cannot be used. Give a number of millimetres from ${String(d.least)} to ${String(d.most)}.`,
  ),
  "piece-setting-unusual": sentence(
    "note",
    (d: { name: string; value: number; min: number; max: number }) => `${d.name} is ${mm(d.value)}; usual are ${mm(d.min)} to ${mm(d.max)}. Cut a trial in scrap first.`,
  ),
  "raw-edge-has-no-fold": sentence("note", (d: { foldMm: number; edge: string }) => `A ${d.edge} topline is ${d.edge === "bagged" ? "turned out with its lining" : "cut net"}, so your fold of ${mm(d.foldMm)} is left out. It is kept for when you fold the edge.`),
  "back-edges-differ": sentence(
    "look",
    (d: { differenceMm: number; allowedMm: number }) =>
      `The two edges of the back seam differ by ${mm(Math.abs(d.differenceMm), 2)} (the ${d.differenceMm > 0 ? "inside" : "outside"} one is longer; at most ${mm(d.allowedMm)} can be sewn away). They were made equal at the feather edge: hold the card against the last at the seat before cutting.`,
  ),
  "seam-edges-differ": sentence(
    "look",
    (d: { seam: string; longer: string; byMm: number; allowedMm: number }) =>
      `The two edges of the ${d.seam} differ by ${mm(d.byMm, 2)}: the ${d.longer} is longer (at most ${mm(d.allowedMm)} can be sewn away). Hold both cards together along the seam before cutting, and move the seam or the topline until they agree.`,
  ),
  "seam-notches-apart": sentence(
    "look",
    (d: { seam: string; fromMm: number; byMm: number; allowedMm: number }) =>
      `The notches of the ${d.seam} ${mm(d.fromMm, 0)} from its upper end lie ${mm(d.byMm, 2)} apart when the seam is laid together (at most ${mm(d.allowedMm)}). Sew by the ends of the seam and leave these notches out.`,
  ),
  "seam-notch-alone": sentence(
    "look",
    (d: { seam: string; edge: string; fromMm: number }) =>
      `The ${d.edge} has a notch in the ${d.seam}, ${mm(d.fromMm, 0)} from its upper end, that meets none on the other edge. Sew by the ends of the seam and leave this notch out.`,
  ),
  "seam-near-joint": sentence(
    "look",
    (d: { seam: string; mm: number; neededMm: number }) =>
      `The ${d.seam} meets the feather edge ${mm(d.mm, 0)} from the joint; it should keep ${mm(d.neededMm, 0)} away, or it lies as a ridge where the foot bends and tears there. Move the seam back.`,
  ),
  "lasting-margin-narrow": sentence(
    "look",
    (d: { piece: string; zone: string; widthMm: number; neededMm: number }) =>
      `The lasting margin of the ${d.piece} at the ${d.zone} is ${mm(d.widthMm)}; pincers need ${mm(d.neededMm, 0)} for a grip. Widen it, and trim after lasting.`,
  ),
  "lasting-margins-overlap": sentence(
    "look",
    (d: { where: string; innerMm: number; outerMm: number; widthMm: number }) =>
      `At the ${d.where} the lasting margins of both sides are ${mm(d.innerMm, 0)} and ${mm(d.outerMm, 0)} wide, but the bottom only ${mm(d.widthMm, 0)} across: they would lie over each other in a ridge. Make them narrower there, ${mm(Math.floor(d.widthMm / 2) - 2, 0)} each at most.`,
  ),
  "allowance-off": sentence(
    "look",
    (d: { piece: string; edge: string; where: string; foundMm: number; askedMm: number }) =>
      `The allowance at the ${d.edge} of the ${d.piece} is ${mm(d.foundMm)} instead of ${mm(d.askedMm)} (${d.where}). The edge turns too sharply there for so wide an allowance: make it rounder or the allowance narrower, or draw it by hand with a divider.`,
  ),
  "fold-needs-notches": sentence(
    "note",
    (d: FoldSaid & { everyMm: number }) =>
      `The ${d.edge} of the ${d.piece} is hollow${atThe(d.where)}, radius ${mm(d.radiusMm, 0)} on the card. Snip the ${mm(d.foldMm)} fold every ${mm(d.everyMm, 0)} there before it is turned, not closer than 1 mm to the fold line.`,
  ),
  "fold-too-tight": sentence(
    "look",
    (d: FoldSaid & { neededMm: number }) =>
      `The hollow of the ${d.edge} of the ${d.piece}${atThe(d.where)} has a radius of ${mm(d.radiusMm)} on the card; a fold of ${mm(d.foldMm)} needs ${mm(d.neededMm)} or more. Make it rounder there, or bind the edge instead of folding it.`,
  ),
  "lining-outside-upper": sentence(
    "look",
    (d: { piece: string; byMm: number; where: string }) =>
      `The ${d.piece} reaches ${mm(d.byMm)} beyond the upper's cutting line at the ${d.where}. It must lie inside it, or it will make folds: take the lining in more there, or shorten its lasting margin.`,
  ),
  "piece-narrow": sentence(
    "look",
    (d: { piece: string; widthMm: number; neededMm: number; where: string }) =>
      `The ${d.piece} is only ${mm(d.widthMm)} wide at its narrowest place (${d.where}); under ${mm(d.neededMm, 0)} it tears or cannot be stitched. Widen its allowance there, or move the line that makes it so narrow.`,
  ),
  "piece-area-off": sentence(
    "look",
    (d: { piece: string; foundCm2: number; expectedCm2: number }) =>
      `The ${d.piece} has ${d.foundCm2.toFixed(1)} cm², but its net shape and its allowances come to ${d.expectedCm2.toFixed(1)} cm². An edge of it is drawn wrong: lay the net card on it and measure the allowance all round before you cut.`,
  ),
  "panels-area-off": sentence(
    "look",
    (d: { share: number; mostShare: number }) =>
      `The parts of the upper together are ${(100 * Math.abs(d.share)).toFixed(1)} % ${d.share > 0 ? "larger" : "smaller"} than the upper in one (at most ${(100 * d.mostShare).toFixed(0)} %). Hold their cards against the last before you cut.`,
  ),
  "toe-not-square": sentence(
    "look",
    (d: { degrees: number; allowedDeg: number }) =>
      `The feather line meets the centre line at the toe ${d.degrees.toFixed(1)}° off square (at most ${d.allowedDeg.toFixed(0)}°). The toe will be lasted askew: check the last's centre line and its toe point.`,
  ),
  "edge-not-square": sentence(
    "look",
    (d: { piece: string; where: string; degrees: number; allowedDeg: number }) =>
      `The edge of the ${d.piece} meets its centre line at the ${d.where} ${d.degrees.toFixed(1)}° off square (at most ${d.allowedDeg.toFixed(0)}°). A peak or a dent will show there: draw it through square by hand, 5 mm to either side.`,
  ),
  "throat-not-square": sentence(
    "look",
    (d: { degrees: number; allowedDeg: number }) =>
      `The topline meets the centre line at the throat ${d.degrees.toFixed(1)}° off square (at most ${d.allowedDeg.toFixed(0)}°). A peak or a dent will show there: check the last's centre line and the throat.`,
  ),
};

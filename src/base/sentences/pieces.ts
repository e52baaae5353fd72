import { sentence } from "../sentence.ts";

const mm = (value: number, digits = 1): string => `${value.toFixed(digits)} mm`;

export const pieceSentences = {
  "piece-crosses-itself": sentence("look", (d: { piece: string }) => `The outline of the ${d.piece} crosses itself. Narrow its allowance or smooth the line there.`),
  "edge-uneven": sentence(
    "look",
    (d: { piece: string; changes: number; most: number }) =>
      `Edge uneven: the outline of the ${d.piece} changes its bend ${d.changes} times (${d.most} at most on an even one). Draw it through by eye with a curve or a bent lath before you cut, or take a smoother scan.`,
  ),
  "piece-setting-impossible": sentence(
    "stop",
    (d: { name: string; value: number; least: number; most: number }) => `${d.name}: ${String(d.value)} cannot be used. Give a number of millimetres from ${String(d.least)} to ${String(d.most)}.`,
  ),
  "piece-setting-unusual": sentence(
    "note",
    (d: { name: string; value: number; min: number; max: number }) => `${d.name} is ${mm(d.value)}; usual are ${mm(d.min)} to ${mm(d.max)}. Cut a trial in scrap first.`,
  ),
  "raw-edge-has-no-fold": sentence("note", (d: { foldMm: number }) => `A raw topline is cut net, so your fold of ${mm(d.foldMm)} is left out. It is kept for when you fold the edge.`),
  "back-edges-differ": sentence(
    "look",
    (d: { differenceMm: number; allowedMm: number }) =>
      `The two edges of the back seam differ by ${mm(Math.abs(d.differenceMm), 2)} (the ${d.differenceMm > 0 ? "inside" : "outside"} one is longer; at most ${mm(d.allowedMm)} can be sewn away). They were made equal at the feather edge: hold the card against the last at the seat before cutting.`,
  ),
  "lasting-margin-narrow": sentence(
    "look",
    (d: { zone: string; widthMm: number; neededMm: number }) =>
      `The lasting margin of the upper at the ${d.zone} is ${mm(d.widthMm)}; pincers need ${mm(d.neededMm, 0)} for a grip. Widen it, and trim after lasting.`,
  ),
  "fold-needs-notches": sentence(
    "note",
    (d: { foldMm: number; radiusMm: number; everyMm: number }) =>
      `The topline is hollow at the throat, radius ${mm(d.radiusMm, 0)} on the card. Snip the ${mm(d.foldMm)} fold every ${mm(d.everyMm, 0)} there before it is turned, not closer than 1 mm to the fold line.`,
  ),
  "fold-too-tight": sentence(
    "look",
    (d: { foldMm: number; radiusMm: number; neededMm: number }) =>
      `The topline's hollow at the throat has a radius of ${mm(d.radiusMm)} on the card; a fold of ${mm(d.foldMm)} needs ${mm(d.neededMm)} or more. Make the throat rounder, or bind the edge instead of folding it.`,
  ),
  "lining-outside-upper": sentence(
    "look",
    (d: { byMm: number; where: string }) =>
      `The lining reaches ${mm(d.byMm)} beyond the upper's cutting line at the ${d.where}. It must lie inside it, or it will make folds: take the lining in more there, or shorten its lasting margin.`,
  ),
  "throat-not-square": sentence(
    "look",
    (d: { degrees: number; allowedDeg: number }) =>
      `The topline meets the centre line at the throat ${d.degrees.toFixed(1)}° off square (at most ${d.allowedDeg.toFixed(0)}°). A peak or a dent will show there: check the last's centre line and the throat.`,
  ),
};

import { sentence } from "../sentence.ts";

const mm = (value: number, digits = 1): string => `${value.toFixed(digits)} mm`;

export const upperSentences = {
  "seam-fold-too-tight": sentence(
    "look",
    (d: { seam: string; foldMm: number; radiusMm: number }) =>
      `The vamp's edge at the ${d.seam} is hollow with a radius of ${mm(d.radiusMm)}; a fold of ${mm(d.foldMm)} cannot be turned there. Fold it narrower, leave the edge raw, or draw the seam straighter.`,
  ),
  "lap-too-wide": sentence(
    "look",
    (d: { seam: string; lapMm: number; roomMm: number }) =>
      `The lap at the ${d.seam} is ${mm(d.lapMm)} wide, but the piece over it is only ${mm(d.roomMm, 0)} across there. Make the lap narrower, half of that at most, or move the seam.`,
  ),
  "notch-deeper-than-margin": sentence(
    "look",
    (d: { piece: string; notchMm: number; marginMm: number }) =>
      `The notches in the lasting margin of the ${d.piece} are ${mm(d.notchMm)} deep, but the margin is only ${mm(d.marginMm)} wide at one of them. Widen the margin to ${mm(d.notchMm + 1, 0)} or more, or mark that place with a pen.`,
  ),
  "skive-too-wide": sentence(
    "look",
    (d: { piece: string; edge: string; skiveMm: number; roomMm: number }) =>
      `Along the ${d.edge} the ${d.piece} would be skived ${mm(d.skiveMm, 0)} in, past the middle of the leather, which is ${mm(d.roomMm, 0)} across there. Skive a narrower band.`,
  ),
  "dog-tail-too-wide": sentence(
    "look",
    (d: { wideMm: number; backMm: number }) =>
      `The dog-tail is ${mm(d.wideMm)} wide, more than a third of the back, which is ${mm(d.backMm, 0)} high. Make it narrower, or take another top for the back seam.`,
  ),
  "dog-tail-left-out": sentence("look", (d: { longMm: number }) => `The dog-tail of ${mm(d.longMm)} finds no hold at the top of the back seam: the topline or the back is too short or too bent there. It was left out; take another top for the back seam.`),
  "dog-tail-has-no-place": sentence("note", (d: { why: string }) => `There is no dog-tail: ${d.why}. Your choice is kept.`),
};

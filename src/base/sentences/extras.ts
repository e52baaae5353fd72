import { sentence } from "../sentence.ts";
import { halfName } from "./names.ts";

const mm = (value: number, digits = 1): string => `${value.toFixed(digits)} mm`;

export const extraSentences = {
  "extra-left-out": sentence("look", (d: { what: string; why: string; instead: string }) => `There is no ${d.what}: ${d.why}. To go on, ${d.instead}.`),
  "strap-meets-nothing": sentence(
    "look",
    (d: { behindMm: number }) => `The strap would begin ${mm(d.behindMm, 0)} behind the throat, where there is no topline any more. Give it a place nearer to the throat.`,
  ),
  "gore-too-near": sentence(
    "look",
    (d: { half: "medial" | "lateral"; what: string; freeMm: number; neededMm: number }) =>
      `The gore on the ${halfName(d.half)} side leaves ${mm(Math.max(0, d.freeMm))} to the ${d.what}; ${mm(d.neededMm, 0)} are needed to sew and to last. Make it less ${d.what === "seam" ? "wide, or move the seam" : "deep"}.`,
  ),
  "gore-cuts-tape": sentence("note", () => "There is no flank tape: the topline is cut open for the gore where it would lie. The tape in the fold is cut through with it; sew its ends down beside the gore."),
  "strap-on-seam": sentence(
    "look",
    (d: { half: "medial" | "lateral"; behindMm: number; neededMm: number }) =>
      `The strap, ${mm(d.behindMm, 0)} behind the throat, comes to lie on a seam of the ${halfName(d.half)} side or less than ${mm(d.neededMm, 0)} beside it, where its stitches tear the seam. Move the strap along the topline, or move the seam.`,
  ),
  "gore-under-strap": sentence(
    "look",
    (d: { half: "medial" | "lateral"; byMm: number }) => `On the ${halfName(d.half)} side strap and gore lie in each other's way by ${mm(d.byMm, 0)}. Move the strap along the topline, or leave the gore out.`,
  ),
  "toe-cap-too-long": sentence(
    "look",
    (d: { reachMm: number; mostMm: number }) => `The toe cap reaches ${mm(d.reachMm, d.reachMm % 1 === 0 ? 0 : 1)} back; on this last it has to end ${mm(Math.floor(Math.max(0, d.mostMm)), 0)} from the toe point or nearer, ahead of where the shoe bends and of the throat. It was left out: make it shorter.`,
  ),
};

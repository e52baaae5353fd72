import { sentence } from "../sentence.ts";
import { measureName } from "./names.ts";

const mm1 = (v: number): string => `${Math.abs(v).toFixed(1)} mm`;

interface Reason {
  readonly what: string;
  readonly byMm: number;
  readonly limitMm: number;
}

const reason = ({ what, byMm, limitMm }: Reason): string => {
  if (what === "surface") return `a twentieth of the surface lies more than ${mm1(byMm)} apart (${mm1(limitMm)} at most)`;
  if (what === "feather") return `the feather lines lie ${mm1(byMm)} apart on average (${mm1(limitMm)} at most)`;
  return `the second one's ${measureName(what)} is ${mm1(byMm)} ${byMm > 0 ? "more" : "less"} (${mm1(limitMm)} at most)`;
};

/** The gravest, so that it can be read, and always the heel height, which says that the two want other heels; all of them are in the table of differences. */
const listed = (reasons: readonly Reason[]): string => {
  const heel = reasons.slice(4).filter(({ what }) => what === "heelHeight");
  const told = [...reasons.slice(0, 4 - heel.length), ...heel];
  return told.map(reason).join("; ") + (reasons.length > told.length ? `; and ${reasons.length - told.length} more` : "");
};

export const compareSentences = {
  "pair-true": sentence("note", (d: { p95Mm: number }) => `These two lasts are a pair: mirrored, 95 % of the surface lies within ${d.p95Mm.toFixed(2)} mm.`),
  "pair-same-side": sentence("look", () => "These two lasts are alike, and both for the same foot: one of them twice is no pair. Load the last for the other foot, or only one: its mirror makes the pair."),
  "pair-none": sentence(
    "look",
    (d: { reasons: readonly Reason[] }) =>
      `These two lasts are not a pair: ${listed(d.reasons)}. Look at sizes and labels. If they are meant for two unlike feet, make a pattern on each.`,
  ),
  "pair-side-doubtful": sentence(
    "look",
    (d: { side: string }) => `Both are taken for ${d.side} lasts, but one is the mirror of the other. Say for each which foot it is for: inside and outside follow from it.`,
  ),
  "pair-side-wrong": sentence("look", () => "One is taken for a left and one for a right last, but they fit each other without a mirror, so one side is told wrong. Say for each which foot it is for: inside and outside follow from it."),
  "pair-differs-at": sentence(
    "look",
    (d: { byMm: number; where: string }) =>
      `The second last ${d.byMm > 0 ? "stands out" : "lies back"} by ${mm1(d.byMm)} ${d.where}. Feel the place on both lasts: a dent, a built-up piece for one foot, or a fault of the scan.`,
  ),
};

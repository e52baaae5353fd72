import { sentence } from "../sentence.ts";

export const shellSentences = {
  "flat-pattern-folds": sentence(
    "look",
    (d: { triangles: number }) => `The flat pattern folds over in ${d.triangles} small places; it cannot be trusted there. Check the last's surface or choose a smaller spring.`,
  ),
  "topline-crosses-feather": sentence("stop", (_: object) => "The topline leaves the upper's surface: a side is too low or the throat too near the toe. Raise the side heights or lengthen the throat depth."),
  "bottom-open": sentence("stop", (d: { xMm: number }) => `The bottom of the last has a hole ${d.xMm.toFixed(0)} mm from the seat point. Scan the last again with its bottom covered.`),
  "flat-pattern-overlaps": sentence("look", (d: { where: string }) => `The flat pattern lies over itself at the ${d.where}. Add spring or choose a cut with more seams.`),
};

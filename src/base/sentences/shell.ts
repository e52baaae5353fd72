import { sentence } from "../sentence.ts";

export const shellSentences = {
  "flat-pattern-overlaps": sentence("look", (d: { where: string }) => `The flat pattern lies over itself at the ${d.where}. Add spring or choose a cut with more seams.`),
};

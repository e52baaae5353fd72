import { sentence } from "../sentence.ts";

export const lineSentences = {
  "throat-behind-vamp-point": sentence("look", (d: { throatMm: number; vampPointMm: number }) => `The throat lies ${d.throatMm.toFixed(1)} mm from the toe, behind the vamp point at ${d.vampPointMm.toFixed(1)} mm: it will cut into the instep. Shorten the throat depth.`),
};

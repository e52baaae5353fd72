import { sentence } from "../sentence.ts";

export const lastingSentences = {
  "lasting-hole": sentence("stop", (d: { where: string }) => `The last has a hole beneath the upper, ${d.where}: nothing can be pulled over it there. Close it in the scan, or scan the last anew.`),
};

import { sentence } from "../sentence.ts";

export const lastSentences = {
  "not-a-last": sentence("stop", (d: { why: string }) => `This does not look like a shoe last: ${d.why}.`),
};

import { sentence } from "../sentence.ts";

export const sheetSentences = {
  "scale-wrong": sentence("stop", (d: { file: string; foundMm: number; wantedMm: number }) => `${d.file} was read back at ${d.foundMm.toFixed(2)} mm where ${d.wantedMm.toFixed(2)} mm was wanted, so it was not kept.`),
};

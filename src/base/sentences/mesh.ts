import { sentence } from "../sentence.ts";

export const meshSentences = {
  "file-empty": sentence("stop", (d: { file: string }) => `${d.file} is empty. Export the scan again.`),
};

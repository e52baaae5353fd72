import { sentence } from "../sentence.ts";

export const jobSentences = {
  "job-unreadable": sentence("stop", (d: { file: string; why: string }) => `${d.file} cannot be read as a job: ${d.why}.`),
};

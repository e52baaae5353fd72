// What is said of pictures goes to the job that has some, and is refused by one that has none; never dropped.
import { expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { type TapeWords, withTapeWords } from "../../src/cli/open.ts";
import { defaultJob, jobForScan, jobForTape } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { demoMeasurements } from "#last/demo.ts";

const taped = jobForTape({ photos: ["a.jpg"], side: "left" });
const drawn: Job = { ...defaultJob(), last: { from: "measures", measures: demoMeasurements, outlines: { bottom: "bottom.jpg" } } };
const scan = jobForScan("last.stl");

test("a taped job takes the bar and face-down, drawn outlines take the bar", () => {
  expect(withTapeWords(taped, { faceDown: true, barMm: 199 }, "a").last).toEqual({ from: "tape", tape: { photos: ["a.jpg"], side: "left", faceDown: true, barMm: 199 } });
  expect(withTapeWords(drawn, { barMm: 199 }, "a").last).toMatchObject({ outlines: { bottom: "bottom.jpg", barMm: 199 } });
});

test("without a word every job stays as it is", () => {
  for (const job of [taped, drawn, scan, defaultJob()]) expect(withTapeWords(job, {}, "a")).toEqual(job);
});

test.each<[string, Job, TapeWords, string]>([
  ["a scan, the bar", scan, { barMm: 199 }, "--bar"],
  ["a scan, face-down", scan, { faceDown: true }, "--face-down"],
  ["the example, the bar", defaultJob(), { barMm: 199 }, "--bar"],
  ["the example, face-down", defaultJob(), { faceDown: true }, "--face-down"],
  ["the example, the tape", defaultJob(), { side: "left" }, "--tape"],
  ["drawn outlines, face-down", drawn, { faceDown: true }, "--face-down"],
])("refused: %s", (_, job, words, option) => {
  const refused = () => withTapeWords(job, words, "what was named");
  expect(refused).toThrow(Refusal);
  expect(refused).toThrow(new RegExp(`^${option} is for .*what was named.*Leave ${option} out`));
});

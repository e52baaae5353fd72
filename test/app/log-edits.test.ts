// What was measured on shoes, written into the job and taken out again.
import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import { keepForetold, measureOf, pairsIn, removePair, setMeasureOf, setShoeNote, shoeIn } from "#app/state/log-edits.ts";
import { numberAt } from "#app/state/standing.ts";

const made = { last: "Example", leather: "goat", asked: { throatDepthMm: 72 }, foretold: { throatDepthMm: 70.1, perTenthMm: -0.6, factor: 1 } };
const job = defaultJob();
const left = setMeasureOf(job, 1, "left", made, "throatDepthMm", 70.5);

test("the first measure writes the shoe down with what was asked and foretold then", () => {
  expect(left.log).toEqual([{ pair: 1, side: "left", ...made, measured: { throatDepthMm: 70.5 } }]);
  const later = setMeasureOf(left, 1, "left", { last: "Other", leather: "calf" }, "backHeightMm", 55);
  expect(later.log).toEqual([{ pair: 1, side: "left", ...made, measured: { throatDepthMm: 70.5, backHeightMm: 55 } }]);
  expect(checkedJob("test", later)).toEqual(later);
});

test("a margin is written down by its draft", () => {
  const margin = setMeasureOf(left, 1, "left", made, "margin 4", 12.5);
  expect(shoeIn(margin, 1, "left")!.measured.marginsMm).toEqual({ 4: 12.5 });
  expect(measureOf(shoeIn(margin, 1, "left"), "margin 4")).toBe(12.5);
  expect(numberAt(margin, "shoe 1 left margin 4")).toBe(12.5);
  expect(setMeasureOf(margin, 1, "left", made, "margin 4", undefined).log).toEqual(left.log);
});

test("a shoe of which nothing is left is no longer in the log; one with a note stays", () => {
  expect(setMeasureOf(left, 1, "left", made, "throatDepthMm", undefined).log).toEqual([]);
  const noted = setShoeNote(left, 1, "left", made, "over-wet");
  expect(setMeasureOf(noted, 1, "left", made, "throatDepthMm", undefined).log).toEqual([{ pair: 1, side: "left", ...made, measured: {}, note: "over-wet" }]);
  expect(setShoeNote(noted, 1, "left", made, "").log).toEqual(left.log);
  expect(setShoeNote(job, 1, "left", made, "")).toBe(job);
});

test("pairs are counted, and both shoes of one go together", () => {
  const pairs = setMeasureOf(setMeasureOf(left, 1, "right", made, "throatDepthMm", 70), 2, "left", made, "throatDepthMm", 71);
  expect(pairsIn(pairs)).toEqual([1, 2]);
  expect(pairsIn(removePair(pairs, 1))).toEqual([2]);
  expect(numberAt(pairs, "shoe 2 left throatDepthMm")).toBe(71);
  expect(numberAt(pairs, "shoe 2 right throatDepthMm")).toBeUndefined();
});

test("both shoes of a pair are held against the same: what stood with the first, whatever was changed since", () => {
  const over = { ...made, overMm: { throatDepthMm: 3.9 } };
  const first = setMeasureOf(job, 1, "left", over, "throatDepthMm", 74);
  const both = setMeasureOf(first, 1, "right", { last: "Other", leather: "calf", asked: { throatDepthMm: 60 } }, "throatDepthMm", 73);
  expect(both.log[1]).toEqual({ pair: 1, side: "right", ...over, measured: { throatDepthMm: 73 } });
  expect(checkedJob("test", both)).toEqual(both);
});

test("what was foretold can be put with a pair that was written down before", () => {
  const { foretold, ...untold } = made;
  const before = setMeasureOf(setMeasureOf(job, 1, "left", untold, "throatDepthMm", 70), 2, "left", untold, "throatDepthMm", 71);
  const kept = keepForetold(before, 1, foretold);
  expect(kept.log.map((entry) => entry.foretold)).toEqual([foretold, undefined]);
  expect(keepForetold(kept, 1, { throatDepthMm: 1, perTenthMm: 1 })).toEqual(kept);
});

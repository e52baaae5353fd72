// The size as makers write it; a stick length beside another size is told. Paris point: 20/3 mm a size (ISO/TS 19407:2015).
import { expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { readLast } from "#job/read-last.ts";
import { sizeSaid } from "#job/size-said.ts";

test.each([["41", 41], ["EU 41", 41], ["eu38", 38], [" 38½ ", 38.5], ["38 ½", 38.5], ["38 1/2", 38.5], ["38,5", 38.5], ["38.5", 38.5]])("%s is an EU size", (said, size) => expect(sizeSaid(said)).toBe(size));

test.each(["", "my own", "UK 5", "5", "240", "381/2", "41 and 42", "38-39", "NaN", "60"])('"%s" is none', (said) => expect(sizeSaid(said)).toBeUndefined());

test("size 41 on a stick length of 36 is told; the example and a size that is no number are not", () => {
  const job = defaultJob();
  const codes = (of: Job): string[] => readLast(of, new Map(), unwatched).findings.filter((f) => severityOf(f) === "look" && f.code === "measure-against-size").map((f) => f.code);
  if (job.last.from !== "measures") throw new Error("the example is made from measures");
  const short: Job = { ...job, last: { ...job.last, measures: { ...job.last.measures, stickLengthMm: 240 } } };
  expect(codes({ ...short, size: "41" })).toEqual(["measure-against-size"]);
  expect(codes({ ...short, size: "for Ada" })).toEqual([]);
  expect(codes(job)).toEqual([]);
});

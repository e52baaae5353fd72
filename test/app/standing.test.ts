// A number that could not be used stands in its field, whatever is done elsewhere, until it is corrected or the work holds another there.
import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { setPiece } from "#app/state/edits.ts";
import { refusedNumbers } from "#app/state/refused-numbers.ts";
import { isOwnNumber, keepStanding, keptStanding, numberAt, stillStanding, type Standing } from "#app/state/standing.ts";

const wide: Standing = { spot: "pieces shankWideMm", text: "60", sentence: "No.", over: undefined };
const job = defaultJob();

test("other numbers may change meanwhile; the newest at one spot counts", () => {
  const later = { ...wide, text: "6o" };
  expect(stillStanding([wide, { ...wide, spot: "pieces soleMm" }, later], setPiece(job, "liftMm", 4)).map((s) => s.text)).toEqual(["60", "6o"]);
  expect(stillStanding([wide], setPiece(job, "shankWideMm", 14))).toEqual([]);
});

test("several stand beside one another in their fields, the one refused last first", () => {
  const refused = { spot: "pieces soleMm", text: "99", sentence: "No." } as const;
  expect(refusedNumbers(refused, undefined, [wide, { ...refused, over: undefined }]).map((r) => [r.spot, r.text])).toEqual([["pieces soleMm", "99"], ["pieces shankWideMm", "60"]]);
});

test("the number of the work is found at its spot, and what is none of its numbers is told apart", () => {
  expect(numberAt(setPiece(job, "shankWideMm", 14), "pieces shankWideMm")).toBe(14);
  expect(numberAt(job, "last ballWidthMm")).toBe(job.last.from === "measures" ? job.last.measures.ballWidthMm : NaN);
  expect([isOwnNumber("sheets barUpMm"), isOwnNumber("scan unit"), isOwnNumber("parts cut")]).toEqual([true, false, false]);
});

test("where nothing can be kept nothing is found, and nothing breaks", () => {
  keepStanding([wide]);
  expect(keptStanding()).toEqual([]);
});

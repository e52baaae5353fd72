// Rules that contradict each other or the last: each is told by the name of its field or refused by it, and never breaks the program.
import { describe, expect, test } from "vitest";
import { explain, type FindingCode } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Files } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { completeMeasures } from "#last/measures-by-size.ts";

const pipeline = new Pipeline();
type Own = Partial<Pick<Job, "pieces" | "shell" | "parts" | "lines" | "last">>;

/** Everything that is said of the example pair with own numbers; a refusal is the one thing said. */
function saidOf(own: Own): readonly { readonly code: FindingCode; readonly says: string; readonly refused: boolean }[] {
  try {
    return pipeline.run({ ...defaultJob(), ...own }, {} as Files, { triangles: 1500 }).findings.map((f) => ({ code: f.code, says: explain(f), refused: false }));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return [{ code: error.finding.code, says: error.message, refused: true }];
  }
}

// what is asked for, what is told, words that name field and place
const told: readonly (readonly [what: string, own: Own, code: FindingCode, says: RegExp])[] = [
  ["margins wider than the heel", { pieces: { lastingHeelMm: 45 } }, "lasting-margins-overlap", /middle of the heel the lasting margins of both sides are 45 mm and 45 mm/],
  ["a margin wider than the waist", { pieces: { lastingInnerWaistMm: 45 } }, "lasting-margins-overlap", /At the waist .* 45 mm and 18 mm/],
  ["a margin too narrow for pincers", { pieces: { lastingForepartMm: 8 } }, "lasting-margin-narrow", /upper at the forepart/],
  ["no thickness of the upper", { pieces: { upperThicknessMm: 0 } }, "piece-setting-unusual", /^Thickness of the upper is 0\.0 mm/],
  ["no thickness of the lining", { pieces: { liningThicknessMm: 0 } }, "piece-setting-unusual", /^Thickness of the lining is 0\.0 mm/],
  ["a fold as wide as the throat is round", { pieces: { toplineFoldMm: 30 } }, "piece-crosses-itself", /outline of the upper crosses itself/],
  ["side seams at the joint", { parts: { cut: "quarters" }, pieces: { sideSeamBehindThroatMm: 2 } }, "side-seam-moved", /2\.0 mm behind the throat/],
  ["a lap wider than what lies over it", { parts: { cut: "quarters", seam: "lapped" }, pieces: { lapUnderMm: 30 } }, "lap-too-wide", /30\.0 mm wide/],
  ["a dog-tail as wide as the back", { parts: { backTop: "dog-tail" }, pieces: { dogTailWideMm: 30 } }, "dog-tail-too-wide", /30\.0 mm wide/],
  ["a strip over a back without a seam", { parts: { cut: "inner-seam", backStrip: true } }, "extra-left-out", /no back strip/],
  ["strap and gore in each other's way", { parts: { strap: true, gore: true } }, "gore-under-strap", /strap and gore/],
  ["a puff that would reach under the throat", { shell: { puffReachMm: 80 } }, "puff-near-throat", /80 mm/],
  ["a fold in a raw edge", { shell: { edge: "raw" }, pieces: { toplineFoldMm: 5 } }, "raw-edge-has-no-fold", /fold of 5\.0 mm is left out/],
];

const refused: readonly (readonly [what: string, own: Own, code: FindingCode, says: RegExp])[] = [
  ["an upper 9 mm thick", { pieces: { upperThicknessMm: 9 } }, "piece-setting-impossible", /^Thickness of the upper: 9 cannot be used/],
  ["a lining 9 mm thick", { pieces: { liningThicknessMm: 9 } }, "piece-setting-impossible", /^Thickness of the lining: 9 cannot be used/],
  ["a toe puff 9 mm thick", { pieces: { toePuffMm: 9 } }, "piece-setting-impossible", /^Thickness of the toe puff: 9/],
  ["a stiffener 9 mm thick", { shell: { counterMm: 9 } }, "shell-setting-impossible", /thickness of the stiffener cannot be 9/],
  ["a margin that is no number", { pieces: { lastingToeMm: Number.NaN } }, "piece-setting-impossible", /^Lasting margin at the toe: NaN/],
  ["a margin without end", { pieces: { lastingHeelMm: Infinity } }, "piece-setting-impossible", /^Lasting margin at the heel/],
  ["a seam below nothing", { pieces: { backSeamMm: -1 } }, "piece-setting-impossible", /^Closed back seam: -1/],
  ["a margin of a metre", { pieces: { lastingInnerWaistMm: 1000 } }, "piece-setting-impossible", /^Lasting margin, inner waist: 1000/],
];

describe("rules that contradict are told, with the piece or the field", () => {
  test.each(told)("%s", (_, own, code, says) => {
    const found = saidOf(own);
    expect(found.map((f) => f.code)).toContain(code);
    expect(found.filter((f) => f.code === code).map((f) => f.says).join("\n")).toMatch(says);
    expect(found.every((f) => !f.refused)).toBe(true);
  });

  test("without any of them the example has none of these", () => {
    const codes = new Set(saidOf({}).map((f) => f.code));
    expect(told.filter(([, , code]) => codes.has(code)).map(([what]) => what)).toEqual([]);
  });
});

describe("what cannot be is refused by its field's name", () => {
  test.each(refused)("%s", (_, own, code, says) => {
    const found = saidOf(own);
    expect(found.map((f) => [f.code, f.refused])).toEqual([[code, true]]);
    expect(found[0]!.says).toMatch(says);
  });

  test("after a refusal the same bench still makes the good pattern", () => {
    const good = saidOf({});
    saidOf({ pieces: { upperThicknessMm: 9 } });
    expect(saidOf({})).toEqual(good);
  });
});

test("a sharp toe on a small last, a long puff and broad skives: told, with what to set", () => {
  const { measures } = completeMeasures({ sizeEu: 35, toe: "pointed" });
  const found = saidOf({ last: { from: "measures", measures }, shell: { puffReachMm: 60, skiveMm: 25, skiveFeatherMm: 15 } }).filter((f) => f.code.startsWith("puff-"));
  expect(found.length).toBeGreaterThan(0);
  expect(found.map((f) => f.says).join("\n")).toMatch(/mm/);
});

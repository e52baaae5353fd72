import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { checkMeasured, countedEntries } from "#lasting/log-check.ts";
import { historyOf } from "#lasting/log-history.ts";
import { teachesNot } from "#lasting/log-teaching.ts";
import type { ShoeEntry } from "#lasting/log.ts";

test("what no shoe measures is named at its field and left out", () => {
  for (const value of [0, -3, 500, 6.8, Number.NaN, Number.POSITIVE_INFINITY]) {
    const { measured, findings } = checkMeasured("left", { throatDepthMm: value, backHeightMm: 54 }, 245);
    expect(measured).toEqual({ backHeightMm: 54 });
    expect(findings).toMatchObject([{ code: "log-measure-impossible", data: { field: "throatDepthMm", side: "left" } }]);
    expect(explain(findings[0]!)).toMatch(/^Left shoe, throat depth: .+ cannot be; on this last it lies between 10 and 122 mm\. Read the tape again, in mm\.$/);
  }
  // A throat deeper than the last is long.
  expect(checkMeasured("right", { throatDepthMm: 260 }, 245).measured).toEqual({});
  expect(checkMeasured("right", { throatDepthMm: 70, marginsMm: { 4: 500, 5: 12 } }, 245)).toMatchObject({ measured: { throatDepthMm: 70, marginsMm: { 5: 12 } }, findings: [{ data: { field: "marginsMm.4" } }] });
});

test("what is far from what was asked is kept and asked about again", () => {
  const { measured, findings } = checkMeasured("left", { throatDepthMm: 82 }, 245, { throatDepthMm: 70 });
  expect(measured).toEqual({ throatDepthMm: 82 });
  expect(findings.map(explain)).toEqual(["Left shoe, throat depth: 82.0 mm was measured, 70.0 mm was asked. Measure it once more, along the upper."]);
  expect(checkMeasured("left", { throatDepthMm: 72 }, 245, { throatDepthMm: 70 }).findings).toEqual([]);
});

const shoe = (pair: number, side: "left" | "right", throatDepthMm: number, more: Partial<ShoeEntry> = {}): ShoeEntry => ({ pair, side, last: "37", leather: "goat", measured: { throatDepthMm }, asked: { throatDepthMm: 70 }, ...more });

test("of a shoe written down twice the later entry counts, and it is told", () => {
  const { entries, findings } = countedEntries([shoe(1, "left", 60), shoe(1, "right", 70), shoe(1, "left", 71), shoe(2, "left", 70, { measured: {} })]);
  expect(entries.map(({ side, measured }) => [side, measured.throatDepthMm])).toEqual([["right", 70], ["left", 71]]);
  expect(findings.map(explain)).toEqual(["The left shoe of pair 1 is written down twice. The later one counts; take the other one out, or give it its own pair."]);
});

test("the history stands by last and leather, pair after pair, each judged by what was asked of it then", () => {
  const foretold = { throatDepthMm: 71, perTenthMm: -0.8 };
  const log = [
    shoe(2, "left", 68.6, { asked: { throatDepthMm: 68 }, foretold }),
    shoe(1, "left", 72, { foretold }),
    shoe(1, "right", 70.4, { foretold }),
    shoe(3, "left", 70, { leather: "calf" }),
  ];
  const history = historyOf(log);
  expect(history.map(({ leather, pairs }) => [leather, pairs.map(({ pair }) => pair)])).toEqual([["goat", [1, 2]], ["calf", [3]]]);
  const [first, second] = history[0]!.pairs;
  expect(first).toMatchObject({ alike: { verdict: "outside" }, asAsked: { left: { verdict: "outside" }, right: { verdict: "inside" } }, missMm: expect.closeTo(0.2, 9) });
  expect(second).toMatchObject({ asAsked: { left: { verdict: "inside" } }, missMm: expect.closeTo(-2.4, 9) });
  expect(second!.alike).toBeUndefined();
  expect(historyOf([])).toEqual([]);
});

test("what a tape read over the lasted upper counts as it lies on the bare last; entries without a difference count as bare", () => {
  const overMm = { throatDepthMm: 3.9, backHeightMm: 2 };
  const log = [shoe(1, "left", 73.9, { overMm, foretold: { throatDepthMm: 70, perTenthMm: -0.8 } }), shoe(1, "right", 70)];
  expect(countedEntries(log).entries.map(({ measured }) => measured.throatDepthMm)).toEqual([70, 70]);
  expect(historyOf(log)[0]!.pairs[0]).toMatchObject({ alike: { verdict: "inside" }, asAsked: { left: { verdict: "inside" } }, missMm: expect.closeTo(0, 9) });
});

test("a pair's number stands for one pair, whatever leather the job cuts by then", () => {
  expect(countedEntries([shoe(1, "left", 60, { leather: "calf" }), shoe(1, "left", 70)]).entries).toHaveLength(1);
});

test("a pair that teaches nothing says why", () => {
  const foretold = { throatDepthMm: 71, perTenthMm: -0.8 };
  const why = (entries: readonly ShoeEntry[], leather = "goat"): string | undefined => {
    const found = teachesNot(entries, leather);
    return found && explain(found);
  };
  expect(why([])).toBeUndefined();
  expect(why([shoe(1, "left", 70, { foretold })])).toBeUndefined();
  expect(why([shoe(1, "left", 70)])).toContain("nothing that was foretold stands with it");
  expect(why([shoe(1, "left", 70, { foretold, measured: {} })])).toContain("type the throat of either shoe");
  expect(why([shoe(1, "left", 70, { foretold: { ...foretold, perTenthMm: 0.02 } })])).toContain("0.02 mm");
  expect(why([shoe(1, "left", 70, { foretold })], "calf")).toContain("made of goat");
});

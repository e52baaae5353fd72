import fc from "fast-check";
import { expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { judgePair, judgeShoe } from "#lasting/log-judge.ts";
import { tolerances } from "#lasting/log-tolerances.ts";
import { endNames } from "#lasting/log.ts";

// A national factory rule of 2014 for shoes: back height of low-cut shoes ≤ 1.0 mm, vamp opening ≤ 1.0 to 1.5 mm between left and right.
test("a pair passes and fails where a factory rule lets it", () => {
  const shoe = { throatDepthMm: 70, backHeightMm: 54 };
  expect(judgePair(shoe, { throatDepthMm: 71, backHeightMm: 53 }).verdict).toBe("just inside");
  expect(judgePair(shoe, { throatDepthMm: 71.1, backHeightMm: 54 }).verdict).toBe("outside");
  expect(judgePair(shoe, { throatDepthMm: 70, backHeightMm: 55.1 }).rows[1]).toMatchObject({ what: "backHeightMm", verdict: "outside", beyondMm: expect.closeTo(0.1, 9) });
  // Common practice, no source: side heights ≤ 1.5, sole margin ≤ 0.5, heel height ≤ 0.5 mm.
  expect([tolerances.innerHeightMm.mm, tolerances.outerHeightMm.mm, tolerances.soleMarginMm.mm, tolerances.heelHeightMm.mm]).toEqual([1.5, 1.5, 0.5, 0.5]);
});

test("what a tape reads as exactly the tolerance is inside, whatever a computer makes of the tenths", () => {
  for (let tenths = 0; tenths < 1000; tenths++) {
    const at = tenths / 10;
    expect(judgePair({ throatDepthMm: at + 1 }, { throatDepthMm: at }).verdict).toBe("just inside");
    expect(judgePair({ throatDepthMm: (tenths + 11) / 10 }, { throatDepthMm: at }).verdict).toBe("outside");
  }
});

test("left against right is right against left, and a pair that is alike is inside", () => {
  const mm = fc.double({ min: 20, max: 90, noNaN: true });
  const shoe = fc.record(Object.fromEntries(endNames.map((name) => [name, mm])) as Record<(typeof endNames)[number], typeof mm>);
  fc.assert(
    fc.property(shoe, shoe, (a, b) => {
      const ab = judgePair(a, b), ba = judgePair(b, a);
      expect(ab.verdict).toBe(ba.verdict);
      ab.rows.forEach((row, k) => expect(row.offMm + ba.rows[k]!.offMm).toBeCloseTo(0, 12));
      expect(judgePair(a, a).verdict).toBe("inside");
      expect(judgeShoe("left", a, a).verdict).toBe("inside");
      expect(ab.verdict === "outside").toBe(endNames.some((name) => Math.round(10 * Math.abs(a[name] - b[name])) / 10 > tolerances[name].mm));
    }),
    { seed: 6, numRuns: 300 },
  );
});

test("only what was measured on both is compared; nothing measured gives no verdict", () => {
  expect(judgePair({ throatDepthMm: 70 }, { backHeightMm: 54 })).toEqual({ rows: [], findings: [] });
  expect(judgeShoe("left", {}, { throatDepthMm: 70 }).verdict).toBeUndefined();
  const rows = judgePair({ marginsMm: { 1: 16, 4: 14 } }, { marginsMm: { 1: 13, 10: 12 } }).rows;
  expect(rows).toEqual([{ what: "marginMm", draft: 1, offMm: 3, toleranceMm: 2, verdict: "outside", beyondMm: 1 }]);
});

test("every row is said in the maker's words, with the place, the amount and the limit", () => {
  const { findings } = judgePair({ throatDepthMm: 71.6, backHeightMm: 53.2, heelHeightMm: 20 }, { throatDepthMm: 70, backHeightMm: 54, heelHeightMm: 20 });
  expect(findings.map((f) => [severityOf(f), explain(f)])).toEqual([
    ["look", "The throat is 1.6 mm farther from the toe on the left shoe. Outside by 0.6 mm: 1.0 mm at most."],
    ["note", "The back is 0.8 mm lower on the left shoe. Just inside: 1.0 mm at most."],
    ["note", "The heel is alike on both shoes. Inside: 0.5 mm at most."],
  ]);
  expect(explain(judgeShoe("right", { outerHeightMm: 33 }, { outerHeightMm: 36 }).findings[0]!)).toBe("Right shoe: the outer side is 3.0 mm lower than asked. Outside by 1.5 mm: 1.5 mm at most.");
});

test("what is judged is what is shown: nothing is outside by nothing", () => {
  // Asked 40.453, shown as 40.5: a tape at 42 lies 1.5 mm off, which is what a side may.
  expect(judgeShoe("left", { innerHeightMm: 42 }, { innerHeightMm: 40.453 }).verdict).toBe("just inside");
  for (let hundredths = 0; hundredths < 400; hundredths++) {
    for (const { verdict, beyondMm } of [...judgeShoe("left", { innerHeightMm: 38 + hundredths / 100 }, { innerHeightMm: 40.453 }).rows, ...judgePair({ innerHeightMm: 38 + hundredths / 100 }, { innerHeightMm: 40 }).rows])
      expect(verdict !== "outside" || beyondMm >= 0.1 - 1e-9).toBe(true);
  }
});

// A shoe that came out right reads more over its upper than was asked on the bare last, and is called right all the same.
import fc from "fast-check";
import { expect, test } from "vitest";
import { judgeShoe } from "#lasting/log-judge.ts";
import { endNames } from "#lasting/log.ts";
import { askedOver, onBareLast, overByName, overUpperOf } from "#lasting/over-upper.ts";

const rows = [
  { key: "joint", half: "medial", onLastMm: 100, overMm: 104 },
  { key: "centre", onLastMm: 72, overMm: 75, tapeMoreMm: 3.865 },
  { key: "back", onLastMm: 55, overMm: 56.7, tapeMoreMm: 2.049 },
  { key: "lowest", half: "medial", onLastMm: 40, overMm: 40.5, tapeMoreMm: 0.645 },
  { key: "lowest", half: "lateral", onLastMm: 37, overMm: 37.8, tapeMoreMm: 1.105 },
] as const;

test("what a tape reads more is named as in the log, to a tenth", () => {
  expect(overByName(overUpperOf(rows))).toEqual({ throatDepthMm: 3.9, backHeightMm: 2, innerHeightMm: 0.6, outerHeightMm: 1.1 });
});

test("a shoe that reads over its upper what is shown as asked is inside at every end, whatever lies beneath", () => {
  const mm = (min: number, max: number) => fc.record(Object.fromEntries(endNames.map((name) => [name, fc.double({ min, max, noNaN: true })])) as Record<(typeof endNames)[number], ReturnType<typeof fc.double>>);
  fc.assert(
    fc.property(mm(30, 90), mm(0, 6), (asked, lies) => {
      const over = overByName({ throatMm: lies.throatDepthMm, backMm: lies.backHeightMm, lowestMm: { medial: lies.innerHeightMm, lateral: lies.outerHeightMm } });
      const shown = askedOver(asked, over), { rows: judged } = judgeShoe("left", onBareLast(shown, over), asked);
      expect(judged.map(({ verdict }) => verdict)).toEqual(["inside", "inside", "inside", "inside"]);
      for (const { offMm } of judged) expect(offMm).toBeCloseTo(0, 9);
    }),
    { seed: 6, numRuns: 200 },
  );
});

test("a shoe without a difference was taped on the bare last, margins and sole are as they were", () => {
  const measured = { throatDepthMm: 72, marginsMm: { 4: 12 }, soleMarginMm: 3 };
  expect(onBareLast(measured)).toEqual(measured);
  expect(onBareLast(measured, { throatDepthMm: 3.9 })).toEqual({ ...measured, throatDepthMm: expect.closeTo(68.1, 9) });
  expect(askedOver({ throatDepthMm: 72.04 })).toEqual({ throatDepthMm: 72 });
});

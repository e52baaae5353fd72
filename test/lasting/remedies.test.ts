import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { bandOf } from "#lasting/band.ts";
import { compensate, type Compensated } from "#lasting/compensate.ts";
import { draftEffects } from "#lasting/draft-effects.ts";
import type { Lasted } from "#lasting/lasted.ts";
import type { Mechanics } from "#lasting/lasting-case.ts";
import { limitsOf, whatHelps } from "#lasting/remedies.ts";
import { standIn, standInCase } from "./stand-in.ts";

const good = compensate(standInCase, { mechanics: standIn() });
const withLasted = (more: Partial<Lasted>): Compensated => ({ ...good, lasted: { ...good.lasted, ...more } });
const draft = { number: 1, name: "toe centre", at: [0, 0, 0], alongMm: 0, pullN: 20, heldN: 15, word: "firm", overMm: 1, marginMm: 20 } as const;

test("where nothing stands against the pattern nothing is tried", () => {
  let pulls = 0;
  expect(whatHelps(standInCase, good, undefined, { mechanics: standIn({ onPull: () => pulls++ }) })).toEqual({ limits: [], tried: [], findings: [] });
  expect(pulls).toBe(0);
});

test("each thing that a pattern alone cannot put right is seen", () => {
  const trouble = (kind: "grain" | "tears" | "stands off" | "pleats") => withLasted({ troubles: [{ kind, at: [0, 0, 0], by: 0.3 }] });
  expect(limitsOf({ ...good, reached: false })).toEqual(["short"]);
  expect(limitsOf(trouble("grain"))).toEqual(["grain"]);
  expect(limitsOf(trouble("tears"))).toEqual(["grain"]);
  expect(limitsOf(trouble("stands off"))).toEqual(["stands off"]);
  // Pleats at the toe are usual.
  expect(limitsOf(trouble("pleats"))).toEqual([]);
  expect(limitsOf(withLasted({ drafts: [{ ...draft, pullN: 190 }] }))).toEqual(["strong"]);
  expect(limitsOf(withLasted({ drafts: [{ ...draft, number: 4, pullN: 10 }] }))).toEqual([]);
  expect(limitsOf(withLasted({ drafts: [draft, { ...draft, marginMm: 6 }] }))).toEqual(["margin"]);
});

test("a throat whose band is wider than a pair may differ is told, with what narrows it", () => {
  const mechanics = standIn({ offMm: 6, gain: 1 }), made = compensate(standInCase, { mechanics }), banding = bandOf(standInCase, made, { mechanics });
  const { limits, tried, findings } = whatHelps(standInCase, made, banding, { mechanics });
  expect(limits).toEqual(["band"]);
  // The stand-in's throat moves in proportion to what the upper gives: a leather that gives a third less narrows the band by a third.
  expect(tried.find(({ remedy }) => remedy === "leather")).toMatchObject({ helps: expect.arrayContaining(["band"]) });
  expect(tried.find(({ remedy }) => remedy === "tape")!.helps).toEqual([]);
  const said = findings.map(explain);
  expect(said[0]).toMatch(/^Leathers like this one differ so much that the throat may end \d\.\d mm to either side; 1\.0 mm is what a pair may be apart\./);
  expect(said.join("\n")).toMatch(/What helps: an upper that gives a third less\. The throat may then end \d\.\d mm to either side instead of \d\.\d mm/);
});

test("where no remedy helps, that is told", () => {
  const still: Mechanics = { ...standIn(), puller: (flat, on) => (_, uv, watch) => standIn({ offMm: 1 }).puller(flat, on)(standInCase, uv, watch) };
  const { tried, findings } = whatHelps(standInCase, { ...good, reached: false }, undefined, { mechanics: still });
  expect(tried.map(({ remedy }) => remedy)).toEqual(["tape", "direction", "lining", "leather"]);
  expect(findings.map(({ code }) => code)).toEqual(["pattern-limit", "no-remedy"]);
});

test("what a newton does at each draft is read between a little more and a little less", () => {
  const base = standIn(), mechanics: Mechanics = {
    ...base,
    puller: (flat, on) => (making, uv, watch) => {
      const lasted = base.puller(flat, on)(making, uv, watch), { pullToeN, pullWaistN } = making.settings;
      const { ends } = lasted, lowestMm = { medial: ends.lowestMm.medial - 0.1 * pullWaistN, lateral: ends.lowestMm.lateral - 0.08 * pullWaistN };
      return { ...lasted, ends: { ...ends, throatDepthMm: ends.throatDepthMm - 0.11 * pullToeN, lowestMm }, drafts: [{ ...draft, overMm: 0.2 * pullToeN }] };
    },
  };
  const { from, effects } = draftEffects(standInCase, good, { mechanics });
  expect(from).toBe("reckoned");
  expect(effects.map((effect) => effect.draft)).toEqual([1, 4, 5, 6, 7, 8, 9, 10]);
  expect(effects[0]).toMatchObject({ perN: { throatDepthMm: expect.closeTo(-0.11, 9) }, edgePerN: expect.closeTo(0.2, 9) });
  expect(effects[6]!.perN).toMatchObject({ innerHeightMm: expect.closeTo(-0.1, 9), outerHeightMm: expect.closeTo(0, 9) });
  expect(effects[7]!.perN).toMatchObject({ innerHeightMm: expect.closeTo(0, 9), outerHeightMm: expect.closeTo(-0.08, 9) });
});

test("drafts are tried about what they were pulled with, and past their marks", () => {
  const seen: (readonly [backN: number, atMarks: boolean])[] = [];
  const base = standIn(), mechanics: Mechanics = { ...base, puller: (flat, on) => (making, uv, watch) => {
    seen.push([making.settings.pullBackN, making.settings.stopAtMarks]);
    return base.puller(flat, on)(making, uv, watch);
  } };
  draftEffects(standInCase, withLasted({ drafts: [{ ...draft, number: 4, pullN: 16 }] }), { mechanics });
  expect([...new Set(seen.map(([backN]) => backN))].sort((a, b) => a - b)).toEqual([12, 16, 20]);
  expect(seen.some(([, atMarks]) => atMarks)).toBe(false);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { adviseDrafts, type Advice } from "#lasting/log-advice.ts";
import { thumbEffects, type DraftEffects } from "#lasting/log-effects.ts";
import { endNames, type Measured } from "#lasting/log.ts";
import { lastingFrom } from "#lasting/settings.ts";

const asked = { throatDepthMm: 70, backHeightMm: 54, innerHeightMm: 39, outerHeightMm: 36 };
const pulls = lastingFrom();
const right: Measured = { ...asked };
const moved = (moves: readonly Advice[]): readonly (readonly [string, number, "ease" | "pull"])[] => moves.map(({ side, move }) => [side, move.draft, move.byN < 0 ? "ease" : "pull"]);

// Facts of the trade: the toe's draft draws the throat forward, the back's draft draws the back down, the sides' drafts draw the sides
// down (a handbook of shoemaking: "too much = quarters low, too little = high"; the others common practice, no source).
test("the draft that answers is eased or pulled the way the trade knows", () => {
  const one = (off: Measured) => moved(adviseDrafts({ left: right, right: { ...right, ...off } }, asked, { pulls }).moves);
  expect(one({ throatDepthMm: 68.4 })[0]).toEqual(["right", 1, "ease"]);
  expect(one({ throatDepthMm: 71.5 })[0]).toEqual(["right", 1, "pull"]);
  expect(one({ backHeightMm: 55.4 }).find(([, draft]) => draft === 4)).toEqual(["right", 4, "pull"]);
  expect(one({ backHeightMm: 53.2, throatDepthMm: 70 })).toEqual([]);
  expect(one({ backHeightMm: 52.8 }).find(([, draft]) => draft === 4)).toEqual(["right", 4, "ease"]);
  expect(one({ innerHeightMm: 41 })[0]![2]).toBe("pull");
  expect(one({ innerHeightMm: 41 }).map(([, draft]) => draft)).toContain(9);
  // A draft that stops at its mark is light: easing the waist alone does not give 1.6 mm, so the seat side follows.
  expect(one({ outerHeightMm: 34.4 })).toEqual([["right", 6, "ease"], ["right", 10, "ease"]]);
});

test("of two shoes too far apart the one farther from what was asked is changed, and that is said", () => {
  const { moves, findings } = adviseDrafts({ left: { throatDepthMm: 70.3 }, right: { throatDepthMm: 69.1 } }, asked, { pulls });
  expect(moved(moves)).toEqual([["right", 1, "ease"]]);
  expect(findings.map(explain)).toEqual([
    "The shoes are 1.2 mm apart at the throat. The right one is farther from what was asked (0.9 mm against 0.3 mm): change that one.",
    "These pulls are reckoned, not felt. Move a draft by half first, look, measure again; your hand and eye decide.",
  ]);
  expect(explain(moves[0]!.finding)).toMatch(/^Right shoe, draft 1 \(toe centre\): ease it by about \d+ N, to strong \(\d+ N\); its edge goes back by about \d\.\d mm\. The throat comes 1\.\d mm farther from the toe\. Rule of thumb\.$/);
  expect(explain(adviseDrafts({ left: { throatDepthMm: 71.3 }, right: { throatDepthMm: 69.1 } }, {}, { pulls }).findings[0]!)).toContain("Nothing was asked there");
});

test("with moves made as advised the shoes are inside, or what is left is told", () => {
  const reckoned: DraftEffects = { from: "reckoned", effects: thumbEffects.effects.map((e) => ({ ...e, perN: { ...e.perN, throatDepthMm: e.perN.throatDepthMm + 0.01, backHeightMm: e.perN.backHeightMm - 0.004 } })) };
  const off = fc.double({ min: -3, max: 3, noNaN: true });
  fc.assert(
    fc.property(fc.record({ throatDepthMm: off, backHeightMm: off, innerHeightMm: off, outerHeightMm: off }), fc.constantFrom(thumbEffects, reckoned), (by, effects) => {
      const shoe = Object.fromEntries(endNames.map((name) => [name, asked[name] + by[name]])) as typeof asked;
      const { moves, findings } = adviseDrafts({ left: shoe }, asked, { pulls, effects });
      const told = findings.flatMap((f) => (f.code === "log-not-by-drafts" ? [f.data.what] : []));
      for (const name of endNames) {
        const after = moves.reduce((mm, { move }) => mm + move.byN * effects.effects.find((e) => e.draft === move.draft)!.perN[name], shoe[name]);
        const limit = (name.startsWith("throat") || name.startsWith("back") ? 1 : 1.5) + 0.3;
        if (Math.abs(after - asked[name]) > limit) expect(told).toContain(name);
        // What cannot be reached may be carried along a little by what can.
        expect(Math.abs(after - asked[name])).toBeLessThanOrEqual(Math.max(limit, Math.abs(by[name]) + 0.3) + 1e-6);
      }
      for (const { move } of moves) expect(move.toN).toBeGreaterThanOrEqual(2 - 1e-9);
      for (const { move } of moves) expect(move.toN).toBeLessThanOrEqual(Math.max(2 * (move.toN - move.byN), move.toN - move.byN + 12) + 1e-9);
      expect(new Set(moves.map(({ move }) => move.draft)).size).toBe(moves.length);
    }),
    { seed: 6, numRuns: 300 },
  );
});

test("a pair inside its tolerances is left alone", () => {
  expect(adviseDrafts({ left: right, right: { ...right, throatDepthMm: 70.8, innerHeightMm: 38 } }, asked, { pulls })).toEqual({ moves: [], findings: [] });
});

test("once cemented it is told what can still be done; sole and heel are always put right on the shoe", () => {
  const shoes = { left: { throatDepthMm: 70, soleMarginMm: 5, heelHeightMm: 20 }, right: { throatDepthMm: 68, soleMarginMm: 4.2, heelHeightMm: 20.6 } };
  const { moves, findings } = adviseDrafts(shoes, asked, { pulls, cemented: { right: true } });
  expect(moves).toEqual([]);
  expect(findings.map(({ code }) => code)).toEqual(["log-change-which", "log-cemented", "log-bottom-apart", "log-bottom-apart"]);
  expect(findings.slice(2).map(explain)).toEqual([
    "The sole of the left shoe is 0.8 mm wider: trim its sole edge by half of that at a time until both are alike.",
    "The heel of the right shoe is 0.6 mm higher: take that much off its lifts, or add a layer of that thickness under the other shoe's.",
  ]);
});

test("easing is not advised in silence where too little margin would be left to cement", () => {
  const { findings } = adviseDrafts({ left: { throatDepthMm: 68, marginsMm: { 1: 9 } } }, asked, { pulls });
  expect(findings.map(({ code }) => code)).toContain("log-margin-thin");
});

test("no draft is taken again for what no tape shows", () => {
  // A back that stopped at its mark with 4 N can be eased by 2 N and no more, which gives a tenth.
  const effects: DraftEffects = { from: "reckoned", effects: [{ draft: 4, perN: { throatDepthMm: 0, backHeightMm: -0.06, innerHeightMm: 0, outerHeightMm: 0 }, edgePerN: 0.06, tookN: 4 }] };
  const { moves, findings } = adviseDrafts({ left: { backHeightMm: 52 } }, asked, { pulls, effects });
  expect(moves).toEqual([]);
  expect(findings).toMatchObject([{ code: "log-not-by-drafts", data: { what: "backHeightMm", byMm: 2 } }]);
});

test("once cemented, a throat too near to the toe is let back, and one too far is drawn", () => {
  const said = (throatDepthMm: number): string => explain(adviseDrafts({ left: { throatDepthMm } }, asked, { pulls, cemented: { left: true } }).findings[0]!);
  expect(said(67)).toContain("let the throat back");
  expect(said(67)).not.toContain("draw");
  expect(said(73)).toContain("draw the toe again");
});

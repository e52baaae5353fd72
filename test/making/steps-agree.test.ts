// What the steps take and tell agrees with what is bought and counted, whatever is chosen.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { makingOf } from "#making/making-of.ts";
import type { Making } from "#making/making.ts";
import { glues, type Bond } from "#making/need.ts";
import type { MakingSaid } from "#making/said.ts";
import type { Step } from "#making/steps/step.ts";
import { backTops, liningCuts, seamKinds, sockKinds, upperCuts } from "#pieces/choices.ts";
import { toplineEdges } from "#shell/settings.ts";
import { makingInput, type OwnChoices } from "../support/making-pairs.ts";
import { planned, plannedNames, planOf, textOf } from "../support/plans.ts";

const heels = [2, 5, 12, 30] as const;

const choices = fc.record({
  parts: fc.record({
    cut: fc.constantFrom(...upperCuts), seam: fc.constantFrom(...seamKinds), backSeam: fc.constantFrom("closed" as const, "butted" as const), backTop: fc.constantFrom(...backTops), lining: fc.constantFrom(...liningCuts),
    sock: fc.constantFrom(...sockKinds), strap: fc.boolean(), gore: fc.boolean(), bow: fc.boolean(), toeCap: fc.boolean(), backStrip: fc.boolean(), sideLining: fc.boolean(),
  }),
  shell: fc.record({ edge: fc.constantFrom(...toplineEdges), counterMm: fc.constantFrom(0, 1, 2) }),
  pieces: fc.record({
    lapFoldMm: fc.constantFrom(0, 4), strapFoldMm: fc.constantFrom(0, 4), toeCapFoldMm: fc.constantFrom(0, 4), backStripFoldMm: fc.constantFrom(0, 4), toePuffMm: fc.constantFrom(0, 0.8, 1.2), liningTrimMm: fc.constantFrom(0, 3),
  }),
});
const sayings: fc.Arbitrary<MakingSaid> = fc.record({ cement: fc.constantFrom("contact", "water-based"), pairs: fc.constantFrom(1, 5), lasts: fc.constantFrom(1, 2) });

const onHeel = (heelHeightMm: number): Job => {
  const job = defaultJob(), { last } = job;
  if (last?.from !== "measures") throw new Error("the example pair has no measures");
  return { ...job, last: { ...last, measures: { ...last.measures, heelHeightMm } } };
};

/** Drawn once, the same each time; every edge at every heel among them. */
const drawn = fc.sample(fc.tuple(choices, sayings), { numRuns: 60, seed: 20 }).map(([own, said], k) => ({
  own: { ...own, shell: { ...own.shell, edge: toplineEdges[k % toplineEdges.length]! } } satisfies OwnChoices, said, heelMm: heels[Math.floor(k / toplineEdges.length) % heels.length]!,
}));

/** Where each bond is told: the step, and the words there. */
const toldAt: readonly (readonly [RegExp, readonly (readonly [string, RegExp])[]])[] = [
  [/^fold of the topline$/u, [["fold-topline", /Brush latex thinly/u]]],
  [/^folds of the lapped seams$/u, [["sew-side-seams", /turn it by 4 mm on latex/u]]],
  [/^fold of the toe cap$/u, [["sew-toe-cap", /over by 4 mm on latex/u]]],
  [/^folds of the back strip$/u, [["sew-back-strip", /over by 4 mm on latex/u]]],
  [/^folds of the strap$/u, [["make-strap", /Turn 4 mm over on latex/u]]],
  [/^seam tapes$/u, [["tape-seams", /Brush latex over it/u], ["join-lining", /Brush latex over it and tape/u], ["sew-side-seams", /Brush latex on the flesh side along both edges/u], ["sew-back-seam", /Brush latex on the flesh side along both edges/u]]],
  [/^lapped seams$/u, [["sew-side-seams", /Stick the edge towards the toe over the other/u]]],
  [/^bagged topline$/u, [["bag-topline", /stick it with latex/u]]],
  [/^dog-tail$/u, [["sew-dog-tail", /Stick it thinly/u]]],
  [/^toe cap on the vamp$/u, [["sew-toe-cap", /Stick the edge alone/u]]],
  [/^back strip on the quarters$/u, [["sew-back-strip", /; stick it and stitch/u]]],
  [/^strap on its lining$/u, [["make-strap", /Stick the lining beneath with latex/u]]],
  [/^binding of the topline$/u, [["bind-topline", /stick it down with latex/u], ["wrap-topline", /Stick it with latex/u]]],
  [/^stiffener to the (lining|upper)$/u, [["set-stiffeners", /on both faces of the stiffener/u]]],
  [/^toe puff to the (lining|upper)$/u, [["set-puffs", /on both faces of the puff/u]]],
  [/^side lining to the (lining|upper)$/u, [["set-stiffeners", /side linings between, latex on both their faces/u]]],
  [/^lining to the upper$/u, [["set-stiffeners", /Brush latex that grips slowly/u], ["line-upper", /Brush latex on both faces/u], ["join-lining", /Stick with latex/u]]],
  [/^second board to the insole$/u, [["prime-boards", /First coat on both boards/u], ["coat-boards", /Second coat on both boards/u]]],
  [/^shank between the boards$/u, [["coat-boards", /one on the shank's two faces/u]]],
  [/^lasting margin to the insole$/u, [["open-margins", /First coat on margin and insole/u], ["coat-margins", /Second coat on margin and insole/u]]],
  [/^upper to the lining in the margin$/u, [["open-margins", /between lining and upper too/u], ["coat-margins", /between lining and upper/u]]],
  [/^bottom filler$/u, [["fit-fillers", /First coat on the hollow/u], ["coat-fillers", /Second coat on the hollow, and one on the filler/u]]],
  [/^layers of the filler$/u, [["coat-fillers", /each face of its layers/u]]],
  [/^outsole$/u, [["prime-soles", /First coat, thin, on both/u], ["coat-soles", /Second coat on both faces/u]]],
  [/^split lift$/u, [["prime-heels", /First coat on all/u], ["coat-heels", /both faces of the split lift/u]]],
  [/^lift \d+$/u, [["prime-heels", /First coat on all/u], ["coat-heels", /every lift on both faces/u]]],
  [/^top piece$/u, [["prime-heels", /First coat on all/u], ["coat-heels", /the top piece on one/u]]],
  [/^sock$/u, [["lay-socks", /Brush latex on its flesh side/u]]],
];
/** In any of these places a bond may be told; the others ask for all of theirs. */
const anyOf = /^seam tapes$|^binding of the topline$|^lining to the upper$/u;
/** Stuck in these steps is only what docs/method/making.md says is left out: bow, elastic, dabs, the lining's toe on the insole; and coats told before, spread later. */
const notCounted: readonly string[] = ["make-bow", "sew-bows", "fit-gore", "set-puffs", "build-heels"];

const glueOf = ({ needs: { goods } }: Step): readonly string[] => glues.filter((glue) => goods.includes(glue));

function expectBondsTold({ steps, bonds }: Making): void {
  const step = new Map(steps.map((one) => [one.id, one])), met = new Set<string>();
  const told = (bond: Bond, [id, words]: readonly [string, RegExp]): boolean => {
    const at = step.get(id);
    const is = at !== undefined && glueOf(at).includes(bond.glue) && words.test(at.todo.join(" "));
    if (is) met.add(`${id}, ${bond.glue}`);
    return is;
  };
  for (const bond of bonds) {
    const places = toldAt.find(([name]) => name.test(bond.name));
    expect(places, bond.name).toBeDefined();
    const found = places![1].filter((place) => told(bond, place));
    if (anyOf.test(bond.name)) expect(found.length, bond.name).toBeGreaterThan(0);
    else expect(found.map(([id]) => id), bond.name).toEqual(places![1].map(([id]) => id));
  }
  for (const one of steps) for (const glue of glueOf(one)) if (!notCounted.includes(one.id)) expect([...met], `${one.id} takes ${glue}, and no bond counts it`).toContain(`${one.id}, ${glue}`);
}

const goodsUsed = ({ steps }: Making): readonly string[] => [...new Set(steps.flatMap(({ needs }) => needs.goods))].sort();
const goodsBought = ({ needs }: Making): readonly string[] => needs.map(({ good }) => good as string).sort();

test("of 60 pairs with choices, settings and heels drawn by lot: the goods of the steps are those of the list, and what is stuck is what is counted", () => {
  const ids = new Set<string>(), names = new Set<string>();
  for (const { own, said, heelMm } of drawn) {
    const input = makingInput({ ...own, said }, onHeel(heelMm)), making = makingOf(input), what = JSON.stringify({ own, said, heelMm });
    expect(goodsUsed(making), what).toEqual(goodsBought(making));
    expect(making.cost.uncounted, what).toEqual([]);
    expectBondsTold(making);
    for (const step of making.steps) {
      ids.add(step.id);
      expect(step.todo.length, step.id).toBeLessThanOrEqual(6);
      expect(textOf(step), step.id).not.toMatch(/undefined|NaN|\bfalse\b| {2}|\.\.|(?:^| )-\d|\b0 mm\b/u);
    }
    for (const { name } of making.bonds) names.add(name);
  }
  // The lot reaches what there is: nearly all bonds and all kinds of steps.
  for (const [bond] of toldAt) if (!bond.test("layers of the filler")) expect([...names].some((name) => bond.test(name)), bond.source).toBe(true);
  for (const id of ["ink-edges", "sew-dog-tail", "wrap-topline", "bag-topline", "wet-stiffeners", "fit-gore", "sew-bows", "close-straps", "trim-lining"]) expect([...ids], id).toContain(id);
}, 240_000);

test.each(plannedNames)("%s: what the steps use and the list lacks is named, and nothing is bought that no step uses", (name) => {
  const making = makingOf(planned(name).input), used = goodsUsed(making), bought = goodsBought(making);
  expect([...bought, ...making.cost.uncounted].sort()).toEqual(used);
  if (name !== "taped, no bottom") expectBondsTold({ ...making, steps: name === "taped" ? making.steps.filter(({ phase }) => phase !== "heel") : making.steps });
});

describe("a shoe whose heel is the sole alone", () => {
  const flat = planOf(makingInput({}, onHeel(5)));

  test("has no step, leather, nail or word of lifts", () => {
    expect(flat.steps.filter(({ phase }) => phase === "heel")).toEqual([]);
    for (const step of flat.steps) {
      expect(textOf(step), step.id).not.toMatch(/\blifts?\b are|lifts and|top pieces?|heel nails?|heel heights?|sole and heel edges/iu);
      for (const good of ["lift leather", "top piece leather", "heel nails"] as const) expect(step.needs.goods, step.id).not.toContain(good);
    }
  });

  test("has its sole cut at the heel when it is trimmed", () => {
    expect(flat.step("trim-soles").todo.join(" ")).toContain(`cut away the ${flat.input.settings.soleFinishHeelMm} mm that stand out`);
    expect(planned("usual").step("trim-soles").todo.join(" ")).toContain("Leave the heel until the lifts are on");
  });
});

describe("a high heel", () => {
  const high = planOf(makingInput({}, onHeel(30)));
  const todo = (id: string): string => high.step(id).todo.join(" ");

  test("tells lifts that are alike together, and takes longer than a low one", () => {
    expect(todo("build-heels")).toContain("lift 2, lift 3 and lift 4: 5 mm each");
    expect(todo("cut-bottom")).toContain("lift 2, lift 3 and lift 4, 5 mm each");
    for (const id of ["prime-heels", "coat-heels", "build-heels"]) expect(high.step(id).minutes, id).toBeGreaterThan(planned("usual").step(id).minutes);
  });

  test("is coated in turns, so that no cement closes before its layer is laid: the tin is open while it is built", () => {
    expect(todo("coat-heels")).toMatch(/coat the lowest 3 first/u);
    expect(high.step("build-heels").needs.goods).toContain("contact cement");
    expect(planned("usual").step("build-heels").needs.goods).not.toContain("contact cement");
    // What is open for hours needs no turns.
    const water = planOf(makingInput({ said: { cement: "water-based" } }, onHeel(30)));
    expect(water.step("coat-heels").todo.join(" ")).not.toMatch(/first, and the next ones/u);
    expect(water.step("build-heels").needs.goods).not.toContain("water-based cement");
  });

  test("warns of longer nails only where they would reach the foot", () => {
    // Boards 3.8, sole 4.5, lift 1 3.0 mm where thinnest, then 5 mm a lift: over lift 2 lie 16.3 mm, over lift 3 21.3.
    expect(todo("build-heels")).toMatch(/5 of 13 mm in each of lift 2, lift 3 and lift 4; none in lift 1/u);
    expect(todo("build-heels")).toContain("In lift 2 no longer ones: the foot would find them.");
    expect(planned("usual").step("build-heels").todo.join(" ")).toContain("5 of 8 mm in lift 1. No longer ones: the foot would find them.");
  });
});

test("a notch is cut as deep as it is drawn, and none in a topline that is seen as it was cut", () => {
  const todo = (shell: NonNullable<OwnChoices["shell"]>, pieces: NonNullable<OwnChoices["pieces"]> = {}): string => planOf(makingInput({ shell, pieces })).step("cut-upper").todo.join(" ");
  for (const shell of [{}, { edge: "bagged" }] as const) expect(todo(shell)).toMatch(/3 mm in the lasting margin, never past half of a narrower allowance\./u);
  for (const [shell, pieces] of [[{ edge: "raw" }, {}], [{ edge: "bound" }, {}], [{ edge: "taped" }, { toplineFoldMm: 0 }]] as const) expect(todo(shell, pieces)).toMatch(/; none in the topline/u);
  const { pieces } = planned("usual").input;
  const depths = pieces.filter(({ material, net }) => material === "upper leather" && !net).flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === "notch" && mark.use !== "snip" ? [Math.hypot(mark.toward[0] - mark.at[0], mark.toward[1] - mark.at[1])] : [])));
  expect(Math.max(...depths)).toBeCloseTo(3, 6);
});

test("a topline turned over by nothing is a raw one: it is coloured", () => {
  const { step, has } = planOf(makingInput({ shell: { edge: "taped" }, pieces: { toplineFoldMm: 0 } }));
  expect(has("fold-topline")).toBe(false);
  expect(step("ink-edges").todo[0]).toBe("These edges stay in sight: the topline.");
});

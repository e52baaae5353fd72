// The plan as a whole: an order that can be worked through, for every pair.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkedJob } from "#job/job-file.ts";
import { goodIds } from "#making/goods.ts";
import { hazardIds } from "#making/care/hazards.ts";
import { phases, type Step } from "#making/steps/step.ts";
import { stepsOf } from "#making/steps/steps.ts";
import { toolIds } from "#making/tools/tools.ts";
import { backTops, liningCuts, seamKinds, sockKinds, upperCuts } from "#pieces/choices.ts";
import { toplineEdges } from "#shell/settings.ts";
import { makingInput } from "../support/making-pairs.ts";
import { planned, plannedNames, planOf, textOf } from "../support/plans.ts";

/** All that has to be done before each step, however far back. */
function allBefore(steps: readonly Step[]): ReadonlyMap<string, ReadonlySet<string>> {
  const of = new Map(steps.map((step) => [step.id, step]));
  const known = new Map<string, ReadonlySet<string>>();
  const walk = (id: string, way: readonly string[]): ReadonlySet<string> => {
    if (way.includes(id)) throw new Error(`circle: ${[...way, id].join(" → ")}`);
    const done = known.get(id);
    if (done) return done;
    const before = new Set(of.get(id)!.after.flatMap((one) => [one, ...walk(one, [...way, id])]));
    known.set(id, before);
    return before;
  };
  for (const { id } of steps) walk(id, []);
  return known;
}

function expectOrder(steps: readonly Step[]): void {
  const ids = steps.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  steps.forEach(({ id, after }, at) => {
    expect(new Set(after).size, id).toBe(after.length);
    for (const before of after) expect(ids.slice(0, at), `${id} after ${before}`).toContain(before);
  });
  const before = allBefore(steps);
  // Nothing hangs loose: the pair is boxed when all is done.
  expect(new Set([...before.get("box-shoes")!, "box-shoes"])).toEqual(new Set(ids));
  // No wait is asked for twice over.
  for (const { id, after } of steps) for (const one of after) for (const other of after) expect(one === other || !before.get(other)!.has(one), `${id} after ${one} and ${other}`).toBe(true);
}

describe.each(plannedNames)("the plan, %s", (name) => {
  test("has no circle, names only steps that are there, and its list can be worked from top to bottom", () => {
    const { steps } = planned(name);
    expectOrder(steps);
    const inPhases = steps.map(({ phase }) => phases.indexOf(phase));
    expect(inPhases).toEqual([...inPhases].sort((a, b) => a - b));
  });

  test("says at each step what, with what, how it is right and where it fails, in few sentences", () => {
    for (const step of planned(name).steps) {
      expect(step.title, step.id).toMatch(/^[A-Z].{5,70}$/u);
      for (const [part, least, most] of [["todo", 1, 6], ["right", 1, 3], ["fails", 1, 3]] as const) {
        expect(step[part].length, `${step.id}, ${part}`).toBeGreaterThanOrEqual(least);
        expect(step[part].length, `${step.id}, ${part}`).toBeLessThanOrEqual(most);
        for (const text of step[part]) expect(text, step.id).toMatch(/^[A-Z0-9].*[.]$/u);
      }
      expect(step.minutes, step.id).toBeGreaterThanOrEqual(5);
      expect(step.minutes, step.id).toBeLessThanOrEqual(40);
      for (const good of step.needs.goods) expect(goodIds).toContain(good);
      for (const tool of step.needs.tools) expect(toolIds).toContain(tool);
      for (const hazard of step.hazards) expect(hazardIds).toContain(hazard);
      for (const list of [step.needs.goods, step.needs.tools, step.hazards]) expect(new Set<string>(list).size, step.id).toBe(list.length);
    }
  });

  test("speaks plainly: no gaps in the text, nothing called safe, no long tail of digits", () => {
    for (const step of planned(name).steps) {
      expect(textOf(step), step.id).not.toMatch(/undefined|NaN|Infinity|\[object|\bfalse\b|\btrue\b| {2}|\.\.|, \.|\bsafe(ly|ty)?\b|\d\.\d{3}/iu);
      expect(textOf(step).split(/\s+/u).length, step.id).toBeLessThan(260);
    }
  });

  test("is the same every time", () => {
    const { input, steps } = planned(name);
    expect(JSON.stringify(stepsOf(structuredClone(input)))).toBe(JSON.stringify(steps));
  });
});

test("whatever is chosen and whatever could not be cut, the order holds", () => {
  const { input } = planned("added");
  const names = [...new Set(input.pieces.map(({ name }) => name))];
  const parts = fc.record({
    cut: fc.constantFrom(...upperCuts), seam: fc.constantFrom(...seamKinds), backSeam: fc.constantFrom("closed" as const, "butted" as const), backTop: fc.constantFrom(...backTops),
    lining: fc.constantFrom(...liningCuts), sock: fc.constantFrom(...sockKinds),
  });
  fc.assert(fc.property(parts, fc.constantFrom(...toplineEdges), fc.subarray(names), fc.boolean(), fc.constantFrom(0, 4), (chosen, edge, kept, bottom, foldMm) => {
    const { made, ...rest } = input;
    const steps = stepsOf({
      ...rest, ...(bottom && made && { made }), parts: { ...input.parts, ...chosen }, edge, pieces: input.pieces.filter(({ name }) => kept.includes(name)),
      settings: { ...input.settings, toplineFoldMm: foldMm, lapFoldMm: foldMm },
    });
    expectOrder(steps);
    for (const step of steps) expect(step.todo.length, step.id).toBeLessThanOrEqual(6);
  }), { numRuns: 300 });
});

test("the same work has the same id on another pair, and the trunk of the work is in every plan", () => {
  const plans = plannedNames.map((name) => planned(name).steps);
  const trunk = plans.reduce<readonly string[]>((common, steps) => common.filter((id) => steps.some((step) => step.id === id)), plans[0]!.map(({ id }) => id));
  // Kept by jobs of makers under these names: not to be renamed.
  expect(trunk).toEqual([
    "check-print", "cut-cards", "mark-lasts", "look-over-leather", "cut-upper", "cut-lining", "skive-upper", "join-lining", "stitch-topline", "check-uppers",
    "cut-bottom", "block-boards", "prime-boards", "coat-boards", "glue-boards", "tack-insoles", "set-stiffeners", "draft-uppers", "check-drafts", "last-sides", "last-toes",
    "open-margins", "coat-margins", "press-margins", "rough-bottoms", "fit-fillers", "coat-fillers", "fill-bottoms", "prime-soles", "coat-soles", "lay-soles", "trim-soles",
    "prime-heels", "coat-heels", "build-heels", "level-heels", "finish-edges", "measure-pair", "slip-lasts", "lay-socks", "box-shoes",
  ]);
});

test("from the blocked insole to the slipped last the shoe keeps its last, without a gap; before and after it does not", () => {
  for (const name of plannedNames) {
    const { steps } = planned(name);
    const taken = steps.filter(({ onLast }) => onLast).map(({ id }) => id);
    expect([taken[0], taken.at(-1)]).toEqual(["block-boards", "slip-lasts"]);
    expect(taken).toEqual(steps.slice(steps.findIndex(({ id }) => id === "block-boards"), steps.findIndex(({ id }) => id === "slip-lasts") + 1).map(({ id }) => id));
    for (const phase of ["pattern", "cutting", "closing"] as const) expect(steps.some((step) => step.phase === phase && step.onLast), phase).toBe(false);
    for (const id of ["tack-insoles", "draft-uppers", "press-margins", "lay-soles", "build-heels", "measure-pair"]) expect(taken).toContain(id);
  }
});

test("strands that do not hang on each other run beside each other: bottom parts need no upper, a lining needs no upper", () => {
  const before = allBefore(planned("usual").steps);
  expect([...before.get("tack-insoles")!].filter((id) => id.includes("upper") || id.includes("lining"))).toEqual([]);
  expect([...before.get("join-lining")!]).not.toContain("skive-upper");
  expect(before.get("draft-uppers")!).toContain("tack-insoles");
  expect(before.get("draft-uppers")!).toContain("check-uppers");
});

test("what the maker said of pairs, lasts and cement changes words and waits, not the steps, and each of them reads as well", () => {
  for (const name of plannedNames) {
    const { input, steps } = planned(name);
    for (const said of [{ cement: "water-based" }, { pairs: 3, lasts: 2 }, { pairs: "3", lasts: "3", cement: "water-based" }, { cement: "tar", pairs: "many", lasts: "none" }]) {
      const plan = planOf({ ...input, said });
      expect(plan.steps.map(({ id, after, minutes }) => ({ id, after, minutes }))).toEqual(steps.map(({ id, after, minutes }) => ({ id, after, minutes })));
      for (const step of plan.steps) {
        expect(step.todo.length, step.id).toBeLessThanOrEqual(6);
        expect(textOf(step).split(/\s+/u).length, step.id).toBeLessThan(260);
        expect(textOf(step), step.id).not.toMatch(/undefined|NaN|\bfalse\b| {2}|\.\.|\bsafe(ly|ty)?\b/u);
      }
    }
  }
});

test("the example job of the project has its plan too", () => {
  const job = checkedJob("almond-37.json", JSON.parse(readFileSync("examples/almond-37.json", "utf8")));
  const { input, steps, has } = planOf(makingInput({}, job));
  expectOrder(steps);
  expect(input.edge).toBe("folded");
  expect(has("fold-topline")).toBe(true);
  expect(has("tape-topline")).toBe(false);
});

// Every choice changes the plan where it should, and what the pair is made of is used by some step.
import { describe, expect, test } from "vitest";
import type { GoodId } from "#making/goods.ts";
import { glues } from "#making/need.ts";
import { needsOf } from "#making/needs/needs.ts";
import { threadFor } from "#making/thread/thread.ts";
import type { Step } from "#making/steps/step.ts";
import type { Material } from "#pieces/piece.ts";
import type { Stitched } from "#pieces/stitching.ts";
import { planned, plannedNames, planOf, textOf, type PlannedName } from "../support/plans.ts";

const todoOf = ({ todo }: Step): string => todo.join(" ");
const todo = (name: PlannedName, id: string): string => planned(name).step(id).todo.join(" ");

describe("each choice", () => {
  test("cut: back seam, inner seam, vamp and quarters", () => {
    expect(planned("usual").has("sew-back-seam")).toBe(true);
    expect(planned("usual").has("sew-side-seams")).toBe(false);
    expect(planned("inner").has("sew-back-seam")).toBe(false);
    expect(planned("inner").step("sew-side-seams").title).toBe("Sew the inner seam");
    expect(planned("added").step("sew-side-seams").title).toBe("Sew the quarters to the vamp");
    expect(planned("added").has("sew-back-seam")).toBe(true);
  });

  test("seams: closed ones are opened and taped, lapped ones stuck and stitched down, butted ones get a zigzag on tape", () => {
    expect(todo("usual", "sew-back-seam")).toMatch(/grain to grain.*1\.5 mm from the edge/u);
    expect(todo("usual", "tape-seams")).toMatch(/Open the back seam.*tape 14 mm wide/u);
    expect(todo("wrapped", "tape-seams")).toMatch(/Open the inner seam/u);
    expect(todo("added", "sew-side-seams")).toMatch(/8 mm lie under.*second row/u);
    expect(todo("inner", "sew-side-seams")).toMatch(/zigzag over both/u);
    expect(todo("bagged", "sew-back-seam")).toMatch(/zigzag over both/u);
    expect(planned("inner").has("tape-seams")).toBe(false);
    expect(planned("inner").step("sew-side-seams").needs.goods).toContain("seam tape");
  });

  test("top of the back seam: mitre, notch, dog-tail", () => {
    expect(todo("usual", "fold-topline")).toMatch(/as its own mirror/u);
    expect(todo("notch", "fold-topline")).toMatch(/snipped out/u);
    expect(todo("tail", "sew-dog-tail")).toMatch(/11 mm long and 8 mm wide/u);
    expect(todo("tail", "sew-back-seam")).toMatch(/Stop at the snip/u);
    for (const name of ["usual", "notch", "added", "bagged"] as const) expect(planned(name).has("sew-dog-tail")).toBe(false);
  });

  test("edge: taped, folded, raw, bound, wrapped, bagged", () => {
    const edges = ["tape-topline", "fold-topline", "bind-topline", "wrap-topline", "bag-topline", "line-upper", "trim-lining", "ink-edges"];
    const of = (name: PlannedName): readonly string[] => edges.filter((id) => planned(name).has(id));
    expect(of("usual")).toEqual(["tape-topline", "fold-topline", "line-upper", "trim-lining"]);
    expect(of("tail")).toEqual(["fold-topline", "line-upper", "trim-lining"]);
    expect(of("inner")).toEqual(["line-upper", "trim-lining", "ink-edges"]);
    // Its lapped vamp stays raw.
    expect(of("added")).toEqual(["bind-topline", "line-upper", "trim-lining", "ink-edges"]);
    expect(of("wrapped")).toEqual(["wrap-topline", "line-upper"]);
    expect(of("bagged")).toEqual(["bag-topline"]);
    expect(todo("inner", "ink-edges")).toMatch(/the topline/u);
    expect(todo("added", "ink-edges")).toMatch(/the vamp's wings and the toe cap's edge/u);
  });

  test("lining in three parts is lapped, in one it is sewn and taped at the back", () => {
    expect(todo("usual", "join-lining")).toMatch(/vamp lining, inner quarter lining, outer quarter lining and heel pocket.*Lap them by 7 mm/u);
    expect(todo("added", "join-lining")).toMatch(/Open the seam.*14 mm wide/u);
    expect(planned("added").step("join-lining").needs.goods).toContain("seam tape");
    expect(planned("usual").step("join-lining").needs.goods).not.toContain("seam tape");
  });

  test("stiffener, puff and side lining", () => {
    expect(planned("usual").has("wet-stiffeners")).toBe(false);
    expect(planned("usual").step("set-stiffeners").needs.goods).not.toContain("paste");
    expect(todo("added", "wet-stiffeners")).toMatch(/2 mm/u);
    expect(planned("added").step("set-stiffeners").needs.goods).toContain("paste");
    expect(todo("added", "set-stiffeners")).toMatch(/side linings.*10 mm below the topline/u);
    expect(planned("tail").has("set-puffs")).toBe(false);
    expect(planned("tail").has("cut-stiffening")).toBe(false);
    expect(planned("tail").step("set-stiffeners").title).toBe("Stick upper and lining together");
    // Leather dries longer than board.
    expect(planned("added").step("last-toes").wait!.wellMin).toBeGreaterThan(planned("usual").step("last-toes").wait!.wellMin);
  });

  test.each([
    ["added", ["sew-toe-cap", "sew-back-strip", "make-strap", "close-straps", "make-bow", "sew-bows"]],
    ["inner", ["fit-gore"]],
    ["bagged", ["make-strap", "close-straps"]],
    ["usual", []],
  ] as const)("extras of %s have their steps, and others have none", (name, ids) => {
    const extras = ["sew-toe-cap", "sew-back-strip", "make-strap", "close-straps", "make-bow", "sew-bows", "fit-gore"];
    expect(extras.filter((id) => planned(name).has(id)).sort()).toEqual([...ids].sort());
  });

  test("a bow is made while there is time and sewn on when the last is out (a workshop of hand shoemakers: what is put on a vamp moves in lasting)", () => {
    const ids = planned("added").steps.map(({ id }) => id);
    expect(ids.indexOf("make-bow")).toBeLessThan(ids.indexOf("draft-uppers"));
    expect([...planned("added").step("sew-bows").after].sort()).toEqual(["make-bow", "slip-lasts"]);
  });

  test("sock: full, half, heel", () => {
    expect(todo("usual", "lay-socks")).toMatch(/full length, 0\.7 mm smaller/u);
    expect(todo("inner", "lay-socks")).toMatch(/12 mm behind the joint/u);
    expect(todo("added", "lay-socks")).toMatch(/10 mm before the heel's breast/u);
  });

  test("a pattern corrected for its leather is said to be smaller, wherever it is held to the last", () => {
    const { input } = planned("usual");
    const told = (corrected: boolean): readonly string[] => planOf({ ...input, corrected }).steps.filter((step) => textOf(step).includes(` for ${input.leathers.upper.name}`)).map(({ id }) => id);
    expect(told(false)).toEqual([]);
    expect(told(true)).toEqual(["cut-cards", "cut-upper", "check-uppers", "check-drafts"]);
  });

  test("a taped pattern has no strips to mark by; without a bottom, the bottom is drawn from the last", () => {
    expect(todo("usual", "mark-lasts")).toMatch(/strips of the sheet of marks/u);
    expect(todo("taped", "mark-lasts")).not.toMatch(/sheet of marks/u);
    expect(todo("taped", "cut-bottom")).toMatch(/2 insoles of 2 mm/u);
    expect(todo("taped", "cut-bottom")).toMatch(/as your last's height asks for/u);
    expect(todo("taped, no bottom", "cut-bottom")).toMatch(/has no bottom.*feather line/u);
    expect(todo("taped, no bottom", "lay-socks")).toMatch(/Draw the sock/u);
    for (const name of ["taped", "taped, no bottom"] as const) {
      expect(todo(name, "build-heels")).toMatch(/as your last does/u);
      expect(todo(name, "prime-heels")).toMatch(/try it on/u);
    }
  });
});

describe.each(plannedNames)("what the pair is made of, %s", (name) => {
  const goodOf: Readonly<Record<Material, GoodId>> = {
    card: "pattern card", "upper leather": "upper leather", "lining leather": "lining leather", stiffener: "stiffener", "toe puff": "toe puff", "side lining": "side lining", "insole board": "insole board",
    "second board": "second board", shank: "shanks", filler: "filler", "sole leather": "sole leather", "heel leather": "lift leather", "sock leather": "sock leather", tape: "fold tape", elastic: "elastic",
  };

  test("every material of the pieces and every strip is taken by some step", () => {
    const { input, steps } = planned(name);
    const used = new Set(steps.flatMap(({ needs }) => needs.goods));
    for (const { material, name: piece } of input.pieces) expect([...used], piece).toContain(piece === "top piece" ? "top piece leather" : goodOf[material]);
    for (const strip of input.strips) expect([...used], strip.name).toContain(strip.material === "tape" ? strip.name.replace(" of the lining", "") : goodOf[strip.material]);
  });

  test("all that is on the list of needs is taken by some step, and every glue of the bonds, none beside", () => {
    const { input, steps } = planned(name);
    const { needs, bonds } = needsOf(input, threadFor(input.stitching));
    const used = new Set(steps.flatMap(({ needs: { goods } }) => goods));
    for (const { good } of needs) expect([...used], good).toContain(good);
    if (name !== "taped, no bottom") expect(glues.filter((glue) => used.has(glue))).toEqual(glues.filter((glue) => bonds.some((bond) => bond.glue === glue)));
  });

  test.each(["contact", "water-based"])("%s cement: each bond of it is coated in a step, as often as the list reckons, and no step takes the other one", (cement) => {
    const { input } = planned(name);
    const { steps, step } = planOf({ ...input, said: { cement } });
    const { bonds } = needsOf({ ...input, said: { cement } }, threadFor(input.stitching));
    const good = cement === "contact" ? "contact cement" : "water-based cement", other = cement === "contact" ? "water-based cement" : "contact cement";
    expect(steps.some(({ needs }) => needs.goods.includes(other))).toBe(false);
    const coating: readonly (readonly [RegExp, readonly [string, string]])[] = [
      [/board|shank/u, ["prime-boards", "coat-boards"]], [/margin/u, ["open-margins", "coat-margins"]], [/filler/u, ["fit-fillers", "coat-fillers"]], [/outsole/u, ["prime-soles", "coat-soles"]], [/lift|top piece/u, ["prime-heels", "coat-heels"]],
    ];
    for (const { name: bond, coats } of bonds.filter(({ glue }) => glue === good)) {
      const [, ids] = coating.find(([of]) => of.test(bond))!;
      for (const id of ids) expect(step(id).needs.goods, `${bond}, ${id}`).toContain(good);
      expect(Math.max(...coats), bond).toBe(bond.startsWith("shank") ? 1 : ids.length);
    }
    const filler = bonds.find(({ name: bond }) => bond === "bottom filler");
    if (filler) expect(filler.coats).toEqual([1, 2]);
    expect(todoOf(step("fit-fillers"))).toMatch(/First coat on the hollow alone/u);
    expect(todoOf(step("coat-margins"))).toMatch(/between lining and upper/u);
  });

  test("every line of stitches is sewn in a step that takes thread", () => {
    const at = ({ name: line, use }: Stitched): string => {
      if (use === "lining") return "join-lining";
      if (line.endsWith(" gore") || line === "topline") return "stitch-topline";
      if (/side seam$|^inner seam$/u.test(line)) return "sew-side-seams";
      const of: Readonly<Record<string, string>> = {
        "back seam": "sew-back-seam", "topline seam": "bag-topline", "topline binding": "bind-topline", "dog-tail": "sew-dog-tail", "toe cap": "sew-toe-cap", "back strip": "sew-back-strip", "strap edge": "make-strap",
        "strap set in": planned(name).has("bag-topline") ? "bag-topline" : "line-upper", bow: "make-bow", "bow knot": "make-bow",
      };
      return of[line] ?? `nobody sews ${line}`;
    };
    const { input, step } = planned(name);
    expect(input.stitching.length).toBeGreaterThan(2);
    for (const line of input.stitching) expect(step(at(line)).needs.goods, line.name).toContain("thread");
  });
});

import { beforeAll, describe, expect, test } from "vitest";
import { readFileSync } from "node:fs";
import { explain, severityOf } from "#base/findings.ts";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import type { MakingInput } from "#making/input.ts";
import type { Need } from "#making/need.ts";
import { needsOf, type Needed } from "#making/needs/needs.ts";
import { threadFor } from "#making/thread/thread.ts";
import type { Material, Piece } from "#pieces/piece.ts";
import { makingInput } from "../support/making-pairs.ts";

// What a pair takes is recomputed here from outlines and strips by a shoelace formula of the test's own.

const shoelace = ({ outline: { xy } }: Piece): number => {
  let twice = 0;
  for (let k = 0; k < xy.length; k += 2) {
    const n = (k + 2) % xy.length;
    twice += (xy[k]! - xy[0]!) * (xy[n + 1]! - xy[1]!) - (xy[n]! - xy[0]!) * (xy[k + 1]! - xy[1]!);
  }
  return Math.abs(twice) / 2;
};
const summed = (pieces: readonly Piece[]): number => pieces.reduce((sum, p) => sum + p.perPair * shoelace(p), 0);
const areaOf = (pieces: readonly Piece[], material: Material): number => summed(pieces.filter((p) => p.material === material));
/** Of a heel's leather the top piece is bought by itself. */
const goodOf = ({ material, name }: Piece): string => (material !== "heel leather" ? material : name === "top piece" ? "top piece leather" : "lift leather");
const needOf = ({ needs }: Needed, good: Need["good"]): Need => {
  const need = needs.find((one) => one.good === good);
  if (!need) throw new Error(`no ${good} on the list`);
  return need;
};
const made = (input: MakingInput): Needed => needsOf(input, threadFor(input.stitching));
const bondOf = ({ bonds }: Needed, name: string): number => bonds.find((bond) => bond.name === name)?.areaMm2 ?? 0;

const cutFrom = ["upper leather", "lining leather", "sock leather", "stiffener", "toe puff", "side lining", "insole board", "second board", "filler", "sole leather", "lift leather", "top piece leather"] as const;

const jobs: readonly [string, () => MakingInput][] = [
  ["the example pair", () => makingInput()],
  ["the almond toe of size 37", () => makingInput({}, checkedJob("almond-37.json", JSON.parse(readFileSync("examples/almond-37.json", "utf8"))))],
  ["quarters with a bound edge and all that may be added", () => makingInput({ parts: { cut: "quarters", seam: "lapped", lining: "one", strap: true, bow: true, toeCap: true, backStrip: true, sideLining: true }, shell: { edge: "bound", counterMm: 2 }, pieces: { lapFoldMm: 4, toePuffMm: 1.2 } })],
  ["an inner seam, raw, with gores", () => makingInput({ parts: { cut: "inner-seam", seam: "butted", gore: true }, shell: { edge: "raw" } })],
];

describe.each(jobs)("%s", (_, make) => {
  let input: MakingInput, needed: Needed;
  beforeAll(() => {
    input = make();
    needed = made(input);
  });

  test("takes of every leather, board and sheet just what its pieces have, and buys more", () => {
    for (const good of cutFrom) {
      const strips = input.strips.filter(({ material }) => material === good).reduce((sum, s) => sum + s.perPair * s.lengthMm * s.widthMm, 0);
      const net = summed(input.pieces.filter((p) => goodOf(p) === good)) + strips;
      if (net === 0) expect(needed.needs.map((one) => one.good)).not.toContain(good);
      else {
        const need = needOf(needed, good);
        expect(need.net / net, good).toBeCloseTo(1, 9);
        expect(need.gross, good).toBeGreaterThan(need.net);
        expect(need.parts.reduce((sum, part) => sum + part.net, 0), good).toBeCloseTo(need.net, 6);
        expect(need.thicknessMm, good).toBeGreaterThan(0);
      }
    }
  });

  test("tells kind, reason and source of each, both meanings of waste, and the smallest piece that holds the largest part", () => {
    for (const need of needed.needs) {
      for (const words of [need.kind, need.reason, need.source]) expect(words.length, need.good).toBeGreaterThan(3);
      expect(need.gross).toBeGreaterThanOrEqual(need.net);
      expect(`${need.kind} ${need.reason} ${need.source} ${need.waste?.why ?? ""}`).not.toMatch(/undefined|NaN|\bsafe\b/u);
      if (need.waste) {
        expect(need.waste.onPieces, need.good).toBeCloseTo(need.waste.ofBought / (1 - need.waste.ofBought), 9);
        expect(need.gross * (1 - need.waste.ofBought), need.good).toBeCloseTo(need.net, 6);
      }
      if (need.holds) {
        const cut = input.pieces.filter((p) => goodOf(p) === need.good), largest = cut.reduce((most, p) => (shoelace(p) > shoelace(most) ? p : most));
        expect(need.holds.longMm * need.holds.wideMm, need.good).toBeGreaterThan(shoelace(largest));
        expect(need.holds.count, need.good).toBe(cut.filter(({ name }) => name === largest.name).reduce((sum, { perPair }) => sum + perPair, 0));
      }
    }
  });

  test("takes tapes as they are laid, and their ends on top", () => {
    const all = (["fold tape", "seam tape", "flank tape"] as const).flatMap((good) => needed.needs.filter((one) => one.good === good));
    const tapes = input.strips.filter(({ material }) => material === "tape");
    // Each is cut to the next whole millimetre, as the steps and the index of pieces tell it.
    expect(all.reduce((sum, { gross }) => sum + gross, 0)).toBeCloseTo(tapes.reduce((sum, s) => sum + s.perPair * Math.ceil(s.lengthMm), 0), 6);
    expect(all.reduce((sum, { net }) => sum + net, 0)).toBeCloseTo(tapes.reduce((sum, s) => sum + s.perPair * (s.lengthMm - 2 * input.settings.stripEndsMm), 0), 6);
  });

  test("sticks what it says: areas of one face, coats of both, and grams by glue", () => {
    const insole = areaOf(input.pieces, "insole board"), filler = areaOf(input.pieces, "filler");
    expect(bondOf(needed, "lasting margin to the insole")).toBeCloseTo(insole - filler, 3);
    expect(bondOf(needed, "upper to the lining in the margin")).toBeCloseTo(insole - filler, 3);
    const between = areaOf(input.pieces, "stiffener") + areaOf(input.pieces, "toe puff") + areaOf(input.pieces, "side lining");
    const lining = input.pieces.filter(({ material, name }) => material === "lining leather" && name !== "strap lining" && name !== "bow stay").reduce((sum, p) => sum + p.perPair * shoelace(p), 0);
    // The forepart stays loose: a third, our own estimate.
    expect(bondOf(needed, "lining to the upper")).toBeCloseTo((Math.max(0, lining - between - (insole - filler)) * 2) / 3, 3);
    expect(bondOf(needed, "bottom filler")).toBeCloseTo(2 * (input.made?.filler?.areaMm2 ?? 0), 3);
    expect(bondOf(needed, "outsole")).toBeCloseTo(areaOf(input.pieces, "sole leather"), 3);
    expect(bondOf(needed, "second board to the insole")).toBeCloseTo(areaOf(input.pieces, "second board"), 3);
    expect(bondOf(needed, "split lift") + bondOf(needed, "lift 1") + bondOf(needed, "top piece")).toBeCloseTo(areaOf(input.pieces, "heel leather"), 3);
    expect(bondOf(needed, "stiffener to the upper")).toBeCloseTo(areaOf(input.pieces, "stiffener"), 3);
    expect(bondOf(needed, "sock")).toBeCloseTo(areaOf(input.pieces, "sock leather"), 3);
    for (const glue of ["contact cement", "water-based cement", "latex", "paste"] as const) {
      const bonds = needed.bonds.filter((bond) => bond.glue === glue);
      for (const { areaMm2, coats, gPerM2, g } of bonds) expect(g).toBeCloseTo((areaMm2 / 1e6) * (coats[0] + coats[1]) * gPerM2, 9);
      if (bonds.length === 0) expect(needed.needs.some(({ good }) => good === glue)).toBe(false);
      else expect(needOf(needed, glue).net).toBeCloseTo(bonds.reduce((sum, { g }) => sum + g, 0), 9);
    }
  });

  test("takes thread as it was reckoned, and a shank to each shoe", () => {
    const thread = threadFor(input.stitching);
    expect(needOf(needed, "thread").gross).toBeCloseTo(thread.totalMm, 6);
    expect(needOf(needed, "thread").net).toBeCloseTo(thread.seams.reduce((sum, { threadMm }) => sum + threadMm, 0), 6);
    expect(needOf(needed, "shanks").gross).toBe(2);
  });

  test("of twice the pieces takes twice as much", () => {
    const twice = made({ ...input, pieces: input.pieces.map((p) => ({ ...p, perPair: 2 * p.perPair })), strips: input.strips.map((s) => ({ ...s, perPair: 2 * s.perPair })) });
    for (const need of needed.needs) {
      const byPieces = need.measure === "area" && need.good !== "pattern card";
      if (byPieces || need.good === "elastic" || need.good.endsWith("tape") || need.good === "edge finish" || need.good === "shanks" || need.good === "fastenings") {
        expect(needOf(twice, need.good).net, need.good).toBeCloseTo(2 * need.net, 5);
        expect(needOf(twice, need.good).gross, need.good).toBeCloseTo(2 * need.gross, 5);
        expect(needOf(twice, need.good).holds).toEqual(need.holds && { ...need.holds, count: 2 * need.holds.count });
      }
    }
  });

  test("is told the same each time", () => expect(JSON.stringify(made(input))).toBe(JSON.stringify(needed)));
});

describe("what one pair has and another has not", () => {
  test("a bound edge takes its strip from the skin and no tape in a fold; a raw one neither", () => {
    const bound = makingInput({ shell: { edge: "bound" } }), needs = made(bound);
    const strip = bound.strips.find(({ name }) => name === "topline binding")!;
    expect(needOf(needs, "upper leather").parts.find(({ name }) => name === "topline binding")?.net).toBeCloseTo(2 * strip.lengthMm * strip.widthMm, 6);
    expect(bondOf(needs, "fold of the topline")).toBe(0);
    expect(bondOf(needs, "binding of the topline")).toBeGreaterThan(0);
    expect(needs.needs.map(({ good }) => good)).not.toContain("fold tape");
    expect(bondOf(made(makingInput({ shell: { edge: "raw" } })), "fold of the topline")).toBe(0);
  });

  test("a fold is stuck over its length by its width, both shoes", () => {
    const input = makingInput();
    const line = input.pieces.find((p) => p.name === "upper" && p.side === "right")!.marks.find((m) => m.kind === "line" && m.use === "fold");
    if (line?.kind !== "line") throw new Error("no fold line");
    let mm = 0;
    for (let k = 2; k < line.line.xy.length; k += 2) mm += Math.hypot(line.line.xy[k]! - line.line.xy[k - 2]!, line.line.xy[k + 1]! - line.line.xy[k - 1]!);
    expect(bondOf(made(input), "fold of the topline")).toBeCloseTo(2 * mm * input.settings.toplineFoldMm, 4);
  });

  test("a leather stiffener is pasted and cut from a shoulder, a board one is not", () => {
    const leather = made(makingInput({ shell: { counterMm: 2 } })), board = made(makingInput());
    expect(needOf(leather, "stiffener").kind).toContain("shoulder");
    expect(leather.bonds.filter(({ name }) => name.startsWith("stiffener")).map(({ glue }) => glue)).toEqual(["paste", "paste"]);
    expect([needOf(leather, "stiffener").ofLeather, needOf(board, "stiffener").ofLeather]).toEqual([true, undefined]);
    const puff = made(makingInput({ pieces: { toePuffMm: 1.2 } }));
    expect(needOf(puff, "toe puff").ofLeather).toBe(true);
    expect(needOf(puff, "toe puff").waste!.why).toContain("shoulder");
    expect(needOf(board, "stiffener").kind).toContain("board");
    expect(board.bonds.some(({ glue }) => glue === "paste")).toBe(false);
  });

  test("a strap asks for one fastening to each shoe, a shoe without for none", () => {
    const strapped = needOf(made(makingInput({ parts: { strap: true } })), "fastenings");
    expect([strapped.net, strapped.gross]).toEqual([2, 2]);
    expect(strapped.kind).toContain("12 mm");
    expect(made(makingInput()).needs.map(({ good }) => good)).not.toContain("fastenings");
  });

  test("sheets of cork that lie over each other are stuck to each other", () => {
    const input = makingInput(), deep = { ...input.made!, filler: { ...input.made!.filler!, depth: { ...input.made!.filler!.depth!, mostMm: 13 } } };
    expect(bondOf(made(input), "layers of the filler")).toBe(0);
    // 13 mm are three sheets of 5, with two joints.
    expect(bondOf(made({ ...input, made: deep }), "layers of the filler")).toBeCloseTo(2 * areaOf(input.pieces, "filler"), 3);
  });

  test("a bagged topline is stuck by its seam's allowance, a dog-tail by its length and width, on both shoes", () => {
    const bagged = makingInput({ shell: { edge: "bagged" } }), seam = bagged.stitching.find(({ name }) => name === "topline seam")!;
    expect(bondOf(made(bagged), "bagged topline")).toBeCloseTo(2 * seam.lengthMm * bagged.settings.toplineBagMm, 6);
    const tailed = makingInput({ parts: { cut: "back-seam", backSeam: "closed", backTop: "dog-tail" } });
    expect(bondOf(made(tailed), "dog-tail")).toBeCloseTo(2 * tailed.settings.dogTailLongMm * tailed.settings.dogTailWideMm, 6);
  });

  test("a toe cap is stuck along its edge alone, 10 mm of it (our own)", () => {
    const input = makingInput({ parts: { cut: "quarters", toeCap: true } }), row = input.stitching.find(({ name }) => name === "toe cap")!;
    expect(bondOf(made(input), "toe cap on the vamp")).toBeCloseTo(2 * 10 * row.lengthMm, 6);
  });

  test("what lies between upper and lining is coated itself, the sock on its flesh side, and what they meet stays dry", () => {
    const { bonds } = made(makingInput({ parts: { sideLining: true }, shell: { counterMm: 2 } }));
    const once = bonds.filter(({ name }) => /^(stiffener|toe puff|side lining) to the|^sock$/u.test(name));
    expect(once).toHaveLength(7);
    for (const { coats } of once) expect(coats).toEqual([1, 0]);
  });

  test("water-based cement takes the place of contact cement, bond by bond and on the list", () => {
    const contact = made(makingInput()), water = made(makingInput({ said: { cement: "water-based" } }));
    expect(water.bonds.map(({ glue }) => glue)).toEqual(contact.bonds.map(({ glue }) => (glue === "contact cement" ? "water-based cement" : glue)));
    expect(water.needs.map(({ good }) => good)).toEqual(contact.needs.map(({ good }) => (good === "contact cement" ? "water-based cement" : good)));
    expect(water.findings).toEqual([]);
  });

  test.each([["Water based", "water-based cement"], ["water-based cement", "water-based cement"], ["contact", "contact cement"], [" ", "contact cement"], ["Contact cement", "contact cement"]] as const)("the cement may be written %s", (cement, meant) => {
    const { bonds, findings } = made(makingInput({ said: { cement } }));
    expect(bonds.find(({ name }) => name === "outsole")?.glue).toBe(meant);
    expect(findings).toEqual([]);
  });

  test("a cement that is neither is told, and contact cement taken", () => {
    const { bonds, findings } = made(makingInput({ said: { cement: "hot glue" } }));
    expect(bonds.find(({ name }) => name === "outsole")?.glue).toBe("contact cement");
    expect(findings.map((f) => [severityOf(f), explain(f)])).toEqual([["look", expect.stringMatching(/“hot glue” is none of the two.*contact or water-based/u)]]);
  });

  test("each layer of the heel has its own thickness", () => {
    const input = makingInput(), heel = [...needOf(made(input), "lift leather").parts, ...needOf(made(input), "top piece leather").parts];
    const own = new Map(input.made!.heel!.layers.map(({ name, backMm, breastMm }) => [name, Math.max(backMm, breastMm)]));
    expect(own.size).toBeGreaterThan(1);
    for (const { name, thicknessMm } of heel) expect(thicknessMm, name).toBe(own.get(name) ?? input.settings.splitLiftMm);
  });

  test("without pieces nothing is asked for but what is written about skins", () => {
    const nothing = needsOf({ ...makingInput(), pieces: [], strips: [], stitching: [] }, threadFor([]));
    expect(nothing.needs).toEqual([]);
    expect(nothing.bonds).toEqual([]);
  });

  test("the example job names no size of a skin and meets no finding", () => {
    expect(defaultJob().making).toEqual({});
    expect(made(makingInput()).findings).toEqual([]);
  });
});

import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { coatGPerM2, coatsOf } from "#making/needs/bond.ts";
import type { MakingInput } from "#making/input.ts";
import { makingOf } from "#making/making-of.ts";
import type { Need } from "#making/need.ts";
import { corkFor, usualSoleMm } from "#making/needs/bottom.ts";
import { usualLiningMm, usualUpperMm } from "#making/needs/leathers.ts";
import { nailWithin } from "#making/needs/nailed-lifts.ts";
import { needsOf } from "#making/needs/needs.ts";
import { usualSkinFt2 } from "#making/needs/skins.ts";
import { threadFor } from "#making/thread/thread.ts";
import { inUnit } from "#making/amounts/units.ts";
import { cutTapedPieces } from "#pieces/cut.ts";
import { pieceRulesForTape, pieceSettingsFrom } from "#pieces/rules.ts";
import { tapedPartsFrom } from "#pieces/tape-lacks.ts";
import { tapedShell } from "#tape/from-traced.ts";
import { demoTape } from "../support/demo-tape.ts";
import { makingInput } from "../support/making-pairs.ts";
import { laid } from "../support/taped-outlines.ts";
import { tracedPicture } from "../support/traced.ts";

const made = (input: MakingInput) => needsOf(input, threadFor(input.stitching));
const needOf = (input: MakingInput, good: Need["good"]): Need => {
  const need = made(input).needs.find((one) => one.good === good);
  if (!need) throw new Error(`no ${good} on the list`);
  return need;
};
const dm2 = (mm2: number): number => inUnit(mm2, "dm2");

describe("common practice, no source", () => {
  const example = makingInput();

  test("upper leather of women's flats is 1.0 to 1.1 mm, lining 0.8 to 1.0 mm, and the list asks for that", () => {
    expect(usualUpperMm).toEqual([1, 1.1]);
    expect(usualLiningMm).toEqual([0.8, 1]);
    expect(needOf(example, "upper leather").kind).toContain("1.0 to 1.1 mm (2½ to 2¾ oz)");
    expect(needOf(example, "lining leather").kind).toContain("0.8 to 1.0 mm");
  });

  test("a maker's own thickness outside of that is asked for and told beside the usual one", () => {
    const stout = needOf(makingInput({ pieces: { upperThicknessMm: 1.5 } }), "upper leather");
    expect(stout.thicknessMm).toBe(1.5);
    expect(stout.kind).toContain("1.5 mm (3¾ oz)");
    expect(stout.reason).toContain("1.0 to 1.1 mm is usual");
  });

  test("tapes are 3 to 4 mm in the fold and 14 or 16 mm over seams", () => {
    const fold = needOf(example, "fold tape").widthMm!, seam = needOf(example, "seam tape").widthMm!;
    expect(fold).toBeGreaterThanOrEqual(3);
    expect(fold).toBeLessThanOrEqual(4);
    expect([14, 16]).toContain(seam);
  });

  test("thread is polyester, number 60", () => expect(needOf(example, "thread").kind).toMatch(/^polyester, number 60/u));

  test("sole leather is 4 to 5 mm, told in irons too; boards 1.5 to 2 mm; cork 2 to 3 mm", () => {
    expect(usualSoleMm).toEqual([4, 5]);
    expect(needOf(example, "sole leather").kind).toContain("4.5 mm (8½ iron)");
    expect(needOf(example, "insole board").thicknessMm).toBe(2);
    expect([2, 3]).toContain(needOf(example, "filler").thicknessMm);
  });

  test("two kinds of lasting nails, three tacks to an insole, and all of them are drawn again", () => {
    expect(needOf(example, "insole tacks").gross).toBe(6);
    for (const good of ["insole tacks", "lasting tacks", "lasting nails"] as const) {
      expect(needOf(example, good).again, good).toBe(true);
      expect(Number.isInteger(needOf(example, good).gross), good).toBe(true);
    }
    expect(needOf(example, "lasting tacks").kind).toContain("first kind of lasting nails");
    expect(needOf(example, "lasting nails").kind).toContain("second kind of lasting nails");
    // Eight pulls of a shoemaking textbook, and both waists.
    expect(needOf(example, "lasting tacks").gross).toBe(20);
    const round = example.pieces.find(({ name }) => name === "insole")!.perimeterMm;
    expect(needOf(example, "lasting nails").gross).toBe(2 * Math.ceil(round / 10));
  });

  test("of what is drawn again as many are bought as stand in all lasts at once, and a tenth more; a needle for each pair and one in hand", () => {
    const one = makingInput({ said: { pairs: "3" } }), two = makingInput({ said: { pairs: "3", lasts: "2" } }), five = makingInput({ said: { pairs: "3", lasts: "5" } });
    for (const good of ["insole tacks", "lasting tacks", "lasting nails"] as const) {
      const { net, gross, spare } = needOf(one, good);
      expect(gross).toBe(net);
      expect(spare).toBe(Math.ceil(net / 10));
      expect(needOf(two, good)).toMatchObject({ net, gross: net, spare: Math.ceil(net / 5), atOnce: 2 });
      // No more lasts are filled than there are pairs.
      expect(needOf(five, good)).toMatchObject({ net, gross: net, atOnce: 3 });
    }
    expect(needOf(one, "needles")).toMatchObject({ gross: 1, spare: 1 });
  });

  test("two large pieces of a pair come out of one skin: where two boxes side by side are more than is counted, that is told", () => {
    for (const input of [example, makingInput({ parts: { cut: "quarters" } })]) {
      const { holds, gross, waste } = needOf(input, "upper leather");
      const boxes = holds!.count * holds!.longMm * holds!.wideMm;
      expect(holds!.count).toBe(2);
      if (boxes > gross) expect(waste!.why).toContain(`${dm2(boxes).toFixed(1)} dm²`);
      else expect(waste!.why).not.toContain("side by side");
    }
    expect(needOf(example, "upper leather").waste!.why).toContain("side by side");
  });

  test("the thread is told in the numbers of every shop: tex 50 is 450 denier and cotton ticket 35 (ISO 1139; 3 × 590.54 / tex)", () => {
    expect(needOf(example, "thread").kind).toContain("(tex 50, 450 denier, cotton ticket about 35)");
  });

  test("an upper in one piece takes 12 to 18 dm², a lining 9 to 14, soles 4 to 5.5, at EU 37 and 38", () => {
    expect(dm2(needOf(example, "upper leather").gross)).toBeGreaterThan(12);
    expect(dm2(needOf(example, "upper leather").gross)).toBeLessThan(18);
    expect(dm2(needOf(example, "lining leather").gross)).toBeGreaterThan(9);
    expect(dm2(needOf(example, "lining leather").gross)).toBeLessThan(14);
    expect(dm2(needOf(example, "sole leather").gross)).toBeGreaterThan(4);
    expect(dm2(needOf(example, "sole leather").gross)).toBeLessThan(5.5);
  });
});

describe("cement", () => {
  test("about 150 g/m² a coat on each face (a trade guide on contact adhesives); two coats on leather, one on rubber (an overview of gluing for repairs)", () => {
    expect(coatGPerM2["contact cement"]).toBe(150);
    expect(coatsOf.leather).toBe(2);
    expect(coatsOf.rubber).toBe(1);
  });

  test("two soles of 0.06 to 0.07 m² of bond take about 20 g, a whole pair 40 to 50 g and more (common practice, no source)", () => {
    for (const input of [makingInput(), makingInput({ parts: { cut: "quarters" } })]) {
      const { bonds } = made(input);
      const outsole = bonds.find(({ name }) => name === "outsole")!;
      expect(2 * outsole.areaMm2).toBeGreaterThan(60_000 * 0.95);
      expect(2 * outsole.areaMm2).toBeLessThan(70_000);
      expect(outsole.g).toBeGreaterThan(17);
      expect(outsole.g).toBeLessThan(23);
      const cement = bonds.filter(({ glue }) => glue === "contact cement").reduce((sum, { g }) => sum + g, 0);
      expect(cement).toBeGreaterThan(40);
      expect(cement).toBeLessThan(70);
    }
  });
});

describe("nails of the heel", () => {
  test("end inside: shorter than lift, sole and boards, longer than the lift by what holds", () => {
    for (let room = 4; room < 40; room += 0.7) {
      for (let lift = 1; lift < room; lift += 0.9) {
        const length = nailWithin(room, lift);
        if (length === undefined) continue;
        expect(length).toBeLessThanOrEqual(room - 1.5 + 1e-6);
        expect(length).toBeGreaterThanOrEqual(lift + 4 - 1e-6);
        expect(length).toBeLessThanOrEqual(lift + 10 + 1e-6);
      }
    }
    expect(nailWithin(9.7, 2.2)).toBe(8);
    expect(nailWithin(4, 2)).toBeUndefined();
  });

  test("as many as are pricked on the lifts of both shoes, and no longer than what lies there", () => {
    for (const input of [makingInput(), makingInput({ pieces: { liftMm: 4, topPieceMm: 5 } })]) {
      const pricked = input.pieces.filter(({ material }) => material === "heel leather").reduce((sum, { perPair, marks }) => sum + perPair * marks.filter((m) => m.kind === "prick" && m.name === "nails").length, 0);
      expect(needOf(input, "heel nails").net).toBe(pricked);
      // One in ten bends.
      expect(needOf(input, "heel nails").gross).toBe(Math.ceil(1.1 * pricked));
      const { settings, made: bottom } = input;
      const height = Math.min(bottom!.heel!.backMm, bottom!.heel!.breastMm) + settings.soleMm + settings.firstBoardMm + settings.secondBoardMm;
      for (const { name } of needOf(input, "heel nails").parts) expect(Number(/(\d+) mm$/u.exec(name)![1])).toBeLessThan(height);
    }
  });

  test("where none can end inside, that is told and none is counted", () => {
    const input = makingInput();
    const thin = { ...input, settings: { ...input.settings, soleMm: 1, firstBoardMm: 0.5, secondBoardMm: 0.5 } };
    const { needs, findings } = made(thin);
    expect(needs.some(({ good }) => good === "heel nails")).toBe(false);
    expect(findings.map(explain).join()).toMatch(/Heel nails: from the lift 1 up only .* cement it alone/u);
  });
});

test("cork is the thinnest sheet sold that fills the hollow, or layers of it", () => {
  expect(corkFor(2.1)).toEqual({ sheetMm: 2, layers: 1 });
  expect(corkFor(2.2)).toEqual({ sheetMm: 3, layers: 1 });
  expect(corkFor(2)).toEqual({ sheetMm: 2, layers: 1 });
  expect(corkFor(6.3)).toEqual({ sheetMm: 4, layers: 2 });
  for (let most = 0.1; most < 20; most += 0.13) {
    const { sheetMm, layers } = corkFor(most);
    // What no hand feels under a sole may be lacking (our own).
    expect(sheetMm * layers).toBeGreaterThanOrEqual(most - 0.15 - 1e-6);
  }
});

describe("sizes of skins", () => {
  test("a larger skin loses less; what the maker says is used and named", () => {
    const small = needOf(makingInput({ said: { skins: { "upper leather": "4 ft2" } } }), "upper leather"), large = needOf(makingInput({ said: { skins: { "upper leather": "1,2 m²" } } }), "upper leather");
    expect(large.waste!.ofBought).toBeLessThan(small.waste!.ofBought);
    expect(large.net).toBe(small.net);
    expect(large.waste!.why).toContain("12.9 ft²");
    expect(large.waste!.why).not.toContain("usual size");
  });

  test("a leather's own usual skin: goat is smaller than calf, calf than a side of cow (common practice, no source); chevreau up to 60 dm², larger is goat (a textbook of shoe materials)", () => {
    expect(usualSkinFt2.goat).toBeLessThan(usualSkinFt2.calf);
    expect(usualSkinFt2.calf).toBeLessThan(usualSkinFt2.cow);
    expect(usualSkinFt2.goat * 9.290304).toBeLessThan(61);
    const calf = makingInput();
    expect(needOf({ ...calf, leathers: { ...calf.leathers, upper: { name: "calf", known: "calf" } } }, "upper leather").waste!.ofBought).toBeLessThan(needOf(calf, "upper leather").waste!.ofBought);
  });

  test.each([
    ["six feet", "skin-unread", /upper leather is bought cannot be read: .*no number/u],
    ["-6 ft2", "skin-unread", /below 0/u],
    ["0 ft2", "skin-unread", /is nothing/u],
    ["6", "skin-unread", /has no unit/u],
    ["6 kg", "skin-unread", /no unit of area/u],
    ["6 dm2", "skin-odd", /6 dm2, that is 0\.6 ft².*unit/u],
    ["60 ft2", "skin-odd", /size of one, not of all/u],
  ])("%s is told at its field, and the list stands", (written, code, says) => {
    const { needs, findings } = made(makingInput({ said: { skins: { "upper leather": written } } }));
    expect(findings.map((f) => f.code)).toEqual([code]);
    expect(severityOf(findings[0]!)).toBe("look");
    expect(explain(findings[0]!)).toMatch(says);
    expect(needs).toHaveLength(made(makingInput()).needs.length);
  });

  test("an unknown name is told with the nearest, an empty field says nothing, spools are left to what buys them", () => {
    const { findings } = made(makingInput({ said: { skins: { "uper leather": "6 ft2", "lining leather": " ", thread: "1000 m" } } }));
    expect(findings.map(explain)).toEqual([expect.stringContaining("Did you mean upper leather")]);
  });
});

describe("a taped pattern", () => {
  const example = makingInput();
  const input = (withBottom: boolean): MakingInput => {
    const { medial, lateral, bottom } = demoTape();
    const outlines = [laid(medial, 37, [100, 420]), laid(lateral, -120, [-50, 20]), ...(withBottom ? [laid(bottom.outline, 11, [400, 0])] : [])];
    const tape = tapedShell([tracedPicture("tape.jpg", outlines)], { photos: ["tape.jpg"], side: "right" });
    const settings = pieceSettingsFrom(pieceRulesForTape(tape));
    const cut = cutTapedPieces(tape, { settings, labels: { title: "Taped", size: "38" } });
    const { stiff, leathers } = makingInput();
    return { ...cut, from: "tape", parts: tapedPartsFrom(), edge: "taped", settings, stiff, leathers, corrected: false, ends: { throatDepthMm: 70, backHeightMm: 55 }, said: {} };
  };

  test("gives the list without what only a last shows: heel, and how deep the hollow is", () => {
    const { needs, findings } = made(input(true));
    const goods = needs.map(({ good }) => good);
    expect(goods).toEqual(expect.arrayContaining(["upper leather", "lining leather", "insole board", "filler", "sole leather", "shanks", "thread", "contact cement", "lasting nails"]));
    expect(goods).not.toContain("lift leather");
    expect(goods).not.toContain("heel nails");
    expect(needs.find(({ good }) => good === "filler")?.volumeMm3).toBeUndefined();
    expect(findings).toEqual([]);
  });

  test("and without a bottom still what lies above the feather line, its nails by the upper's own line", () => {
    const { needs, bonds } = made(input(false));
    const goods = needs.map(({ good }) => good);
    expect(goods).toEqual(expect.arrayContaining(["upper leather", "lining leather", "thread", "latex", "lasting nails"]));
    for (const good of ["insole board", "sole leather", "shanks", "filler", "contact cement"] as const) expect(goods).not.toContain(good);
    expect(bonds.some(({ glue }) => glue === "contact cement")).toBe(false);
  });

  test("what its steps use and nothing was drawn to count is named: of the heel alone, or of all that lies below", () => {
    expect(makingOf(input(true)).cost.uncounted).toEqual(expect.arrayContaining(["lift leather", "top piece leather"]));
    const below = makingOf(input(false));
    expect(below.cost.uncounted).toEqual(expect.arrayContaining(["insole board", "second board", "shanks", "filler", "sole leather", "contact cement"]));
    expect(below.findings.map(({ code }) => code)).toContain("goods-uncounted");
    expect(makingOf(example).cost.uncounted).toEqual([]);
  });
});

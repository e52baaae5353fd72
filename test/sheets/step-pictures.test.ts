import { describe, expect, test } from "vitest";
import { extent } from "#sheets/book/step-pictures/sketch-lines.ts";
import { placedLetters } from "#sheets/book/step-pictures/lettered.ts";
import type { Sketch } from "#sheets/book/step-pictures/sketch.ts";
import { picturedSteps, picturesOf } from "#sheets/book/step-pictures/step-picture.ts";
import { bookPages } from "#sheets/book/making-pdf.ts";
import { gaugesFor } from "#sheets/marks/marks-pdf.ts";
import { marginMm, type PaperName } from "#sheets/paper.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import { bookInput, busy } from "../support/book-inputs.ts";
import { wordsOnPage } from "../support/words-on-page.ts";

const wide = 52;
/** What fits beside a step without more pages than one takes along: our own limit. */
const mostHighMm = 40;

type Box = readonly [x0: number, y0: number, x1: number, y1: number];
const boxOf = (xy: readonly number[]): Box => {
  const at = (axis: number): readonly number[] => xy.filter((_, i) => i % 2 === axis);
  return [Math.min(...at(0)), Math.min(...at(1)), Math.max(...at(0)), Math.max(...at(1))];
};
/** Points along a stroke, no farther apart than a tenth of a millimetre. */
function* along(xy: readonly number[], closed: boolean): Generator<readonly [number, number]> {
  const all = closed ? [...xy, xy[0]!, xy[1]!] : xy;
  for (let i = 2; i < all.length; i += 2) {
    const [x0, y0, x1, y1] = [all[i - 2]!, all[i - 1]!, all[i]!, all[i + 1]!], parts = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 0.1));
    for (let k = 0; k <= parts; k++) yield [x0 + ((x1 - x0) * k) / parts, y0 + ((y1 - y0) * k) / parts];
  }
}
/** Drawn size over true size, from the title. */
const scaleOf = (title: string): number => {
  const [, up, down] = /([\d.]+) : ([\d.]+)$/.exec(title)!;
  return Number(up) / Number(down);
};
const named = (sketch: Sketch, name: string) => sketch.strokes.find((s) => s.name === name)!;

describe.each([["the example", {}], ["quarters, a bound edge and all that can be added", busy], ["a raw edge and a butted inner seam", { parts: { cut: "inner-seam", seam: "butted" }, shell: { edge: "raw" } }], ["a bagged edge", { shell: { edge: "bagged" } }]] as const)("pictures of %s", (_, own) => {
  const input = bookInput(own), book = { input, gauges: gaugesFor(input) };
  const all = input.making.steps.flatMap(({ id }) => picturesOf(id, book, wide).map((picture) => ({ id, ...picture })));

  test("have room beside their step", () => {
    expect(all.length).toBeGreaterThan(10);
    for (const { id, sketch } of all) {
      const { minX, minY, maxX, maxY } = extent(sketch, placedLetters(sketch));
      expect([id, maxX - minX <= wide, maxY - minY <= mostHighMm]).toEqual([id, true, true]);
    }
  });

  test("have letters apart from each other and from every line", () => {
    for (const { id, sketch } of all) {
      const letters = placedLetters(sketch);
      expect([id, letters.length]).toEqual([id, sketch.letters.length]);
      letters.forEach(({ text, box: a }, i) => {
        for (const { text: other, box: b } of letters.slice(i + 1)) expect([id, text, other, a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY]).toEqual([id, text, other, true]);
        const struck = sketch.strokes.some(({ xy, closed }) => [...along(xy, closed)].some(([x, y]) => x > a.minX && x < a.maxX && y > a.minY && y < a.maxY));
        expect([id, text, struck]).toEqual([id, text, false]);
      });
    }
  });

  test("explain every letter once, in words and in the alphabet's order", () => {
    for (const { id, sketch } of all) {
      const told = sketch.told.map(([letter]) => letter).filter(Boolean);
      expect([id, told]).toEqual([id, told.map((_l, i) => "abcdefgh"[i])]);
      expect(new Set(told).size).toBe(told.length);
      for (const [, words] of sketch.told) expect(words).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test("have the scale that they tell: pieces of the pair, no other outlines", () => {
    for (const [id, names] of [["skive-upper", input.pieces.filter((p) => p.side === "right" && ["upper", "vamp"].includes(p.name)).map((p) => p.name)], ["cut-stiffening", ["stiffener"]], ["prime-boards", ["insole"]], ["fit-fillers", ["insole"]]] as const) {
      for (const name of names) {
        const [picture] = picturesOf(id, book, wide), piece = input.pieces.find((p) => p.side === "right" && p.name === name)!;
        if (!picture) continue;
        const [x0, y0, x1, y1] = boxOf(named(picture.sketch, `picture-${id}-${name}`).xy), [X0, Y0, X1, Y1] = boxOf([...piece.outline.xy]);
        expect((x1 - x0) / (X1 - X0)).toBeCloseTo(scaleOf(picture.title), 6);
        expect((y1 - y0) / (Y1 - Y0)).toBeCloseTo(scaleOf(picture.title), 6);
      }
    }
  });
});

describe("what the pictures of the example tell", () => {
  const input = bookInput(), book = { input, gauges: gaugesFor(input) }, { pieceSettings: s, shellSettings: shell, made } = input;
  const one = (id: string, i = 0) => picturesOf(id, book, wide)[i]!;

  test("the steps that a picture helps most have one", () => {
    const with_ = input.making.steps.filter(({ id }) => picturesOf(id, book, wide).length > 0).map(({ id }) => id);
    expect(with_).toEqual(["cut-stiffening", "skive-upper", "fold-topline", "stitch-topline", "prime-boards", "tack-insoles", "set-stiffeners", "draft-uppers", "last-sides", "last-toes", "rough-bottoms", "fit-fillers", "lay-soles", "prime-heels", "build-heels"]);
    expect(with_.every((id) => picturedSteps.includes(id))).toBe(true);
  });

  // A textbook's eight pulls in their order: toe, its corners, back, seat sides; then the joints (common practice, no source).
  test("the drafts of a step stand at their places, with their numbers, earlier ones lightly", () => {
    const numbers = (id: string) => one(id).sketch.letters.map(({ text }) => text).filter((t) => /\d/.test(t)).sort((a, b) => Number(a) - Number(b));
    expect(numbers("draft-uppers")).toEqual(["1", "2", "3", "4", "5", "6", "7", "8"]);
    expect(numbers("last-sides")).toEqual(draftOrder.map(({ number }) => String(number)));
    const { sketch, title } = one("draft-uppers"), scale = scaleOf(title);
    for (const { number, at } of book.gauges.drafts.filter((d) => d.number <= 8)) {
      const letter = sketch.letters.find(({ text }) => text === String(number))!;
      expect(Math.hypot(letter.at[0] - scale * at[0], letter.at[1] + scale * at[1])).toBeLessThan(3);
    }
  });

  test("pulls go inward: every arrow ends inside the feather line", () => {
    const { sketch } = one("draft-uppers"), ring = sketch.strokes.find((x) => x.name === "picture-draft-uppers-feather")!.xy;
    const inside = (x: number, y: number): boolean => {
      let odd = false;
      for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) if (ring[i + 1]! > y !== ring[j + 1]! > y && x < ((ring[j]! - ring[i]!) * (y - ring[i + 1]!)) / (ring[j + 1]! - ring[i + 1]!) + ring[i]!) odd = !odd;
      return odd;
    };
    const shafts = sketch.strokes.filter(({ xy, closed }) => !closed && xy.length === 4);
    expect(shafts).toHaveLength(8);
    for (const { xy } of shafts) expect([inside(xy[0]!, xy[1]!), inside(xy[2]!, xy[3]!)]).toEqual([false, true]);
  });

  // Snips 3 to 4 mm apart that stop at least 1 mm before the line: common practice, no source.
  test("snips at the throat stop before the fold line", () => {
    const { sketch, title } = one("fold-topline"), scale = scaleOf(title), line = named(sketch, "picture-fold-topline-line").xy;
    const snips = sketch.strokes.filter(({ xy, wideMm, dashMm }) => xy.length === 4 && wideMm > 0.3 && dashMm.length === 0);
    expect(snips.length).toBeGreaterThan(8);
    for (const { xy } of snips) {
      const clear = Math.min(...[...along(line, false)].map(([x, y]) => Math.hypot(x - xy[2]!, y - xy[3]!))) / scale;
      expect(clear).toBeGreaterThan(0.9);
      expect(Math.hypot(xy[2]! - xy[0]!, xy[3]! - xy[1]!) / scale).toBeLessThan(s.toplineFoldMm);
    }
  });

  test("sections are as thick as the pair is", () => {
    const sole = one("lay-soles"), [, y0, , y1] = boxOf(named(sole.sketch, "picture-lay-soles-sole").xy);
    expect((y1 - y0) / scaleOf(sole.title)).toBeCloseTo(s.soleMm, 9);
    const back = one("set-stiffeners"), [x0, , x1, top] = boxOf(named(back.sketch, "picture-set-stiffeners-stiffener").xy);
    expect((x1 - x0) / scaleOf(back.title)).toBeCloseTo(shell.counterMm, 9);
    expect(-top / scaleOf(back.title)).toBeCloseTo(shell.counterBelowMm, 9);
    const [, w0, , w1] = boxOf(named(one("prime-heels").sketch, "picture-prime-heels-wedge").xy);
    expect(w1 - w0).toBeCloseTo(made!.heel!.splitMostMm, 9);
  });

  test("the heel's layers are as thick at the back and at the breast as they are cut", () => {
    const { sketch, title } = one("build-heels"), scale = scaleOf(title);
    for (const { name, backMm, breastMm } of made!.heel!.layers) {
      const [, y0, , y1, , y2, , y3] = named(sketch, `picture-build-heels-${name.replace(" ", "-")}`).xy;
      expect((y0! - y3!) / scale).toBeCloseTo(backMm, 9);
      expect((y1! - y2!) / scale).toBeCloseTo(breastMm, 9);
    }
  });

  test("no tack of the insole is drawn on the shank", () => {
    const { sketch } = one("tack-insoles"), shank = sketch.strokes.find(({ closed, dashMm }) => closed && dashMm.length > 0)!, [x0, , x1] = boxOf(shank.xy);
    const crosses = sketch.strokes.filter(({ xy, closed }) => !closed && xy.length === 4).map(({ xy }) => (xy[0]! + xy[2]!) / 2);
    expect(new Set(crosses.map((x) => x.toFixed(3))).size).toBe(3);
    for (const x of crosses) expect(x < x0 || x > x1).toBe(true);
  });
});

test.each(["A4", "Letter", "A3", "roll"] as const satisfies readonly PaperName[])("no line of a page of steps leaves the page's margins on %s", (paper) => {
  for (const own of [{}, busy]) {
    const input = bookInput(own, { paper });
    for (const ink of bookPages(input, printPaper(input.choices)).inks) {
      if (!wordsOnPage(ink).some((w) => /^Steps(, more)?$/.test(w.text))) continue;
      const points = [...ink.content().matchAll(/(?:^| )(-?[\d.]+) (-?[\d.]+) [ml](?= )/gm)].map(([, x, y]) => [Number(x), Number(y)] as const);
      expect(points.length).toBeGreaterThan(4);
      expect(points.filter(([x, y]) => x < marginMm - 0.01 || x > ink.page.widthMm - marginMm + 0.01 || y < marginMm - 0.01 || y > ink.page.heightMm - marginMm + 0.01)).toEqual([]);
    }
  }
});

import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import type { Pair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import type { Piece } from "#pieces/piece.ts";
import { setParts, setPiece } from "#app/state/edits.ts";
import { followed, followedWords } from "#app/state/follow.ts";
import { greatestApart } from "#app/state/outline-apart.ts";
import { byGroup, kindsOf } from "#app/state/piece-kinds.ts";
import { comparedWith, comparedWords, pieceApartWords, variantOf } from "#app/state/variant.ts";

const outline = (...xy: number[]): { readonly xy: Float64Array } => ({ xy: Float64Array.from(xy) });
const none = new Map<string, Uint8Array>();

describe("how far two outlines lie apart", () => {
  test("equal ones not at all, also where they begin elsewhere", () => {
    expect(greatestApart(outline(0, 0, 10, 0, 10, 10, 0, 10), outline(10, 10, 0, 10, 0, 0, 10, 0)).mm).toBe(0);
  });

  test("a square within a larger one as far as corner from corner", () => {
    // Hausdorff distance of concentric squares with sides 10 and 16: 3·√2, at a corner of the larger.
    const apart = greatestApart(outline(0, 0, 10, 0, 10, 10, 0, 10), outline(-3, -3, 13, -3, 13, 13, -3, 13));
    expect(apart.mm).toBeCloseTo(3 * Math.SQRT2, 12);
    expect(Math.abs(apart.at[0] - 5)).toBe(8);
    expect(Math.abs(apart.from[0] - 5)).toBe(5);
  });

  test("either way round, with the place on the second", () => {
    const [plain, spiked] = [outline(0, 0, 20, 0, 20, 10, 0, 10), outline(0, 0, 10, 0, 10, -4, 10, 0, 20, 0, 20, 10, 0, 10)];
    expect(greatestApart(plain, spiked)).toEqual({ mm: 4, at: [10, -4], from: [10, 0] });
    expect(greatestApart(spiked, plain)).toEqual({ mm: 4, at: [10, 0], from: [10, -4] });
  });
});

describe("what follows from an edit", () => {
  const pipeline = new Pipeline();
  const pairOf = (job = defaultJob()): Pair => pipeline.run(job, none);
  const before = pairOf();
  const longer = pairOf(setPiece(defaultJob(), "soleFinishHeelMm", 2.2));

  test("only the pieces whose outline is another are told", () => {
    const what = followed(before, longer);
    expect(what.keys).toEqual(["pieces soleFinishHeelMm"]);
    expect(what.changed).toContain("outsole");
    expect(what.changed).not.toContain("upper");
    expect(what.changed).not.toContain("insole");
    expect(followedWords(what)).toMatch(/^Changed with it: .*outsole.*\.$/);
  });

  test("nothing is told where nothing changed, and a word is told as its key", () => {
    expect(followedWords(followed(before, pairOf()))).toBeUndefined();
    expect(followed(before, { ...before, job: setParts(before.job, { sock: "heel" }) }).keys).toEqual(["parts sock"]);
  });

  test("pieces that come and go are told by name", () => {
    const without = (name: string): Pair => ({ ...before, pieces: before.pieces.filter((p) => p.name !== name) });
    expect(followed(before, without("sock")).gone).toEqual(["sock"]);
    expect(followedWords(followed(without("sock"), before))).toBe("New: sock.");
  });

  test("an outline cut by other points along the same line has not changed", () => {
    const finer = (p: Piece): Piece => ({ ...p, outline: { xy: Float64Array.from({ length: 2 * p.outline.xy.length }, (_, k) => {
      const { xy } = p.outline;
      const i = 2 * Math.floor(k / 4), c = k % 2;
      return k % 4 < 2 ? xy[i + c]! : (xy[i + c]! + xy[(i + 2 + c) % xy.length]!) / 2;
    }) } });
    expect(followed(before, { ...before, pieces: before.pieces.map(finer) }).changed).toEqual([]);
  });

  test("two variants are held against each other by place, length and area", () => {
    const [a, now] = [variantOf(before), variantOf(longer)];
    const compared = comparedWith(a, now);
    const sole = compared.pieces.find((p) => p.name === "outsole")!;
    // 1 mm more along the outline's normal round the heel.
    expect(sole.apart.mm).toBeGreaterThan(0.95);
    expect(sole.apart.mm).toBeLessThan(1.2);
    expect(sole.areaMm2).toBeGreaterThan(0);
    expect(compared.toplineMm).toBe(0);
    expect(comparedWords(compared)).toMatch(/^The topline is as long as A’s\. .*outsole by up to 1/);
    expect(pieceApartWords(sole, kindsOf(longer.pieces).find((k) => k.name === "outsole")!)).toMatch(/^At most 1.* from A, (at|\d).* larger\.$/);
    expect(comparedWith(a, a)).toEqual({ toplineMm: 0, pieces: [], onlyNow: [], onlyInA: [] });
    const fewer = { ...now, pieces: now.pieces.filter((p) => p.name !== "sock") };
    expect(comparedWith(a, fewer).onlyInA).toEqual(["sock"]);
    expect(comparedWords(comparedWith(fewer, a))).toContain("A has no sock.");
  });

  test("every piece lies in a group, and each is counted once", () => {
    const groups = byGroup(kindsOf(before.pieces));
    expect(groups.flatMap((g) => g.kinds).length).toBe(kindsOf(before.pieces).length);
    expect(groups.find((g) => g.kinds.some((k) => k.name === "outsole"))?.group).toBe("bottom");
    expect(groups.find((g) => g.kinds.some((k) => k.name === "upper, net"))?.group).toBe("card to try on the last");
  });
});

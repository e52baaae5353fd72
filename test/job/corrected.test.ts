import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { demoMeasurements } from "#last/demo.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import { upperCuts } from "#pieces/choices.ts";
import type { Piece } from "#pieces/piece.ts";

const none = new Map<string, Uint8Array>();
const pipeline = new Pipeline();
const made = (change: Partial<Job> = {}, by = pipeline): LastPair => by.run({ ...defaultJob(), ...change }, none, { triangles: 4000 }) as LastPair;
const areaOf = ({ pieces }: LastPair, name: string): number => pieces.find((piece) => piece.name === name && piece.side === "right")!.areaMm2;

describe("pieces cut from a pattern corrected for its leather", () => {
  test("are smaller where the pulls stretch them, more so of a leather that gives more, and in every cut fit together", () => {
    for (const cut of upperCuts) {
      const [plain, calf, nappa] = [made({ parts: { cut } }), made({ parts: { cut }, leather: { upper: { known: "calf" } }, lasting: { correct: true } }), made({ parts: { cut }, leather: { upper: { known: "nappa" } }, lasting: { correct: true } })];
      const main = cut === "quarters" ? "vamp" : "upper";
      expect(areaOf(calf, main)).toBeLessThan(areaOf(plain, main));
      // A nappa gives about twice as much as calf (handbook of hand pattern-making, from memory there).
      expect(areaOf(nappa, main)).toBeLessThan(areaOf(calf, main));
      expect(areaOf(nappa, "vamp lining")).toBeLessThan(areaOf(plain, "vamp lining"));
      // The bottom lies under the feather line and is not pulled.
      expect(areaOf(nappa, "insole")).toBe(areaOf(plain, "insole"));
      for (const pair of [calf, nappa]) expect(pair.findings.filter((f) => severityOf(f) !== "note").map(({ code }) => code)).toEqual(plain.findings.filter((f) => severityOf(f) !== "note").map(({ code }) => code));
    }
  });

  // Card does not stretch: what is tried on the last before anything is cut is the pattern as it lies there, in every cut.
  test("leave the cards as they lie on the last, and each says of itself which it is", () => {
    const words = (piece: Piece): string => piece.marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])).join(" ");
    for (const cut of upperCuts) {
      const plain = made({ parts: { cut } }), nappa = made({ parts: { cut }, leather: { upper: { known: "nappa" } }, lasting: { correct: true } });
      const cards = (pair: LastPair): readonly Piece[] => pair.pieces.filter((piece) => piece.name.endsWith(", net"));
      expect(cards(nappa).length).toBeGreaterThan(0);
      expect(cards(nappa).map(({ name, outline }) => ({ name, outline }))).toEqual(cards(plain).map(({ name, outline }) => ({ name, outline })));
      for (const card of cards(nappa)) expect(words(card)).toMatch(/net, for the last, leather is cut smaller/);
      const leather = nappa.pieces.filter((piece) => nappa.pieces.some((card) => card.name === `${piece.name}, net`));
      for (const piece of leather) expect(words(piece)).toContain("corrected for nappa");
      const { before, after } = nappa.corrected!.difference.throatDepthMm;
      expect(leather.map(words).join(" ")).toContain(`throat ${(before - after).toFixed(1)} mm shorter`);
      expect(plain.pieces.map(words).join(" ")).not.toContain("corrected");
    }
  });

  test("are cut for the thinnest leather where a layer is said to be thinner, and that is told", () => {
    const { findings, corrected, leathers } = made({ pieces: { upperThicknessMm: 0 }, lasting: { correct: true } });
    expect(findings.filter(({ code }) => code === "leather-thin").map(explain)).toEqual(["The upper is said to be 0.0 mm thick, and no leather is. What it gives is worked out for 0.2 mm: say how thick it is cut."]);
    expect(leathers.upper.thicknessMm).toBe(0.2);
    expect(corrected!.flat.uv.every(Number.isFinite)).toBe(true);
  });

  test("are left alone by a leather as long as nothing is to be corrected", () => {
    expect(made({ leather: { upper: { known: "nappa" } }, lasting: { pullToeN: 60, throatShiftMm: 3 } }).pieces).toEqual(made().pieces);
  });

  test("are cut farther out at the throat by what is taken up there", () => {
    const depth = (pair: LastPair): number => pair.corrected!.difference.throatDepthMm.after;
    const [as, more] = [made({ lasting: { correct: true } }), made({ lasting: { correct: true, throatShiftMm: 2, backShiftMm: 1 } })];
    expect(depth(more) - depth(as)).toBeCloseTo(2, 1);
    expect(more.corrected!.difference.backHeightMm.after - as.corrected!.difference.backHeightMm.after).toBeCloseTo(1, 1);
    expect(areaOf(more, "upper")).toBeGreaterThan(areaOf(as, "upper"));
  });

  test("come out the same whatever was made before", () => {
    const job = { lasting: { correct: true, pullToeN: 50 } };
    const fresh = made(job, new Pipeline());
    made({ lasting: { correct: true, pullToeN: 20 } });
    expect(made(job).pieces).toEqual(fresh.pieces);
  });

  test("of a left last are the twins of those of its right one", () => {
    const left = made({ last: { from: "measures", measures: { ...demoMeasurements, side: demoMeasurements.side === "left" ? "right" : "left" } }, lasting: { correct: true } });
    expect(areaOf(left, "upper") / areaOf(made({ lasting: { correct: true } }), "upper")).toBeCloseTo(1, 4);
  });
});

// What a pair takes, recomputed from the bytes of report.json alone: a shoelace formula and sums of the test's own, nothing of the program's.
import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import type { Job } from "#job/job.ts";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import { Pipeline } from "#job/pipeline.ts";
import { sheetsFor } from "#job/sheets-for.ts";

/** As much of a report as is read here. */
interface Told {
  readonly pieces: readonly { readonly name: string; readonly side: string; readonly material: string; readonly perPair: number; readonly net: boolean; readonly outlineMm: readonly (readonly [number, number])[] }[];
  readonly strips: readonly { readonly name: string; readonly material: string; readonly widthMm: number; readonly lengthMm: number; readonly perPair: number }[];
  readonly stitching: readonly { readonly name: string; readonly use: string; readonly rows: number; readonly lengthMm: number; readonly plies: readonly { readonly mm: number; readonly count: number }[] }[];
  readonly pieceSettings: Readonly<Record<string, number>>;
  readonly shell: { readonly settings: { readonly counterMm: number } };
  readonly made: { readonly heel: { readonly layers: readonly { readonly name: string; readonly backMm: number; readonly breastMm: number }[] } };
  readonly making: {
    readonly materials: readonly { readonly name: string; readonly unit: string; readonly net: number; readonly gross: number; readonly parts: readonly { readonly name: string; readonly perPair: number; readonly net: number }[]; readonly waste?: { readonly ofBought: number } }[];
    readonly bonds: readonly { readonly name: string; readonly glue: string; readonly areaMm2: number; readonly coats: readonly [number, number]; readonly gPerM2: number; readonly g: number }[];
  };
}
type PieceTold = Told["pieces"][number];

const example = (name: string): Job => checkedJob(name, JSON.parse(readFileSync(`examples/${name}`, "utf8")));
const quarters = example("quarters-39.json");
const jobs: readonly [string, Job][] = [
  ["the example pair", defaultJob()],
  ["the almond toe of size 37", example("almond-37.json")],
  ["quarters with all that may be added, leather in heel and toe", { ...quarters, parts: { ...quarters.parts, strap: true, toeCap: true, backStrip: true, gore: true }, shell: { ...quarters.shell, counterMm: 2 }, pieces: { ...quarters.pieces, toePuffMm: 1.2 } }],
];

const areaOf = ({ outlineMm }: PieceTold): number => {
  const [x0, y0] = outlineMm[0]!;
  const twice = outlineMm.reduce((sum, [x, y], k) => {
    const [u, v] = outlineMm[(k + 1) % outlineMm.length]!;
    return sum + (x - x0) * (v - y0) - (u - x0) * (y - y0);
  }, 0);
  return Math.abs(twice) / 2;
};
const roundOf = ({ outlineMm }: PieceTold): number => outlineMm.reduce((sum, [x, y], k) => {
  const [u, v] = outlineMm[(k + 1) % outlineMm.length]!;
  return sum + Math.hypot(u - x, v - y);
}, 0);

/** A millionth; and coordinates are rounded to 0.0001 mm, which moves 0.005 mm² along a straight edge of 100 mm. */
const same = (got: number, want: number, what: string): void => expect(Math.abs(got - want), `${what}: told ${got}, by the test ${want}`).toBeLessThan(1e-6 * Math.abs(want) + 0.01);

const skinsAndSheets = ["upper leather", "lining leather", "sock leather", "stiffener", "toe puff", "side lining", "insole board", "second board", "sole leather", "lift leather", "top piece leather"];

/** What a piece is cut from, as it is bought: of the heel's leather only the top piece has to be from the butt. */
const goodOf = ({ material, name }: PieceTold): string => (material !== "heel leather" ? material : name === "top piece" ? "top piece leather" : "lift leather");

describe.each(jobs)("%s, from its report's bytes", (_, job) => {
  let told: Told;
  beforeAll(async () => {
    const files = await sheetsFor(new Pipeline().run(job, new Map(), { triangles: 4000 }));
    told = JSON.parse(new TextDecoder().decode(files.find(({ name }) => name === "report.json")!.bytes)) as Told;
  });
  const of = (good: string): readonly PieceTold[] => told.pieces.filter((p) => p.material === good || goodOf(p) === good);
  const sum = (pieces: readonly PieceTold[], value: (p: PieceTold) => number): number => pieces.reduce((all, p) => all + p.perPair * value(p), 0);
  const area = (material: string): number => sum(of(material), areaOf);
  const need = (name: string) => told.making.materials.find((one) => one.name === name);
  const bond = (name: string): number => told.making.bonds.find((one) => one.name === name)?.areaMm2 ?? 0;

  test("leathers, boards and sheets: all pieces of a material and the strips cut from it, as a whole and part by part", () => {
    for (const material of skinsAndSheets) {
      const strips = told.strips.filter((s) => s.material === material);
      const net = area(material) + strips.reduce((all, s) => all + s.perPair * s.lengthMm * s.widthMm, 0);
      if (net === 0) expect(need(material), material).toBeUndefined();
      else {
        same(need(material)!.net, net, material);
        for (const part of need(material)!.parts) {
          const pieces = of(material).filter(({ name }) => name === part.name);
          if (pieces.length === 0) continue;
          same(part.net, sum(pieces, areaOf), `${material}, ${part.name}`);
          expect(part.perPair, part.name).toBe(pieces.reduce((all, p) => all + p.perPair, 0));
        }
      }
    }
    // Cork in one layer or more: whole layers of what lies between the margins.
    const layers = need("filler")!.net / area("filler");
    expect(Math.abs(layers - Math.round(layers))).toBeLessThan(1e-6);
  });

  test("what is bought, less what falls away, is what the pieces have", () => {
    for (const { name, unit, net, gross, waste } of told.making.materials) {
      expect(Math.abs(gross * (1 - (waste?.ofBought ?? 0)) - net), name).toBeLessThan(1e-4 * gross + 1e-3);
      if (unit === "pieces") expect(Number.isInteger(gross), name).toBe(true);
    }
  });

  test("card: every pattern of the right shoe once; a shank is bought in its form", () => {
    same(need("pattern card")!.net, told.pieces.filter(({ side, material }) => side === "right" && material !== "shank").reduce((all, p) => all + areaOf(p), 0), "card");
  });

  test("tapes as they are cut and as they are laid", () => {
    const tapes = told.strips.filter(({ material }) => material === "tape"), ends = told.pieceSettings["stripEndsMm"]!;
    const listed = told.making.materials.filter(({ name }) => name.endsWith("tape"));
    same(listed.reduce((all, one) => all + one.gross, 0), tapes.reduce((all, s) => all + s.perPair * Math.ceil(s.lengthMm), 0), "tapes cut");
    same(listed.reduce((all, one) => all + one.net, 0), tapes.reduce((all, s) => all + s.perPair * (s.lengthMm - 2 * ends), 0), "tapes laid");
  });

  test("thread: both threads of every stitch on its faces and through its stack, ends and waste on top", () => {
    const perCm: Readonly<Record<string, number>> = { topline: 5.5, closing: 4.5, lapped: 4.5, lining: 4.5, trimming: 4 };
    const thread = told.stitching.reduce((all, { use, rows, lengthMm, plies }) => {
      const stitches = (2 * rows * lengthMm * perCm[use]!) / 10, stack = plies.reduce((mm, ply) => mm + ply.mm * ply.count, 0);
      return { mm: all.mm + stitches * 2 * (10 / perCm[use]! + stack), ends: all.ends + 2 * rows * 4 * 60 };
    }, { mm: 0, ends: 0 });
    expect(Math.abs(need("thread")!.net / thread.mm - 1)).toBeLessThan(1e-6);
    expect(Math.abs(need("thread")!.gross / (1.15 * (thread.mm + thread.ends)) - 1)).toBeLessThan(1e-6);
  });

  test("nails and tacks: three to an insole, ten drafts to a shoe, one every 10 mm round the insole", () => {
    const insole = of("insole board").find(({ side }) => side === "right")!;
    expect([need("insole tacks")!.net, need("lasting tacks")!.net]).toEqual([6, 20]);
    expect(need("lasting nails")!.net).toBe(2 * Math.ceil(roundOf(insole) / 10));
    expect(need("shanks")!.net).toBe(2);
  });

  test("edge dye: two coats of 0.2 mm round soles and lifts", () => {
    const thick = new Map([...told.made.heel.layers.map(({ name, backMm, breastMm }): [string, number] => [name, (backMm + breastMm) / 2]), ["outsole", told.pieceSettings["soleMm"]!]]);
    const edges = [...of("sole leather"), ...of("heel leather")].filter(({ name }) => thick.has(name));
    expect(Math.abs(need("edge finish")!.net / sum(edges, (p) => roundOf(p) * thick.get(p.name)! * 0.4) - 1)).toBeLessThan(5e-5);
  });

  test("bonds and glue: faces by their pieces, grams by area, coats and weight of a coat", () => {
    const margin = area("insole board") - area("filler");
    const linings = of("lining leather").filter(({ name }) => name !== "strap lining" && name !== "bow stay");
    // Leather stiffeners begin at 1.5 mm.
    const leather = told.shell.settings.counterMm >= 1.5;
    const faces: readonly [string, number][] = [
      ["lasting margin to the insole", margin], ["upper to the lining in the margin", margin],
      ["outsole", area("sole leather")], ["bottom filler", area("filler")], ["second board to the insole", area("second board")], ["shank between the boards", area("shank")], ["sock", area("sock leather")],
      ["stiffener to the upper", area("stiffener")], ["stiffener to the lining", area("stiffener")], ["toe puff to the upper", area("toe puff")], ["side lining to the upper", area("side lining")],
      // The forepart stays loose, a third of what meets.
      ["lining to the upper", (2 / 3) * (sum(linings, areaOf) - area("stiffener") - area("toe puff") - area("side lining") - margin)],
      // A cap is stuck 10 mm along its edge.
      ["toe cap on the vamp", 2 * 10 * told.stitching.reduce((all, row) => all + (row.name === "toe cap" ? row.lengthMm : 0), 0)], ["back strip on the quarters", sum(told.pieces.filter(({ name }) => name === "back strip"), areaOf)],
      ...of("heel leather").filter(({ side }) => side === "right").map(({ name }): [string, number] => [name, sum(of("heel leather").filter((p) => p.name === name), areaOf)]),
    ];
    for (const [name, face] of faces) same(bond(name), face, name);
    const coat: Readonly<Record<string, number>> = { "contact cement": 150, "water-based cement": 150, latex: 150, paste: 250 };
    for (const { name, glue, areaMm2, coats, g } of told.making.bonds) expect(Math.abs(g - areaMm2 * 1e-6 * (coats[0] + coats[1]) * coat[glue]!), name).toBeLessThan(1e-4);
    for (const glue of Object.keys(coat)) {
      const grams = told.making.bonds.filter((one) => one.glue === glue).reduce((all, { g }) => all + g, 0);
      expect(Math.abs((need(glue)?.net ?? 0) - grams), glue).toBeLessThan(2e-3);
    }
    expect(need("paste") !== undefined).toBe(leather);
  });
});

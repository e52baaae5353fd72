import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { readJobFile, writeJobFile } from "#job/job-file.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import { sheetsFor } from "#job/sheets-for.ts";
import { extras, liningCuts, upperCuts, type LiningCut, type PartChoices, type UpperCut } from "#pieces/choices.ts";
import type { Mark, Piece } from "#pieces/piece.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { onLast } from "../support/on-last.ts";

const none = new Map<string, Uint8Array>();
const fine = { triangles: 3000 };
const all = Object.fromEntries(extras.map((part) => [part, true])) as Pick<PartChoices, (typeof extras)[number]>;
const jobWith = (parts: Partial<PartChoices>, more: Partial<Job> = {}): Job => ({ ...defaultJob(), ...more, parts });
const run = (job: Job, pipeline = new Pipeline()): LastPair => onLast(pipeline.run(job, none, fine));
const outcome = ({ pieces, strips, findings, made, grounds }: LastPair) => ({ pieces, strips, findings, made, grounds });

const upperNames: Readonly<Record<UpperCut, readonly string[]>> = {
  "back-seam": ["upper", "upper, net"],
  "inner-seam": ["upper", "upper, net"],
  quarters: ["inner quarter", "inner quarter, net", "outer quarter", "outer quarter, net", "vamp", "vamp, net"],
};
const liningNames: Readonly<Record<LiningCut, readonly string[]>> = {
  three: ["heel pocket", "inner quarter lining", "outer quarter lining", "vamp lining"],
  one: ["lining"],
};
const extraNames = (cut: UpperCut) => ["bow", "bow knot", "bow stay", "elastic gore", "instep strap", "strap lining", "toe cap", "inner side lining", "outer side lining", ...(cut === "inner-seam" ? [] : ["back strip"])];
const always = ["stiffener", "toe puff", "insole", "second insole board", "shank", "shank bend", "bottom filler", "outsole", "split lift", "lift 1", "top piece", "sock"];

/** Places of a mark, one after the other. */
const places = (m: Mark): readonly number[] => (m.kind === "line" ? [...m.line.xy] : m.kind === "notch" ? [...m.at, ...m.toward] : m.kind === "arrow" ? [...m.from, ...m.to] : [...m.at]);
const flipped = (xy: ArrayLike<number>): number[] => Array.from(xy, (v, i) => (i % 2 === 0 ? v : -v) + 0);
const plain = (xy: ArrayLike<number>): number[] => Array.from(xy, (v) => v + 0);
/** A ring walked the other way round from the same end. */
const backwards = (xy: readonly number[]): number[] => Array.from(xy, (_, i) => xy[xy.length - 2 - 2 * Math.floor(i / 2) + (i % 2)]!);

function expectMirrored(right: Piece, left: Piece): void {
  expect([left.name, left.side, left.material, left.perPair, left.net]).toEqual([right.name, "left", right.material, right.perPair, right.net]);
  expect(plain(left.outline.xy), right.name).toEqual(backwards(flipped(right.outline.xy)));
  const drawn = (p: Piece) => p.marks.filter((m) => m.kind !== "text");
  expect(drawn(left).map((m) => [m.name, plain(places(m))]), right.name).toEqual(drawn(right).map((m) => [m.name, flipped(places(m))]));
}

describe.each(upperCuts.flatMap((cut) => liningCuts.map((lining) => [cut, lining] as const)))("the example cut with %s and lined in %s, with all that can be added", (cut, lining) => {
  const pair = run(jobWith({ cut, lining, ...all }));

  test("has every part once for either foot, and nothing else", () => {
    const names = [...upperNames[cut], ...liningNames[lining], ...extraNames(cut), ...always].sort();
    for (const side of ["left", "right"] as const) expect(pair.pieces.filter((p) => p.side === side).map((p) => p.name).sort()).toEqual(names);
    expect(pair.parts).toMatchObject({ cut, lining, ...all });
    expect(pair.made?.heel?.layers.map(({ name }) => name)).toEqual(["lift 1", "top piece"]);
    expect(pair.findings.filter((f) => severityOf(f) === "stop")).toEqual([]);
    // What has no place on this cut is told, and only that.
    expect(pair.findings.filter((f) => f.code === "extra-left-out").map((f) => f.data)).toEqual(cut === "inner-seam" ? [expect.objectContaining({ what: "back strip" })] : []);
  });

  test("is mirrored to the last bit, marks with it, and no outline crosses itself", () => {
    for (let k = 0; k < pair.pieces.length; k += 2) {
      expectMirrored(pair.pieces[k]!, pair.pieces[k + 1]!);
      expect(selfCrossing(pair.pieces[k]!.outline), pair.pieces[k]!.name).toBeUndefined();
    }
  });

  test("lies on sheets that have a place on the last", () => {
    const sheets = new Set(pair.grounds.map(({ name }) => name));
    for (const { name, ground } of pair.pieces) if (ground !== undefined) expect(sheets.has(ground), `${name} on ${ground}`).toBe(true);
  });
});

describe("a second run", () => {
  const parts: Partial<PartChoices> = { cut: "quarters", ...all };
  const kept = new Pipeline();
  run(jobWith(parts), kept);
  const edits: Readonly<Record<string, (job: Job) => Job>> = {
    "of a title": (job) => ({ ...job, title: "Another" }),
    "of the topline's fold": (job) => ({ ...job, pieces: { toplineFoldMm: 6 } }),
    "of a lasting margin": (job) => ({ ...job, pieces: { lastingToeMm: 16 } }),
    "of a seam": (job) => ({ ...job, parts: { ...parts, seam: "lapped" } }),
    "of a seam's place": (job) => ({ ...job, pieces: { sideSeamBehindThroatMm: 30 } }),
    "of the cut": (job) => ({ ...job, parts: { ...parts, cut: "back-seam" } }),
    "of the back's top": (job) => ({ ...job, parts: { ...parts, backTop: "notch" } }),
    "of the lining": (job) => ({ ...job, parts: { ...parts, lining: "one" } }),
    "of the lining's trim": (job) => ({ ...job, pieces: { liningTrimMm: 4 } }),
    "of the heel pocket": (job) => ({ ...job, pieces: { liningPocketTopMm: 60 } }),
    "of the stiffener": (job) => ({ ...job, shell: { counterBelowMm: 8 } }),
    "of the toe puff": (job) => ({ ...job, shell: { puffReachMm: 45 } }),
    "of the shank": (job) => ({ ...job, pieces: { shankWideMm: 14 } }),
    "of the sock": (job) => ({ ...job, parts: { ...parts, sock: "heel" } }),
    "of the bow": (job) => ({ ...job, pieces: { bowLongMm: 50 } }),
    "of the edge": (job) => ({ ...job, shell: { edge: "bound" } }),
    "of the spring": (job) => ({ ...job, shell: { springMm: 3 } }),
    "of the throat": (job) => ({ ...job, lines: { throatDepthMm: 74 } }),
  };

  // One edit after the other, each from the job as it was: what is taken over is what the one before it left.
  test.each(Object.entries(edits))("after a change %s gives what a fresh one gives, and something new", (_, edit) => {
    const before = outcome(run(jobWith(parts), kept));
    const job = edit(jobWith(parts));
    const after = outcome(run(job, kept));
    expect(after).toEqual(outcome(run(job)));
    expect([after.pieces, after.strips]).not.toEqual([before.pieces, before.strips]);
  });
});

test("the report tells parts, lengths off a roll and the bottom as they were made, and no ground", async () => {
  const pair = run(jobWith({ cut: "quarters", seam: "lapped", lining: "three", ...all }, { shell: { edge: "bound" } }));
  const files = await sheetsFor(pair);
  const report = JSON.parse(new TextDecoder().decode(files.find((f) => f.name === "report.json")!.bytes));
  expect(report.parts).toEqual(pair.parts);
  expect(report.strips.map((s: { name: string }) => s.name)).toEqual(pair.strips.map((s) => s.name));
  expect(report.strips.map((s: { name: string }) => s.name)).toContain("topline binding");
  for (const [k, { lengthMm }] of pair.strips.entries()) expect(report.strips[k].lengthMm).toBeCloseTo(lengthMm, 3);
  expect(report).not.toHaveProperty("grounds");
  const { boards, shank, filler, heel } = pair.made!;
  expect(report.made.boards).toEqual(boards);
  expect(report.made.shank.bend).toHaveLength(shank.bend.length);
  expect(report.made.filler.areaMm2).toBeCloseTo(filler!.areaMm2, 3);
  expect(Object.keys(report.made.filler.depth)).toEqual(["volumeMm3", "mostMm", "mostFromSeatMm"]);
  // Sole to ground: the layers add up to the heel, at the back and at the breast.
  const sum = (of: "backMm" | "breastMm"): number => report.made.heel.layers.reduce((all: number, layer: Record<string, number>) => all + layer[of]!, 0);
  expect(sum("backMm")).toBeCloseTo(heel!.backMm, 3);
  expect(sum("breastMm")).toBeCloseTo(heel!.breastMm, 3);
  for (const [, text] of JSON.stringify(report.made).matchAll(/\.(\d+)/g)) expect(text!.length).toBeLessThanOrEqual(4);
});

test("a job with all choices of parts and sheets comes back from its file as it was", () => {
  const job: Job = {
    ...jobWith({ cut: "quarters", seam: "butted", backSeam: "butted", backTop: "notch", lining: "one", sock: "half", ...all, bow: false }),
    sheets: { paper: "roll", rollWidthMm: 914, sets: "cutting", onePage: true, barAcrossMm: 99.5, barUpMm: 100.25, layers: ["cut", "fold"] },
  };
  const back = readJobFile("pair.lastwise", writeJobFile(job, none)).job;
  expect(back).toEqual(job);
  expect(outcome(run(back))).toEqual(outcome(run(job)));
});

// `make` tries the pattern out on its last: what the report and the sentences then say, and what is left out where nobody asked for it.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { writeJobFile } from "#job/job-file.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import { sayFindings } from "../../src/cli/say.ts";
import { finding } from "#base/findings.ts";
import { bothHalves } from "../support/tape-photos.ts";
import { lastwise, scratchFolder, type Ended } from "./command.ts";

const folder = scratchFolder();
const reportIn = (out: string) => JSON.parse(readFileSync(join(folder, out, "report.json"), "utf8"));
const severities = (report: { readonly findings: readonly { readonly severity: string }[] }) => report.findings.map(({ severity }) => severity);

/** Length of a row of vertices, by Pythagoras alone. */
function rowLength(list: Float64Array, width: number, row: Uint32Array): number {
  let sum = 0;
  for (let k = 1; k < row.length; k++) sum += Math.hypot(...Array.from({ length: width }, (_, d) => list[width * row[k]! + d]! - list[width * row[k - 1]! + d]!));
  return sum;
}

describe("the example, tried out", () => {
  let ended: Ended;
  let report: ReturnType<typeof reportIn>;
  beforeAll(() => {
    ended = lastwise("make", "--example", "--out", join(folder, "tried"));
    report = reportIn("tried");
  });

  test("checks of the report are those of the shell itself", () => {
    const { flat, freeUv } = new Pipeline().run(defaultJob(), new Map()) as LastPair;
    const { edges, mesh } = flat.shell;
    const row = (name: string, half?: string) => report.tried.check.rows.find((r: { name: string; half?: string }) => r.name === name && r.half === half);
    expect(row("back", "medial").onLast).toBeCloseTo(rowLength(mesh.positions, 3, edges.backMedial), 3);
    expect(row("back", "medial").onCard).toBeCloseTo(rowLength(flat.uv, 2, edges.backMedial), 3);
    expect(row("throat-depth").onLast).toBeCloseTo(rowLength(mesh.positions, 3, edges.centre), 3);
    expect(row("topline-free", "lateral").onCard).toBeCloseTo(rowLength(freeUv, 2, edges.toplineLateral), 3);
    expect(row("topline-drawn", "lateral").onLast).toBeCloseTo(report.shell.topline.lateral.onLastMm, 3);
    expect(report.tried.nicked.feather.medial.overMm).toBeCloseTo(rowLength(mesh.positions, 3, edges.featherMedial), 1);
    for (const { onLast, onCard, least, most, holds } of report.tried.check.rows) expect(holds).toBe(onCard - onLast >= least && onCard - onLast <= most);
  });

  test("nicks lie on the feather edge in millimetres from seat and toe, and what they take away adds up", () => {
    const { nicks, nicked } = report.tried;
    expect(nicks.length).toBeGreaterThan(4);
    for (const { half, fromSeatMm, fromToeMm, lengthMm } of nicks) {
      expect(fromSeatMm + fromToeMm).toBeCloseTo(nicked.feather[half].overMm, 0);
      // 15 to 30 mm: a handbook of hand pattern-making, in part common practice without source.
      expect(lengthMm).toBeGreaterThanOrEqual(15);
      expect(lengthMm).toBeLessThanOrEqual(30);
    }
    const sum = nicks.reduce((total: number, { takesAway }: { takesAway: number }) => total + takesAway, 0);
    expect(Math.abs(sum - nicked.takesAway)).toBeLessThan(0.1);
    expect(nicked.strainWith.gather).toBeLessThan(nicked.strainWithout.gather);
  });

  test("seams stand best first, the back seam alone is what they are measured by, and the halves' worst place is one of their stations", () => {
    const { seams, halves } = report.tried;
    expect(seams.map(({ gain }: { gain: number }) => gain)).toEqual(seams.map(({ gain }: { gain: number }) => gain).toSorted((a: number, b: number) => b - a));
    expect(seams.find(({ seam }: { seam: string }) => seam === "back").gain).toBe(0);
    expect(halves.topline).toContainEqual(halves.mostDifferent);
    expect(Math.abs(halves.mostDifferent.differenceMm)).toBe(Math.max(...halves.topline.map(({ differenceMm }: { differenceMm: number }) => Math.abs(differenceMm))));
  });

  test("its findings are told like all others and count for how the command ends", () => {
    const codes = report.findings.map(({ code }: { code: string }) => code);
    expect(codes).toEqual(expect.arrayContaining(["card-spans-instep", "nicks-cut", "seam-worth"]));
    expect(ended.code).toBe(severities(report).includes("look") ? 1 : 0);
    expect(report.timesMs.tried).toBeGreaterThan(0);
    const holding = report.tried.check.rows.filter(({ holds }: { holds: boolean }) => holds).length;
    expect(ended.out).toContain(holding === 14 ? "true in all 14 checks" : `true in ${holding} of 14 checks`);
    for (const { text } of report.findings) expect(ended.out).toContain(text);
  });

  test("a gaping topline alone ends the command with 1, and left untried it is not known", () => {
    writeFileSync(join(folder, "long.lastwise"), writeJobFile({ ...defaultJob(), shell: { toplineShorter: 0 } }, new Map()));
    const long = lastwise("make", join(folder, "long.lastwise"), "--out", join(folder, "long"));
    const gape = reportIn("long").tried.check.gapes.find(({ why }: { why: string }) => why === "topline-slack");
    expect(gape).toMatchObject({ change: { setting: "toplineShorter" } });
    expect(gape.at).toHaveLength(3);
    expect(long.code).toBe(1);
    expect(long.out).toContain("lies slack");
    expect(lastwise("make", join(folder, "long.lastwise"), "--untried", "--out", join(folder, "long")).out).not.toContain("lies slack");
  });

  test("--untried leaves all of it out, and the other sheets are the same to the byte", () => {
    const { code, out } = lastwise("make", "--example", "--untried", "--out", join(folder, "untried"));
    const untried = reportIn("untried");
    expect(untried).not.toHaveProperty("tried");
    expect(untried.timesMs).not.toHaveProperty("tried");
    expect(out).not.toMatch(/Laid back on the last|Nick the card|Ways of seams/);
    expect(code).toBe(severities(untried).includes("look") ? 1 : 0);
    for (const name of ["pattern.pdf", "pattern.svg", "pattern.dxf", "marks.pdf", "making.pdf"]) expect(readFileSync(join(folder, "untried", name)).equals(readFileSync(join(folder, "tried", name))), name).toBe(true);
    expect({ ...untried, timesMs: {}, findings: [] }).toEqual(JSON.parse(JSON.stringify({ ...report, tried: undefined, timesMs: {}, findings: [] })));
    expect(report.findings.slice(0, untried.findings.length)).toEqual(untried.findings);
  });
});

test("a taped pattern has no last to be tried on, and nothing is said of it", () => {
  writeFileSync(join(folder, "tape.png"), bothHalves());
  const { code, out, err } = lastwise("make", join(folder, "tape.png"), "--tape", "right", "--bar", "200", "--out", join(folder, "tape"));
  expect(err).toBe("");
  expect(code).toBeLessThan(2);
  expect(out).not.toMatch(/Laid back on the last|Nick the card|Ways of seams|could not be tried/);
  expect(reportIn("tape")).not.toHaveProperty("tried");
}, 120_000);

test("what other seams would do stands last, by itself", () => {
  const seam = finding("seam-worth", { seam: "back", percent: 0, seamMm: 55, givePercent: 6, gatherPercent: 25 });
  const said = sayFindings([seam, finding("nicks-none", {})]);
  expect(said.indexOf("Ways of seams")).toBeGreaterThan(said.indexOf("no nicks"));
  expect(said.match(/Back seam alone/g)).toHaveLength(1);
});

// What a maker gets when all is well: every file, the right exit code, and the same bytes again.
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import { writeJobFile } from "#job/job-file.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { binaryStl } from "../support/solids.ts";
import { contents, lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const sheets = ["making.pdf", "marks.pdf", "pattern.dxf", "pattern.pdf", "pattern.svg", "report.json"];
const read = (...path: readonly string[]) => readFileSync(join(folder, ...path));
const report = (...path: readonly string[]) => JSON.parse(read(...path, "report.json").toString("utf8"));
const last = lastFromMeasures(demoMeasurements, "example", unwatched);
const expectedCode = (findings: readonly { severity: string }[]) => (findings.some((f) => f.severity === "look") ? 1 : 0);

describe("make", () => {
  test("the example pair: all sheets, exit code by its findings, the same bytes twice", () => {
    const first = lastwise("make", "--example", "--out", join(folder, "first"));
    expect(first.err).toBe("");
    expect(contents(join(folder, "first"))).toEqual(sheets);
    expect(first.code).toBe(expectedCode(report("first").findings as readonly { severity: string }[]));
    expect(first.out).toContain("pattern.pdf");

    lastwise("make", "--example", "--out", join(folder, "deep", "er", "second"));
    for (const name of sheets.filter((sheet) => sheet !== "report.json")) expect(read("first", name).equals(read("deep", "er", "second", name)), name).toBe(true);
    const untimed = (...path: readonly string[]) => ({ ...report(...path), timesMs: {} });
    expect(untimed("first")).toEqual(untimed("deep", "er", "second"));
    expect(contents(folder).filter((name) => name.startsWith("."))).toEqual([]);
  });

  test("what is said on the command line is what comes out, decimal comma included", () => {
    const wishes = ["--throat", "68,5", "--back", "55 mm", "--spring", "3", "--title", "Try & error", "--size", "38½", "--paper", "letter", "--side", "left"];
    const { out } = lastwise("make", "--example", "--out", join(folder, "wished"), ...wishes, "--json");
    const told = JSON.parse(out);
    expect(told).toEqual(report("wished"));
    expect(told).toMatchObject({ title: "Try & error", size: "38½", last: { side: "left" }, shell: { springMm: 3 }, lasting: { throatDepthMm: { target: 68.5 }, backHeightMm: { target: 55 } } });
  });

  test("former results are replaced, strangers in the folder stay", () => {
    writeFileSync(join(folder, "first", "note.txt"), "mine");
    writeFileSync(join(folder, "first", "pattern.pdf"), "old");
    lastwise("make", "--example", "--out", join(folder, "first"));
    expect(contents(join(folder, "first"))).toEqual(["making.pdf", "marks.pdf", "note.txt", ...sheets.slice(2)]);
    expect(read("first", "pattern.pdf").subarray(0, 5).toString()).toBe("%PDF-");
  });

  test("a saved job gives the same pattern as the job itself", () => {
    writeFileSync(join(folder, "kept.lastwise"), writeJobFile(defaultJob(), new Map()));
    lastwise("make", join(folder, "kept.lastwise"), "--out", join(folder, "from-job"));
    expect(read("from-job", "pattern.svg").equals(read("first", "pattern.svg"))).toBe(true);
  });

  test("a job kept as plain text finds its scan beside it, and says when it is missing", () => {
    writeFileSync(join(folder, "mine.stl"), binaryStl(last.mesh));
    const job = { ...defaultJob(), last: { from: "scan", file: "mine.stl" } };
    writeFileSync(join(folder, "plain.json"), JSON.stringify(job));
    expect(lastwise("make", join(folder, "plain.json"), "--out", join(folder, "plain")).code).toBeLessThan(2);
    writeFileSync(join(folder, "lost.json"), JSON.stringify({ ...job, last: { from: "scan", file: "gone.stl" } }));
    const lost = lastwise("make", join(folder, "lost.json"), "--out", join(folder, "lost"));
    expect(lost.code).toBe(2);
    expect(lost.err).toContain("gone.stl");
  });

  const examples = readdirSync("examples").filter((name) => /\.(json|lastwise)$/.test(name));
  test.each(examples)("examples/%s", (name) => {
    const { code, err } = lastwise("make", join("examples", name), "--out", join(folder, name));
    expect(err).toBe("");
    expect(code).toBeLessThan(2);
    expect(contents(join(folder, name))).toEqual(sheets);
  });
});

describe("measure", () => {
  test("a scan in inches comes back with the measures it was made from", () => {
    writeFileSync(join(folder, "inches.stl"), binaryStl(last.mesh, { scale: 1 / 25.4 }));
    const { code, out } = lastwise("measure", join(folder, "inches.stl"), "--json");
    const told = JSON.parse(out);
    expect(code).toBe(expectedCode(told.findings));
    expect(told).toMatchObject({ unit: "in", side: last.side });
    // Limits of the project: lengths 0.7 mm, girths 1.5 mm. The toe point comes back in the file's own unit.
    for (const key of ["stickLength", "lastLength", "ballWidth", "seatWidth"] as const) expect(Math.abs(told[key] - last.measures[key]), key).toBeLessThan(0.7);
    for (const key of ["jointGirth", "waistGirth", "instepGirth", "heelGirth"] as const) expect(Math.abs(told[key] - last.measures[key]), key).toBeLessThan(1.5);
    const off = told.toePoint.map((value: number, k: number) => value * 25.4 - last.landmarks.toePoint[k]!);
    expect(Math.hypot(...off)).toBeLessThan(2);
  });

  test("sentences name every measure and are free of doubt only when the exit code says so", () => {
    const { code, out } = lastwise("measure", join(folder, "inches.stl"));
    for (const words of ["stick length", "joint girth", "toe spring", "a right last", "inches"]) expect(out).toContain(words);
    expect(out.includes("To look at before cutting")).toBe(code === 1);
    expect(last.findings.every((f) => severityOf(f) !== "stop")).toBe(true);
  });
});

test("--help and --version answer and end well", () => {
  const help = lastwise("--help");
  expect(help.code).toBe(0);
  for (const word of ["measure", "make", "0 when done"]) expect(help.out).toContain(word);
  expect(lastwise("make", "--help").out).toContain("--throat");
  expect(lastwise("--version").out).toBe("0.1.0\n");
});

// What is said of parts and sheets reaches the job as it was said; what is no such word is refused before anything is worked out.
import { Command } from "commander";
import { join } from "node:path";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import { readJobFile, writeJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { addPartOptions, refuseParted, withPartOptions } from "../../src/cli/part-options.ts";
import { contents, lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();

/** The job after the words, read as the command line reads them. */
function said(words: readonly string[], job: Job = defaultJob()): Job {
  const command = addPartOptions(new Command("make").exitOverride().configureOutput({ writeErr: () => {} }));
  command.parse(words, { from: "user" });
  return withPartOptions(job, command.opts());
}

test("a word parted from its list is not taken for a file", () => {
  expect(() => refuseParted(["last.stl", "gore"])).toThrow("gore stands apart, as if it were a file. Write lists without a space, for example --with strap,gore.");
  expect(() => refuseParted(["fold,"])).toThrow(/^fold stands apart/);
  expect(() => refuseParted(["last.stl", "gore.stl"])).not.toThrow();
});

describe("words that are understood", () => {
  test.each<[string, Partial<Pick<Job, "parts" | "shell" | "sheets">>]>([
    ["--cut quarters", { parts: { cut: "quarters" } }],
    ["--cut Inner-Seam", { parts: { cut: "inner-seam" } }],
    ["--seam lapped --back-seam butted --back-top dog-tail", { parts: { seam: "lapped", backSeam: "butted", backTop: "dog-tail" } }],
    ["--lining one --sock heel", { parts: { lining: "one", sock: "heel" } }],
    ["--with back-strip,toe-cap,side-lining", { parts: { backStrip: true, toeCap: true, sideLining: true } }],
    ["--with Strap,,gore,", { parts: { strap: true, gore: true } }],
    ["--with backStrip --without bow", { parts: { backStrip: true, bow: false } }],
    ["--edge bound --leather firm --halves mean", { shell: { edge: "bound", leather: "firm", halves: "mean" } }],
    ["--paper a3", { sheets: { paper: "A3" } }],
    ["--paper roll", { sheets: { paper: "roll" } }],
    ["--roll 914,5", { sheets: { paper: "roll", rollWidthMm: 914.5 } }],
    ["--paper A2 --roll 610", { sheets: { paper: "A2", rollWidthMm: 610 } }],
    ["--sets net --own-pages", { sheets: { sets: "net", onePage: true } }],
    ["--bar-across 99,5 --bar-up 100.25mm", { sheets: { barAcrossMm: 99.5, barUpMm: 100.25 } }],
    // On wide paper the bars are 200 mm long.
    ["--paper A3 --bar-across 199 --bar-up 200,5", { sheets: { paper: "A3", barAcrossMm: 99.5, barUpMm: 100.25 } }],
    ["--layers cut,fold", { sheets: { layers: ["cut", "fold"] } }],
    ["", {}],
  ])("%s", (words, fields) => {
    expect(said(words.split(" ").filter(Boolean))).toEqual({ ...defaultJob(), ...fields });
  });

  test("with blanks between the words of a list", () => {
    expect(said(["--with", "toe-cap, bow"]).parts).toEqual({ toeCap: true, bow: true });
    expect(said(["--layers", " cut , text "]).sheets).toEqual({ layers: ["cut", "text"] });
  });

  test("stand over the job's own, which keeps all else", () => {
    const own: Job = { ...defaultJob(), parts: { cut: "inner-seam", bow: true, toeCap: true }, shell: { springMm: 3, edge: "raw" }, sheets: { paper: "A4", sets: "cutting", rollWidthMm: 914 } };
    const now = said(["--cut", "quarters", "--without", "bow", "--edge", "wrapped", "--roll", "610"], own);
    expect(now.parts).toEqual({ cut: "quarters", bow: false, toeCap: true });
    expect(now.shell).toEqual({ springMm: 3, edge: "wrapped" });
    expect(now.sheets).toEqual({ paper: "roll", sets: "cutting", rollWidthMm: 610 });
    expect(said([], own)).toEqual(own);
  });

  test("make a job that can be saved and read again", () => {
    const job = said(["--cut", "quarters", "--with", "strap,bow", "--edge", "bagged", "--roll", "610", "--sets", "net", "--bar-up", "99", "--layers", "cut,text"]);
    expect(readJobFile("pair.lastwise", writeJobFile(job, new Map())).job).toEqual(job);
  });
});

describe("words that are refused, with what would do", () => {
  test.each<[string, string, RegExp]>([
    ["--cut", "halves", /--cut can be back-seam or inner-seam or quarters, not "halves"/],
    ["--seam", "glued", /--seam can be closed or lapped or butted/],
    ["--back-seam", "lapped", /--back-seam can be closed or butted, not "lapped"/],
    ["--back-top", "flat", /--back-top can be mitre or notch or dog-tail/],
    ["--lining", "two", /--lining can be three or one/],
    ["--sock", "quarter", /--sock can be full or half or heel/],
    ["--edge", "sewn", /--edge can be taped or folded or raw or bound or wrapped or bagged/],
    ["--leather", "wood", /--leather can be kid or firm or soft/],
    ["--halves", "both", /--halves can be separate or mean/],
    ["--with", "bow,wings", /--with can be back-strip, toe-cap, strap, gore, bow, side-lining, not "wings"/],
    ["--with", ",", /--with can be .* not ","/],
    ["--with", "", /--with can be/],
    ["--without", "heel", /--without can be .* not "heel"/],
    ["--paper", "A5", /--paper can be A4 or Letter or A3 or A2 or roll, not "A5"/],
    ["--roll", "150", /--roll wants millimetres from 200 to 3000, not "150"/],
    ["--roll", "wide", /--roll wants millimetres/],
    ["--sets", "all", /--sets can be both or net or cutting/],
    ["--bar-across", "94,9", /--bar-across wants millimetres from 95 to 105, not "94,9"/],
    ["--bar-up", "10 cm", /--bar-up wants millimetres from 95 to 105, not "10 cm"/],
    ["--bar-up", "189 mm", /--bar-up wants millimetres from 190 to 210, not "189 mm"/],
    ["--layers", "cut,glue", /--layers can be cut, mark, fold, text, not "glue"/],
  ])("%s %j", (option, word, saying) => {
    expect(() => said([option, word])).toThrow(Refusal);
    expect(() => said([option, word])).toThrow(saying);
  });
});

test("the command makes what was said, and the report tells it", () => {
  const words = ["--cut", "quarters", "--seam", "lapped", "--edge", "bound", "--with", "toe-cap,bow", "--sock", "half", "--roll", "610", "--sets", "cutting", "--bar-across", "99,5"];
  const { out, err } = lastwise("make", "--example", "--untried", "--out", join(folder, "pair"), ...words, "--json");
  expect(err).toBe("");
  const told = JSON.parse(out);
  expect(told).toEqual(JSON.parse(readFileSync(join(folder, "pair", "report.json"), "utf8")));
  expect(told.parts).toMatchObject({ cut: "quarters", seam: "lapped", sock: "half", toeCap: true, bow: true, strap: false });
  expect(told.shell.settings.edge).toBe("bound");
  expect(told.printed).toMatchObject({ paper: "roll", rollWidthMm: 610, sets: "cutting", barAcrossMm: 99.5, barUpMm: 100 });
  const names = told.pieces.map((p: { name: string }) => p.name);
  for (const name of ["vamp", "inner quarter", "outer quarter", "toe cap", "bow", "sock"]) expect(names).toContain(name);
  expect(names.filter((name: string) => name.endsWith(", net"))).toEqual([]);
  expect(told.strips.map((s: { name: string }) => s.name)).toContain("topline binding");
});

test("the command refuses a wrong word in one sentence and writes nothing", () => {
  const { code, out, err } = lastwise("make", "--example", "--out", join(folder, "none"), "--with", "toe-cap,wings");
  expect([code, out]).toEqual([2, ""]);
  expect(err.trim()).toMatch(/^[^\n]*not "wings"\.$/);
  expect(contents(folder)).not.toContain("none");
});

test("help names every option", () => {
  const { out } = lastwise("make", "--help");
  for (const { long } of addPartOptions(new Command()).options) expect(out).toContain(long!);
});

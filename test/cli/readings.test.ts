// What the maker's own callipers read, told on the command line: the scan takes that scale, two readings check each other.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { binaryStl } from "../support/solids.ts";
import { lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const at = (name: string): string => join(folder, name);
const { mesh, measures } = lastFromMeasures(demoMeasurements, "example", unwatched);
const plain = (text: string): string => text.replaceAll(/\s+/g, " ");

beforeAll(() => writeFileSync(at("last.stl"), binaryStl(mesh, { scale: 0.98 })));

interface Report {
  readonly stickLength: number;
  readonly jointGirth: number;
  readonly findings: readonly { readonly code: string; readonly text: string }[];
}
const report = (...words: readonly string[]): Report => JSON.parse(lastwise(...words, "--json").out) as Report;

describe("--stick-length and --ball-width", () => {
  test("scale a scan that is 2 % too small; all other lengths follow", () => {
    const { stickLength, jointGirth, findings } = report("measure", at("last.stl"), "--stick-length", String(measures.stickLength), "--ball-width", String(measures.ballWidth));
    expect(findings.map(({ code }) => code)).toContain("scale-set");
    expect(stickLength).toBeCloseTo(measures.stickLength, 1);
    // What was measured on the last before it was made smaller; a scan's own noise is not in it.
    expect(Math.abs(jointGirth - measures.jointGirth)).toBeLessThan(0.4);
    expect(Math.abs(report("measure", at("last.stl")).jointGirth - 0.98 * measures.jointGirth)).toBeLessThan(0.4);
  });

  test("a slip of the reading is refused, by its name", () => {
    const { code, err } = lastwise("measure", at("last.stl"), "--stick-length", "190");
    expect(code).toBe(2);
    expect(plain(err)).toMatch(/stick length of 190 mm is .* less than the scan's/);
  });

  test("are for scans alone, and for lasts", () => {
    const { code, err } = lastwise("make", "--example", "--out", at("out"), "--ball-width", "85");
    expect(code).toBe(2);
    expect(err.trim()).toBe("--ball-width is what your own callipers read on a last that was scanned, and the example is no scan of one. Leave --ball-width out.");
    expect(lastwise("measure", at("last.stl"), "--stick-length", "2.5").err.trim()).toBe('--stick-length wants millimetres from 150 to 350, not "2.5".');
  });
});

describe("with --json one object comes out, whatever went wrong", () => {
  test.each([
    ["an unknown option", ["measure", at("last.stl"), "--colour", "red", "--json"], "asked-wrongly"],
    ["a missing option", ["make", at("last.stl"), "--json"], "asked-wrongly"],
    ["a wrong value", ["measure", at("last.stl"), "--side", "up", "--json"], "option-not-choice"],
    ["a missing file", ["measure", at("gone.stl"), "--json"], "file-missing"],
  ])("%s", (_, words, kind) => {
    const { code, out } = lastwise(...words);
    expect(code).toBe(2);
    const said = JSON.parse(out) as Report;
    expect(said.findings.map((f) => f.code)).toEqual([kind]);
    expect(said.findings[0]!.text).toMatch(/^[A-Z-].+/);
    expect(said.findings[0]!.text).not.toMatch(/^error/i);
  });

  test("who asks for help gets words, and no refusal", () => {
    const { code, out } = lastwise("measure", "--help");
    expect(code).toBe(0);
    expect(out).toContain("--stick-length <mm>");
    expect(out).toContain("lastwise measure my-last.stl --stick-length");
  });
});

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { contents, lastwise, longWork, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const report = (name: string) => JSON.parse(readFileSync(join(folder, name, "report.json"), "utf8"));
const areaOf = (name: string, piece: string): number => report(name).pieces.find((p: { name: string }) => p.name === piece).areaMm2;

describe("make with a leather", () => {
  test("cuts a softer leather smaller, and the bottom as ever", () => {
    lastwise("make", "--example", "--out", join(folder, "plain"), "--untried");
    for (const leather of ["calf", "nappa"]) lastwise("make", "--example", "--out", join(folder, leather), "--untried", "--correct", "--upper-leather", leather);
    expect(areaOf("nappa", "upper")).toBeLessThan(areaOf("calf", "upper"));
    expect(areaOf("calf", "upper")).toBeLessThan(areaOf("plain", "upper"));
    expect(areaOf("nappa", "insole")).toBe(areaOf("plain", "insole"));
  });

  test("cut to its marks ends there when it is pulled over, and the sheets say so", () => {
    const { out } = longWork("make", "--example", "--out", join(folder, "to-marks"), "--untried", "--upper-strips", "examples/strips-goat.csv", "--to-marks", "--foretell");
    expect(out).toMatch(/ends within 0\.3 mm of what is asked/);
    expect(out).toMatch(/Pulled over the last, it ends so: throat/);
    const { throatDepthMm, backHeightMm, margins } = report("to-marks").lasting;
    for (const end of [throatDepthMm, backHeightMm]) {
      // What is cut farther out is rounded to a tenth, as a maker would say it.
      expect(Math.abs(end.predicted - end.target)).toBeLessThan(0.45);
      expect(end.low).toBeLessThan(end.predicted + 1e-9);
      expect(end.high).toBeGreaterThan(end.predicted - 1e-9);
    }
    expect(margins).toHaveLength(10);
    for (const { upperMm } of margins) expect(Math.abs(upperMm.predicted - upperMm.target)).toBeLessThan(8);
    expect(contents(join(folder, "to-marks"))).toContain("marks.pdf");
  }, 300_000);

  test("says what cannot be read of strips, by row, and writes nothing", () => {
    writeFileSync(join(folder, "empty.csv"), "way,width mm,between marks mm,load,unit,length mm\n");
    const { code, out, err } = lastwise("make", "--example", "--out", join(folder, "none"), "--upper-strips", join(folder, "empty.csv"), "--untried");
    expect(code).toBe(2);
    expect(out + err).toMatch(/reading/i);
    expect(contents(folder)).not.toContain("none");
    expect(lastwise("make", "--example", "--out", join(folder, "none"), "--upper-leather", "shark").code).toBe(2);
  });
});

// The pages on the strip test say what the program does.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { fitStrips } from "#leather/fit-strips.ts";
import { knownFigures } from "#leather/known-leathers.ts";
import { elongation } from "#leather/limits.ts";
import { readStripCsv } from "#leather/strip-csv.ts";
import { narrowing } from "#leather/strip-model.ts";

const guide = readFileSync("docs/guide/leather.md", "utf8");
const method = readFileSync("docs/method/strip-test.md", "utf8");

test("the table that the guide shows is read as it stands", () => {
  const { strips, findings } = readStripCsv(/```\n(way,[\s\S]*?)```/.exec(guide)![1]!);
  expect(findings).toEqual([]);
  expect(strips.map(({ way, readings }) => `${way} ${readings.length}`)).toEqual(["along 3", "across 1"]);
});

test("the guide's table of known kinds is the program's", () => {
  const rows = guide.split("\n").filter((line) => /^\| (goat|calf|sheep|cow|pig)/.test(line));
  const range = ([low, high]: readonly [number, number]): string => `${Math.round(100 * low)}–${Math.round(100 * high)} %`;
  const told = Object.values(knownFigures).map(({ tight, loose, breaks, thicknessMm }) => [range(tight), range(loose), range(breaks), thicknessMm]);
  expect(rows.map((row) => row.split("|").slice(2, 6).map((cell) => cell.trim())).map(([t, l, b, mm]) => [t, l, b, Number.parseFloat(mm!)])).toEqual(told);
});

test("the method page's fixed numbers are the program's", () => {
  expect(method).toContain(`ν̄ = ${narrowing}`);
  // ISO 3376's worked elongation: 50 mm between the jaws, 72 at the end: 44 %.
  expect(100 * elongation(50, 72)).toBeCloseTo(44, 9);
});

test("the example is a leather like goat with a narrow band, told without a finding", () => {
  const { told, findings, likeness, leather } = fitStrips({ known: "goat", thicknessMm: 0.9, strips: readStripCsv(readFileSync("examples/strips-goat.csv", "utf8")).strips });
  expect(findings).toEqual([]);
  expect(likeness.nearest).toBe("goat");
  expect(told.along.high / told.along.low).toBeLessThan(1.3);
  expect(leather.source).toBe("Your own strips: 30 readings on 3 strips.");
});

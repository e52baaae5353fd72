import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { defaultJob } from "#job/default-job.ts";
import { jobSchema } from "#job/schema.ts";
import { withLeatherOptions } from "../../src/cli/leather-options.ts";
import { lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const example = "examples/strips-goat.csv";
const header = "way,width mm,between marks mm,load,unit,length mm,after a minute mm";
const written = (name: string, text: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

interface Report {
  readonly leather: { readonly name: string; readonly known: string; readonly thicknessMm: number; readonly set?: number };
  readonly stretchAt10NOn20Mm: Record<"along" | "across" | "bias", { readonly stretch: number; readonly low: number; readonly high: number }>;
  readonly readings: readonly object[];
  readonly said: { readonly strips: readonly object[] };
  readonly findings: readonly { readonly code: string; readonly severity: string; readonly text: string }[];
}

describe("lastwise strip", () => {
  test("tells the example in sentences and ends with 0", () => {
    const { code, out, err } = lastwise("strip", example, "--like", "goat", "--thickness", "0,9", "--name", "Sample skin");
    expect(err).toBe("");
    expect(code).toBe(0);
    expect(out).toContain("Sample skin, 0.9 mm thick: 30 readings");
    expect(out).toMatch(/along +2\.7 % +2\.\d % to 3\.\d %/);
    expect(out).toContain("It gives most like goat or kid");
    expect(out).toMatch(/ (19|20|21|22) % of the stretch is still there/); // a fifth was put into the invented readings
    expect(out).toContain("Nothing here replaces your judgement");
  });

  test("--json: one object, with what a saved job holds of it", () => {
    const { code, out } = lastwise("strip", example, "--json");
    const report = JSON.parse(out) as Report;
    expect(code).toBe(0);
    expect(report.leather).toMatchObject({ name: "goat", known: "goat", thicknessMm: 0.85 });
    expect(report.leather.set).toBeCloseTo(0.2, 1);
    expect(report.readings).toHaveLength(30);
    expect(report.said.strips).toHaveLength(3);
    expect(jobSchema.shape.leather.safeParse({ upper: report.said, lining: report.said }).error).toBeUndefined();
    const { along, across, bias } = report.stretchAt10NOn20Mm;
    for (const { stretch, low, high } of [along, across, bias]) expect(low < stretch && stretch < high).toBe(true);
    expect(along.stretch < bias.stretch && bias.stretch < across.stretch).toBe(true);
    expect(report.findings).toEqual([]);
  });

  test("the same readings with decimal commas and in UTF-16 tell the same", () => {
    const semicolons = readFileSync(example, "utf8").replaceAll(",", ";").replaceAll(/(\d)\.(\d)/g, "$1,$2");
    const wide = written("wide.csv", new Uint8Array(Buffer.from(`\uFEFF${semicolons}`, "utf16le")));
    expect(JSON.parse(lastwise("strip", wide, "--json").out)).toEqual(JSON.parse(lastwise("strip", example, "--json").out));
  });

  test("bad rows are named, the rest is used, and it ends with 1", () => {
    const path = written("bad.csv", `${header}\nalong,20,150,5,N,152,\n,,,10,stone,154,\n,,,20,N,15.7,\n,,,30,N,159,\n`);
    const { code, out } = lastwise("strip", path);
    expect(code).toBe(1);
    expect(out).toContain('Row 3, column "unit": "stone" is no unit of load here');
    expect(out).toContain('Row 4, column "length mm": the strip would be shorter under load');
    expect(out).toContain("No strip across was read.");
    expect(out).toContain("2 readings");
  });

  test.each([
    ["a file without the columns", "a,b\n1,2\n", "strips-no-header"],
    ["a file without rows", `${header}\n`, "strips-no-rows"],
  ])("%s is refused with 2", (_, text, wanted) => {
    const { code, out, err } = lastwise("strip", written("refused.csv", text), "--json");
    expect(code).toBe(2);
    expect(err).toContain("way,width mm,between marks mm");
    expect((JSON.parse(out) as Report).findings.map((f) => f.code)).toEqual([wanted]);
  });

  test("an empty file is told as a table", () => expect(lastwise("strip", written("empty.csv", "")).err).toContain("There are no readings in it."));

  test("grams for kilograms are to be looked at, here and before a pair is cut by them, and make names the rows too", () => {
    const path = written("grams.csv", `${header}\nalong,20,150,0.5,g,153,\n,,,1,g,155,\n,,,3,g,3,\nacross,20,150,0.5,g,156,\n,,,3,g,170,\n`);
    for (const { code, out } of [lastwise("strip", path), lastwise("make", "--example", "--untried", "--upper-strips", path, "--out", join(folder, "grams"))]) {
      expect(code).toBe(1);
      expect(out).toContain("Were the loads kilograms and written as grams?");
      expect(out).toMatch(/Row 4, column "length mm": .* like 153\.0, not by how much it grew/);
    }
  });

  test("help shows the form of the table, and a wrong kind is told the right ones", () => {
    const { code, out } = lastwise("strip", "--help");
    expect(code).toBe(0);
    expect(out).toContain(header);
    expect(out).toContain("lastwise strip my-goat.csv --like goat");
    expect(lastwise("strip", example, "--like", "cat").err).toContain("--like can be goat or calf or nappa or cow or pig or lining goat");
  });
});

describe("strips of a job, and another kind said beside it", () => {
  const strips = [{ way: "along", widthMm: 20, gaugeMm: 150, readings: [{ loadN: 10, lengthMm: 155 }] }] as const;
  const job = { ...defaultJob(), leather: { upper: { name: "Rosa", thicknessMm: 0.9, strips } } };

  test("they stay, as in the app, and that is told with the word to leave them out", () => {
    const { job: now, findings } = withLeatherOptions(job, { upperLeather: "nappa" });
    expect(now.leather.upper).toEqual({ name: "Rosa", thicknessMm: 0.9, strips, known: "nappa" });
    expect(findings.map((f) => f.code)).toEqual(["strips-stay"]);
    expect(explain(findings[0]!)).toBe("The upper is now sheep nappa, and the strip that was read as goat or kid stays: what it gives goes by it. Is it another skin, then add --upper-strips none.");
    expect(withLeatherOptions(job, { upperLeather: "goat" }).findings).toEqual([]);
  });

  test("none takes them out; of another kind it is another skin", () => {
    expect(withLeatherOptions(job, { upperStrips: "none" }).job.leather.upper).toEqual({ name: "Rosa", thicknessMm: 0.9 });
    expect(withLeatherOptions(job, { upperStrips: "none", upperLeather: "nappa" })).toMatchObject({ job: { leather: { upper: { known: "nappa" } } }, findings: [] });
    expect(withLeatherOptions(job, { upperLeather: "nappa", upperStrips: example }).job.leather.upper!.name).toBeUndefined();
  });
});

import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { marginTaken } from "#job/corrected.ts";
import { defaultJob } from "#job/default-job.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import { sheetsFor } from "#job/sheets-for.ts";
import { shownBand, type Band } from "#lasting/foretold.ts";
import type { Gauges } from "#lasting/gauges.ts";
import { correctedMargins, marginWords } from "#sheets/corrected.ts";
import { pdfLines } from "../support/pdf-lines.ts";

const none = new Map<string, Uint8Array>();
const pipeline = new Pipeline();
const leather = { upper: { known: "nappa", name: "Black nappa" } } as const;
const made = async (lasting = {}) => {
  const pair = pipeline.run({ ...defaultJob(), leather, lasting }, none, { triangles: 3000 }) as LastPair;
  const sheets = await sheetsFor(pair);
  const bytes = (name: string): Uint8Array => sheets.find((sheet) => sheet.name === name)!.bytes;
  return { pair, report: JSON.parse(new TextDecoder().decode(bytes("report.json"))), text: async (name: string) => (await pdfLines(bytes(name))).flatMap((page) => page.text).join(" ").replace(/\s+/g, " ") };
};

describe("the sheets of a corrected pattern", () => {
  test("say for which leather and by how much, on the index, on the marks and in the report", async () => {
    const { pair, report, text } = await made({ correct: true, throatShiftMm: 0.5 });
    const { throatDepthMm: { before, after } } = pair.corrected!.difference;
    const said = `Corrected for Black nappa: toe to throat ${(before - after).toFixed(1)} mm shorter`;
    expect(await text("pattern.pdf")).toContain(said);
    const marks = await text("marks.pdf");
    expect(marks).toContain(said);
    expect(marks).toContain("was not foretold: these margins are the plain pattern's");
    expect(report.version).toBe(1);
    expect(report.lasting.leather.upper).toMatchObject({ name: "Black nappa", known: "nappa", numbers: { along: expect.any(Number) }, spread: { common: expect.any(Number) }, source: expect.any(String) });
    expect(report.lasting.leather.lining.name).toBe("lining goat");
    expect(report.lasting.correct).toMatchObject({ throatShiftMm: 0.5, backShiftMm: 0 });
    expect(report.lasting.correct.difference.throatDepthMm.after).toBeCloseTo(after, 3);
    expect(report.lasting.pulls).toMatchObject({ pullToeN: 100, stopAtMarks: true });
  });

  test("say of a plain one no more than the leather's name, in the report alone", async () => {
    const { report, text } = await made();
    expect(report.lasting.leather).toEqual({ upper: { name: "Black nappa" } });
    expect(report.lasting).not.toHaveProperty("correct");
    expect(report.lasting).not.toHaveProperty("pulls");
    for (const name of ["pattern.pdf", "marks.pdf"]) expect(await text(name)).not.toMatch(/nappa|orrected/);
  });
});

describe("margins of a corrected pattern", () => {
  const draft = { number: 1, name: "toe centre", at: [0, 0, 0], alongMm: 280, upperMm: 20, liningMm: 16 } as const;
  const gauges = (foretold?: { marginMm: number; word: string }): Gauges => ({ side: "right", marks: [], featherMm: { medial: 280, lateral: 280 }, drafts: [{ ...draft, ...(foretold && { foretold }) }] });

  test("are asked for as they are foretold, to whole millimetres, the lining's by as much less", () => {
    const corrected = correctedMargins(gauges({ marginMm: 16.2, word: "strong" }));
    expect(corrected.drafts[0]).toMatchObject({ upperMm: 16, liningMm: 12 });
    expect(marginWords(corrected)).toContain("foretold for it");
  });

  test("stay the plain pattern's where nothing was foretold, and that is said", () => {
    expect(correctedMargins(gauges()).drafts[0]).toEqual(draft);
    expect(marginWords(gauges())).toContain("stop at the marks");
  });

  test("are told where the correction takes more than 2 mm of them", () => {
    const drafts = [{ number: 1, name: "toe centre", overMm: -4 }, { number: 7, name: "joint, inside", overMm: -1.9 }];
    expect(marginTaken(drafts).map(explain)).toEqual(["The correction for the leather takes from the lasting margin: at its marks less shows than is added. To have as much to pull by as on the plain pattern, cut the lasting margin 4.0 mm wider at draft 1, toe centre."]);
    expect(marginTaken([drafts[1]!])).toEqual([]);
  });
});

// A tape is read to about half a millimetre (common practice, no source), and a net of triangles is no truer.
test("a band is shown at least as wide as a tape reads, and no band where none was drawn", () => {
  expect(shownBand({ predicted: 55, low: 55, high: 55.2 })).toEqual({ predicted: 55, low: 54.5, high: 55.5 });
  expect(shownBand({ predicted: 72, low: 69, high: 75 })).toEqual({ predicted: 72, low: 69, high: 75 });
  const alone: Band = { predicted: 72 };
  expect(shownBand(alone)).toBe(alone);
});

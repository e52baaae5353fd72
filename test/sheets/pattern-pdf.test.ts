import { beforeAll, describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { usualSheets } from "#sheets/choices.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines, type PdfLine, type PdfPageLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";
import { sampleRectangle } from "../support/sample-pieces.ts";

// Lengths here are read from the file by pdf.js (Mozilla), an outside reader.

const length = ({ xy }: PdfLine) => Math.hypot(xy[2]! - xy[0]!, xy[3]! - xy[1]!);
const isUp = ({ xy }: PdfLine) => Math.abs(xy[2]! - xy[0]!) < 1e-3;
const isAcross = ({ xy }: PdfLine) => Math.abs(xy[3]! - xy[1]!) < 1e-3;

/** Long straight lines in a direction in the top strip (across) or in the left strip (up), where the bars stand. */
const barOf = (page: PdfPageLines, along: (l: PdfLine) => boolean) =>
  page.lines.filter((l) => l.stroked && l.xy.length === 4 && along(l) && length(l) > 50 && (along === isAcross ? l.xy[1]! > (page.view[3]! * 25.4) / 72 - 20 : l.xy[0]! < 20));

async function fileOf(name: string, change: Parameters<typeof samplePair>[0] = {}): Promise<Uint8Array> {
  return (await sheetsOf(samplePair(change), unwatched)).find((f) => f.name === name)!.bytes;
}

describe.each(["A4", "Letter"] as const)("pattern.pdf and marks.pdf on %s", (paper) => {
  const files: Record<string, readonly PdfPageLines[]> = {};
  beforeAll(async () => {
    for (const f of await sheetsOf(samplePair({ choices: { ...usualSheets, paper } }), unwatched)) if (f.name.endsWith(".pdf")) files[f.name] = await pdfLines(f.bytes);
  });

  // ISO 216 and 8½ × 11 in, at 72 points an inch.
  test.each(["pattern.pdf", "marks.pdf"])("%s: every page has the paper's size", (name) => {
    const [width, height] = paper === "A4" ? [595.275591, 841.889764] : [612, 792];
    for (const { view } of files[name]!) {
      expect(view[2]! - view[0]!).toBeCloseTo(width, 5);
      expect(view[3]! - view[1]!).toBeCloseTo(height, 5);
    }
  });

  test.each(["pattern.pdf", "marks.pdf"])("%s: bars of 100.00 ± 0.05 mm in both directions on every page", (name) => {
    expect(files[name]!.length).toBeGreaterThan(0);
    for (const page of files[name]!) {
      for (const along of [isAcross, isUp]) {
        const bars = barOf(page, along);
        expect(bars).toHaveLength(1);
        expect(Math.abs(length(bars[0]!) - 100)).toBeLessThan(0.05);
      }
      expect(page.text.filter((t) => t === "must measure 100 mm")).toHaveLength(2);
      expect(page.text.join(" ")).toContain("Print at 100 %");
    }
  });

  test("pattern.pdf: each page says which it is of how many", () => {
    const pages = files["pattern.pdf"]!;
    pages.forEach((page, i) => expect(page.text).toContain(`Page ${i + 1} of ${pages.length}`));
  });

  test("marks.pdf: the throat strip's tick lies 70 mm from its zero", () => {
    // The sample's throat depth; both lines are upright, the zero one 13.6 and the tick 3.4 mm long.
    const uprights = files["marks.pdf"]![1]!.lines.filter((l) => l.stroked && l.xy.length === 4 && isUp(l));
    const zeros = uprights.filter((l) => Math.abs(length(l) - 13.6) < 1e-3), ticks = uprights.filter((l) => Math.abs(length(l) - 3.4) < 1e-3);
    const gaps = zeros.flatMap((z) => ticks.filter((t) => Math.abs(t.xy[1]! - z.xy[1]!) < 1e-3).map((t) => t.xy[0]! - z.xy[0]!));
    expect(gaps.some((g) => Math.abs(g - 70) < 0.01)).toBe(true);
    expect(gaps.some((g) => Math.abs(g - 56) < 0.01)).toBe(true);
  });
});

describe("pattern.pdf", () => {
  test("a rectangle of 140 × 120 mm is found with those sides on its page", async () => {
    const pages = await pdfLines(await fileOf("pattern.pdf", { pieces: [sampleRectangle("card", 140, 120, 1000)] }));
    const card = pages[1]!.lines.find((l) => l.stroked && l.closed && l.xy.length === 8 && l.xy[1]! > 20 && Math.abs(l.xy[2]! - l.xy[0]!) + Math.abs(l.xy[3]! - l.xy[1]!) > 100)!;
    const xs = card.xy.filter((_, i) => i % 2 === 0), ys = card.xy.filter((_, i) => i % 2 === 1);
    const sides = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)].sort((a, b) => a - b);
    expect(sides[0]).toBeCloseTo(120, 2);
    expect(sides[1]).toBeCloseTo(140, 2);
  });

  test("is small", async () => {
    expect((await fileOf("pattern.pdf")).length).toBeLessThan(1_000_000);
  });
});

describe("all sheets", () => {
  test("the same job gives the same bytes", async () => {
    const [a, b] = [await sheetsOf(samplePair(), unwatched), await sheetsOf(samplePair(), unwatched)];
    a.forEach((f, i) => expect(Buffer.compare(f.bytes, b[i]!.bytes)).toBe(0));
  });

  test.each(["Für Ągnieszka ł – 38½", "靴 👠 اَلْحِذَاء", "<&\"'>\u0000\u0007\ud800", "a^b\\U+0041\nnew line", "", "x".repeat(400)])("any title is printed: %j", async (title) => {
    const files = await sheetsOf(samplePair({ title, size: title.slice(0, 5), pieces: [sampleRectangle(title.slice(0, 8) || "card", 120, 100)] }), unwatched);
    expect(files.map((f) => f.name)).toEqual(["pattern.pdf", "pattern.svg", "pattern.dxf", "marks.pdf", "making.pdf", "report.json"]);
    await pdfLines(files[0]!.bytes);
  });
});

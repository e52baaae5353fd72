import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { usualSheets, type SheetChoices } from "#sheets/choices.ts";
import { asPrinted, correctionWords, pageSize, printPaper } from "#sheets/print-paper.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines, type PdfLine, type PdfPageLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";
import { sampleRectangle } from "../support/sample-pieces.ts";

// Lengths in files are read by pdf.js (Mozilla), an outside reader.

const chosen = (change: Partial<SheetChoices>): SheetChoices => ({ ...usualSheets, ...change });

async function pagesOf(name: string, change: Partial<SheetChoices>, pieces = samplePair().pieces): Promise<readonly PdfPageLines[]> {
  const files = await sheetsOf(samplePair({ choices: chosen(change), pieces }), unwatched);
  return pdfLines(files.find((f) => f.name === name)!.bytes);
}

const spanOf = ({ xy }: PdfLine): readonly [number, number] => {
  const xs = xy.filter((_, i) => i % 2 === 0), ys = xy.filter((_, i) => i % 2 === 1);
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
};
/** The longest straight upright and level line of a page: on every page a bar, where no joint is drawn. */
function bars(page: PdfPageLines, width: number, length: number): readonly [readonly PdfLine[], readonly PdfLine[]] {
  const near = (span: readonly [number, number], along: number) => Math.abs(span[along]! - length) < 0.1 * length && span[1 - along]! < 1e-3;
  const straight = page.lines.filter((l) => l.stroked && l.xy.length === 4);
  const high = (page.view[3]! * 25.4) / 72;
  return [straight.filter((l) => near(spanOf(l), 0) && l.xy[1]! > high - 25 && l.xy[0]! > width / 4), straight.filter((l) => near(spanOf(l), 1) && l.xy[0]! < 22)];
}

describe("a printer that is out of true", () => {
  const readings = [[99.2, 99.7], [101.3, 100.4], [95, 105]] as const;

  // The job itself: what a printer draws at 99.2 % must come out true. 140 × 120 mm and both bars, in the file and on paper.
  test.each(readings)("that prints 100 as %f across and %f up gets a file that comes out true", async (barAcrossMm, barUpMm) => {
    const pages = await pagesOf("pattern.pdf", { barAcrossMm, barUpMm }, [sampleRectangle("card", 140, 120, 1000)]);
    const card = pages[1]!.lines.find((l) => l.stroked && l.closed && l.xy.length === 8 && spanOf(l)[0] > 100 && spanOf(l)[1] > 100)!;
    const [wide, high] = spanOf(card);
    const printed = [(wide * barAcrossMm) / 100, (high * barUpMm) / 100].sort((a, b) => a - b);
    expect(Math.abs(printed[0]! - 120)).toBeLessThan(0.02);
    expect(Math.abs(printed[1]! - 140)).toBeLessThan(0.02);
    for (const page of pages) {
      // The paper itself stays what it is.
      expect(page.view[2]!).toBeCloseTo(595.275591, 5);
      expect(page.view[3]!).toBeCloseTo(841.889764, 5);
      const [across, up] = bars(page, 210, 100);
      expect([across.length, up.length]).toEqual([1, 1]);
      expect(Math.abs((spanOf(across[0]!)[0] * barAcrossMm) / 100 - 100)).toBeLessThan(0.02);
      expect(Math.abs((spanOf(up[0]!)[1] * barUpMm) / 100 - 100)).toBeLessThan(0.02);
      expect(page.text.join(" ")).toContain(`orrected for a printer that prints 100 as ${barAcrossMm} across and ${barUpMm} up`);
    }
  });

  test("gets strips on marks.pdf that come out true, too", async () => {
    const [, page] = await pagesOf("marks.pdf", { barAcrossMm: 99.2, barUpMm: 99.7 });
    // The sample's throat depth of 70 mm, from the zero line (13.6 mm high) to its tick (3.4 mm).
    const uprights = page!.lines.filter((l) => l.stroked && l.xy.length === 4 && spanOf(l)[0] < 1e-3);
    const of = (mm: number) => uprights.filter((l) => Math.abs((spanOf(l)[1] * 99.7) / 100 - mm) < 1e-2);
    const gaps = of(13.6).flatMap((z) => of(3.4).map((t) => ((t.xy[0]! - z.xy[0]!) * 99.2) / 100));
    expect(gaps.some((g) => Math.abs(g - 70) < 0.02)).toBe(true);
  });

  test("keeps all that is drawn on the paper, whether it draws too large or too small", () => {
    for (const [barAcrossMm, barUpMm] of readings) {
      const page = pageSize(printPaper(chosen({ barAcrossMm, barUpMm })));
      const [x, y] = [page.shift[0] + page.widthMm * page.stretch[0], page.shift[1] + page.heightMm * page.stretch[1]];
      expect(x).toBeLessThanOrEqual(210 + 1e-9);
      expect(y).toBeLessThanOrEqual(297 + 1e-9);
      expect(page.widthMm).toBeLessThanOrEqual(210);
      expect(page.heightMm).toBeLessThanOrEqual(297);
      const [back0, back1] = asPrinted(Float64Array.of(x, y), page);
      expect(back0).toBeCloseTo(page.widthMm, 9);
      expect(back1).toBeCloseTo(page.heightMm, 9);
    }
  });

  test("a true one is not spoken of", async () => {
    expect(correctionWords({ acrossMm: 100, upMm: 100 })).toBe("");
    const pages = await pagesOf("pattern.pdf", {}, [sampleRectangle("card", 140, 120)]);
    expect(pages.flatMap((p) => p.text).join(" ")).not.toContain("orrected");
  });
});

// A suggested rule (ISO 2768-1 m, 120 to 400 mm: half a millimetre is 0.25 %): bars of 200 mm along both axes. Where the paper is wide enough for one.
describe("scale bars", () => {
  test.each([["A4", 210, 100], ["Letter", 215.9, 100], ["A3", 297, 200], ["A2", 420, 200], ["roll", 610, 200]] as const)("%s (%f mm wide): %i mm along both axes of every page", async (paper, width, length) => {
    for (const name of ["pattern.pdf", "marks.pdf"]) {
      for (const page of await pagesOf(name, { paper })) {
        expect(((page.view[2]! - page.view[0]!) * 25.4) / 72).toBeCloseTo(width, 4);
        const [across, up] = bars(page, 0, length);
        expect([across.length, up.length]).toEqual([1, 1]);
        expect(Math.abs(spanOf(across[0]!)[0] - length)).toBeLessThan(0.02);
        expect(Math.abs(spanOf(up[0]!)[1] - length)).toBeLessThan(0.02);
        expect(page.text.filter((t) => t === `must measure ${length} mm`)).toHaveLength(2);
      }
    }
  });
});

describe("paper from a roll", () => {
  test("is as long as its pieces need and no joint runs through what is narrower than it", async () => {
    const page = (await pagesOf("pattern.pdf", { paper: "roll", sets: "cutting" })).at(-1)!;
    const lengthMm = (page.view[3]! * 25.4) / 72;
    // Ten pieces whose boxes cover about 0.36 m² on a window of 570 mm: more than 600 mm, far below the longest page.
    expect(lengthMm).toBeGreaterThan(600);
    expect(lengthMm).toBeLessThan(1400);
    expect(page.text.join(" ")).not.toContain("cut here");
  });

  test("a page never grows beyond what readers of the format take (14 400 points), even corrected", () => {
    const paper = printPaper(chosen({ paper: "roll", barUpMm: 95 }));
    expect((pageSize(paper, 1e6).fileHeightMm * 72) / 25.4).toBeLessThan(14400);
  });

  test("a narrow roll is joined like any paper", async () => {
    const pages = await pagesOf("pattern.pdf", { paper: "roll", rollWidthMm: 200, sets: "net" });
    expect(pages.length).toBeGreaterThan(2);
    expect(pages.map((p) => p.text.join(" ")).join(" ")).toContain("cut here");
  });
});

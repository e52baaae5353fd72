import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { bounds } from "#plane/measure.ts";
import type { BoundBook } from "../book/making-pdf.ts";
import { barNames } from "../pdf/scale-bars.ts";
import { asPrinted } from "../print-paper.ts";
import { pdfPages } from "./pdf-paths.ts";

/** What a bar and a small drawing may be off, mm. */
const toleranceMm = 0.02;
const file = "making.pdf";

const refuseUnless = (foundMm: number, wantedMm: number, offMm: number): void => {
  if (!(Math.abs(foundMm - wantedMm) <= offMm)) throw new Refusal(finding("scale-wrong", { file, foundMm, wantedMm }));
};

/**
 * Reads making.pdf back: the size of every page, and on pages with drawings to scale both bars and the size of each drawing.
 * @throws Refusal `scale-wrong`
 */
export async function proveBookPdf({ bytes, pages, drawn }: BoundBook): Promise<void> {
  for (const [i, page] of (await pdfPages(bytes)).entries()) {
    const size = pages[i]!;
    refuseUnless(page.widthMm, size.fileWidthMm, 0.01);
    refuseUnless(page.heightMm, size.fileHeightMm, 0.01);
    const sizeOf = (name: string): readonly [number, number] => {
      const xy = page.paths.find((p) => p.name === name)?.xy;
      if (!xy) return [NaN, NaN];
      const { minX, minY, maxX, maxY } = bounds({ xy: asPrinted(Float64Array.from(xy), size) });
      return [maxX - minX, maxY - minY];
    };
    const here = drawn[i]!;
    if (here.length > 0) {
      refuseUnless(sizeOf(barNames.across)[0], size.barMm, toleranceMm);
      refuseUnless(sizeOf(barNames.up)[1], size.barMm, toleranceMm);
    }
    for (const { name, wide, high } of here) {
      const [w, h] = sizeOf(name);
      refuseUnless(w, wide, toleranceMm);
      refuseUnless(h, high, toleranceMm);
    }
  }
}

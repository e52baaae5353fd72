import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { CommonSheet, PlacedPiece } from "../arrange.ts";
import { leftStripMm, marginMm } from "../paper.ts";
import { layers, type Layer } from "../pen.ts";
import type { BoundPages } from "../pdf/pattern-pdf.ts";
import { barNames } from "../pdf/scale-bars.ts";
import { asPrinted, type PageSize } from "../print-paper.ts";
import { tickName, zeroName, type Strip } from "../marks/strips.ts";
import type { Tiling } from "../tiling.ts";
import { dxfOutlines } from "./dxf-paths.ts";
import { LineSquares } from "./line-squares.ts";
import { pdfPages, type FoundPage } from "./pdf-paths.ts";
import { svgOutlines } from "./svg-paths.ts";

/** What a file may be off, mm: an outline, and a scale bar. */
const outlineToleranceMm = 0.01;
const barToleranceMm = 0.02;

function refuseUnless(holds: boolean, file: string, foundMm: number, wantedMm: number): void {
  if (!holds) throw new Refusal(finding("scale-wrong", { file, foundMm, wantedMm }));
}

/** The pages of a file with their paths as they come out of the maker's printer. */
async function printedPages({ bytes, pages }: BoundPages): Promise<readonly FoundPage[]> {
  const found = await pdfPages(bytes);
  return found.map((page, i) => ({ ...page, paths: page.paths.map((p) => ({ ...p, xy: asPrinted(p.xy, pages[i]!) })) }));
}

/** Every page must have its paper's size and both bars at their length. */
function provePages(file: string, pages: readonly FoundPage[], sizes: readonly PageSize[]): void {
  for (const [i, page] of pages.entries()) {
    const { fileWidthMm, fileHeightMm, barMm } = sizes[i]!;
    refuseUnless(Math.abs(page.widthMm - fileWidthMm) < 0.01, file, page.widthMm, fileWidthMm);
    refuseUnless(Math.abs(page.heightMm - fileHeightMm) < 0.01, file, page.heightMm, fileHeightMm);
    const across = page.paths.find((p) => p.name === barNames.across)?.xy ?? [];
    const up = page.paths.find((p) => p.name === barNames.up)?.xy ?? [];
    const lengths = [Math.abs(across[2]! - across[0]!), Math.abs(up[3]! - up[1]!)];
    for (const length of lengths) refuseUnless(Math.abs(length - barMm) <= barToleranceMm, file, length, barMm);
  }
}

/** Reads pattern.pdf back: bars, and every cutting line on the pages that show it. */
export async function provePatternPdf(bound: BoundPages, sheet: CommonSheet, tiling: Tiling, cutName: (piece: number) => string): Promise<void> {
  const file = "pattern.pdf";
  const pages = await printedPages(bound);
  provePages(file, pages, bound.pages);
  const covers = pages.length - tiling.tiles.length;
  sheet.placed.forEach((placed, i) => {
    const found = tiling.tiles.flatMap((tile, t) => {
      const dx = tile.xMm - marginMm - leftStripMm, dy = tile.yMm - marginMm;
      const own = pages[covers + t]!.paths.filter((path) => path.name === cutName(i));
      return own.map((path) => ({ xy: path.xy.map((v, k) => v + (k % 2 === 0 ? dx : dy)), closed: path.closed }));
    });
    proveOutline(file, placed, found);
  });
}

/** Reads marks.pdf back: bars, and every tick of every strip at its length from the strip's zero. */
export async function proveMarksPdf(bound: BoundPages, strips: readonly Strip[]): Promise<void> {
  const file = "marks.pdf";
  const pages = await printedPages(bound);
  provePages(file, pages, bound.pages);
  const paths = pages.flatMap((p) => p.paths);
  for (const strip of strips) {
    const zero = paths.find((p) => p.name === zeroName(strip.name))?.xy ?? [];
    for (const mark of strip.marks) {
      const tick = paths.find((p) => p.name === tickName(mark))?.xy ?? [];
      // A tick is parallel to the zero line and both begin at the strip's measuring edge.
      const length = Math.hypot(tick[0]! - zero[0]!, tick[1]! - zero[1]!);
      refuseUnless(Math.abs(length - mark.lengthMm) <= barToleranceMm, file, length, mark.lengthMm);
    }
  }
}

/** Reads pattern.svg back: its size, and the cutting lines where they were asked for. */
export function proveSvg(bytes: Uint8Array, sheet: CommonSheet, chosen: readonly Layer[] = layers): void {
  const file = "pattern.svg";
  const { widthMm, heightMm, viewBox, outlines } = svgOutlines(bytes, "cut");
  refuseUnless(Math.abs(widthMm - sheet.widthMm) < 0.01, file, widthMm, sheet.widthMm);
  refuseUnless(Math.abs(viewBox[2]! - widthMm) < 1e-9, file, viewBox[2]!, widthMm);
  refuseUnless(Math.abs(viewBox[3]! - heightMm) < 1e-9, file, viewBox[3]!, heightMm);
  if (chosen.includes("cut")) proveOutlines(file, sheet, outlines.map((xy) => xy.map((v, i) => (i % 2 === 1 ? heightMm - v : v))));
}

/** Reads pattern.dxf back: its unit, and the cutting lines where they were asked for. */
export function proveDxf(bytes: Uint8Array, sheet: CommonSheet, chosen: readonly Layer[] = layers): void {
  const file = "pattern.dxf";
  const { units, outlines } = dxfOutlines(bytes, "cut");
  refuseUnless(units === 4, file, NaN, 1);
  if (chosen.includes("cut")) proveOutlines(file, sheet, outlines);
}

/** One closed outline a piece, in the order of the pieces. */
function proveOutlines(file: string, { placed }: CommonSheet, found: readonly Float64Array[]): void {
  placed.forEach((piece, i) => proveOutline(file, piece, found[i] ? [{ xy: found[i], closed: true }] : []));
}

/** What was found must lie on the piece's outline, and the whole outline on what was found. */
function proveOutline(file: string, { outline, piece }: PlacedPiece, found: readonly { readonly xy: Float64Array; readonly closed: boolean }[]): void {
  const [wanted, there] = [new LineSquares(), new LineSquares()];
  wanted.add(outline, true);
  for (const { xy, closed } of found) there.add(xy, closed);
  const off = Math.max(there.farthest(outline), ...found.map(({ xy }) => wanted.farthest(xy)));
  if (!(off <= outlineToleranceMm)) throw new Refusal(finding("outline-off", { file, piece: `${piece.name}, ${piece.side}`, offMm: off }));
}

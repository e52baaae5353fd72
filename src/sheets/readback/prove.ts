import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { CommonSheet } from "../arrange.ts";
import { leftStripMm, marginMm } from "../paper.ts";
import type { BoundPages } from "../pdf/pattern-pdf.ts";
import { barNames } from "../pdf/scale-bars.ts";
import { asPrinted, type PageSize } from "../print-paper.ts";
import { tickName, zeroName, type Strip } from "../marks/strips.ts";
import type { Tiling } from "../tiling.ts";
import { dxfOutlines } from "./dxf-paths.ts";
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

/** Reads pattern.pdf back: bars, and every point of every cutting line on the page that shows it. */
export async function provePatternPdf(bound: BoundPages, sheet: CommonSheet, tiling: Tiling, cutName: (piece: number) => string): Promise<void> {
  const file = "pattern.pdf";
  const pages = await printedPages(bound);
  provePages(file, pages, bound.pages);
  const covers = pages.length - tiling.tiles.length;
  sheet.placed.forEach(({ outline, piece }, i) => {
    const found = new PointSet();
    tiling.tiles.forEach((tile, t) => {
      for (const path of pages[covers + t]!.paths) if (path.name === cutName(i)) found.add(path.xy, tile.xMm - marginMm - leftStripMm, tile.yMm - marginMm);
    });
    for (let k = 0; k < outline.length; k += 2) {
      const off = found.nearest(outline[k]!, outline[k + 1]!);
      if (!(off <= outlineToleranceMm)) throw new Refusal(finding("outline-off", { file, piece: `${piece.name}, ${piece.side}`, offMm: off }));
    }
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

export function proveSvg(bytes: Uint8Array, sheet: CommonSheet): void {
  const file = "pattern.svg";
  const { widthMm, heightMm, viewBox, outlines } = svgOutlines(bytes, "cut");
  refuseUnless(Math.abs(widthMm - sheet.widthMm) < 0.01, file, widthMm, sheet.widthMm);
  refuseUnless(Math.abs(viewBox[2]! - widthMm) < 1e-9, file, viewBox[2]!, widthMm);
  refuseUnless(Math.abs(viewBox[3]! - heightMm) < 1e-9, file, viewBox[3]!, heightMm);
  proveOutlines(file, sheet, outlines.map((xy) => xy.map((v, i) => (i % 2 === 1 ? heightMm - v : v))));
}

export function proveDxf(bytes: Uint8Array, sheet: CommonSheet): void {
  const file = "pattern.dxf";
  const { units, outlines } = dxfOutlines(bytes, "cut");
  refuseUnless(units === 4, file, NaN, 1);
  proveOutlines(file, sheet, outlines);
}

/** Point by point, in the order of the pieces. */
function proveOutlines(file: string, { placed }: CommonSheet, found: readonly Float64Array[]): void {
  placed.forEach(({ outline, piece }, i) => {
    const xy = found[i];
    let off = xy && xy.length === outline.length ? 0 : Infinity;
    if (off === 0) for (let k = 0; k < outline.length; k += 2) off = Math.max(off, Math.hypot(xy![k]! - outline[k]!, xy![k + 1]! - outline[k + 1]!));
    if (!(off <= outlineToleranceMm)) throw new Refusal(finding("outline-off", { file, piece: `${piece.name}, ${piece.side}`, offMm: off }));
  });
}

/** Points on squares of 1 mm, to find the nearest fast. */
class PointSet {
  readonly #squares = new Map<string, number[]>();
  add(xy: Float64Array, dx: number, dy: number): void {
    for (let i = 0; i < xy.length; i += 2) {
      const x = xy[i]! + dx, y = xy[i + 1]! + dy;
      const key = `${Math.floor(x)},${Math.floor(y)}`;
      const there = this.#squares.get(key);
      if (there) there.push(x, y);
      else this.#squares.set(key, [x, y]);
    }
  }
  /** Distance to the nearest point in the square of (x, y) or beside it; infinite when there is none. */
  nearest(x: number, y: number): number {
    let least = Infinity;
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) {
        const there = this.#squares.get(`${Math.floor(x) + i},${Math.floor(y) + j}`) ?? [];
        for (let k = 0; k < there.length; k += 2) least = Math.min(least, Math.hypot(there[k]! - x, there[k + 1]! - y));
      }
    }
    return least;
  }
}

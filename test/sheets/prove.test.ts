import { PDFDocument, PDFName, decodePDFRawStream, type PDFRawStream } from "@cantoo/pdf-lib";
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import { patternDxf } from "#sheets/dxf.ts";
import { jointStrips } from "#sheets/joint-strips.ts";
import { marksPdf } from "#sheets/marks/marks-pdf.ts";
import { cutName, patternPdf, type BoundPages } from "#sheets/pdf/pattern-pdf.ts";
import { drawPiece, ring } from "#sheets/piece-drawing.ts";
import { printPlan } from "#sheets/print-plan.ts";
import { proveDxf, proveMarksPdf, provePatternPdf, proveSvg } from "#sheets/readback/prove.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import { patternSvg } from "#sheets/svg.ts";
import { tilingOf } from "#sheets/tiling.ts";
import { samplePair } from "../support/sample-pair.ts";

// Each file is spoilt on purpose in its bytes; the reading back must notice.

const input = samplePair();
const { paper, sheet } = printPlan(input.pieces, input.choices);
const profile = profileOf(input.last, input.lines);
const drawings = sheet.placed.map((p) => drawPiece(p, { title: "t", size: "38", profile }, jointStrips(sheet, p)));
const tiling = tilingOf(sheet, drawings.map((d) => d.strokes.map((s) => (s.closed ? ring(s.xy) : s.xy))));
const text = (b: Uint8Array) => new TextDecoder().decode(b);
const bytes = (t: string) => new TextEncoder().encode(t);

/** The same PDF with the content stream of one page rewritten. */
async function rewritten(pdf: BoundPages, page: number, change: (content: string) => string): Promise<BoundPages> {
  const doc = await PDFDocument.load(pdf.bytes, { updateMetadata: false });
  const node = doc.getPages()[page]!.node;
  const content = text(decodePDFRawStream(node.Contents() as PDFRawStream).decode());
  expect(change(content) === content).toBe(false);
  node.set(PDFName.of("Contents"), doc.context.register(doc.context.flateStream(change(content))));
  return { ...pdf, bytes: await doc.save() };
}

const refused = async (work: () => unknown, code: string) => {
  const thrown = await Promise.resolve().then(work).then(() => undefined, (e: unknown) => e);
  expect(thrown).toBeInstanceOf(Refusal);
  expect((thrown as Refusal).finding.code).toBe(code);
};

describe("reading files back", () => {
  test("a PDF whose page is 0.1 % too small is refused", async () => {
    const pdf = await patternPdf(input, paper, sheet, tiling, drawings, profile);
    await provePatternPdf(pdf, sheet, tiling, cutName);
    const small = await rewritten(pdf, 2, (c) => c.replace(/^[\d.]+ 0 0 [\d.]+/, "2.8318 0 0 2.8318"));
    await refused(() => provePatternPdf(small, sheet, tiling, cutName), "scale-wrong");
  });

  test("a PDF with one point of a cutting line moved by 0.1 mm is refused", async () => {
    const pdf = await patternPdf(input, paper, sheet, tiling, drawings, profile);
    const piece = tiling.tilesOfPiece.findIndex((tiles) => tiles.includes(0));
    // Not along the line, whichever way it runs there.
    const moved = await rewritten(pdf, pdf.pages.length - tiling.tiles.length, (c) => c.replace(new RegExp(`(/${cutName(piece)} BMC\\n[^\\n]*\\n?[^m]*?)([\\d.]+) ([\\d.]+) m`), (_, before: string, x: string, y: string) => `${before}${Number(x) + 0.1} ${Number(y) + 0.07} m`));
    await refused(() => provePatternPdf(moved, sheet, tiling, cutName), "outline-off");
  });

  test("a PDF of the wrong paper is refused", async () => {
    const pdf = await patternPdf(input, paper, sheet, tiling, drawings, profile);
    const letter = await patternPdf(input, printPlan(input.pieces, sheetChoicesFrom({ paper: "Letter" })).paper, sheet, tiling, drawings, profile);
    await refused(() => provePatternPdf({ ...pdf, pages: letter.pages }, sheet, tiling, cutName), "scale-wrong");
  });

  test("a strip with its tick in the wrong place is refused", async () => {
    const marks = await marksPdf(input, paper);
    await proveMarksPdf(marks, marks.strips);
    const moved = await rewritten(marks, 1, (c) => c.replace(/(\/tick-right-throat BMC\n)([\d.]+)/, (_, before: string, x: string) => before + (Number(x) + 0.1).toFixed(3)));
    await refused(() => proveMarksPdf(moved, marks.strips), "scale-wrong");
  });

  test("an SVG whose size and viewBox differ is refused, and one with a moved point", async () => {
    const svg = text(patternSvg("t", sheet, drawings));
    proveSvg(bytes(svg), sheet);
    await refused(() => proveSvg(bytes(svg.replace(/viewBox="0 0 [\d.]+/, 'viewBox="0 0 600')), sheet), "scale-wrong");
    await refused(() => proveSvg(bytes(svg.replace(/width="([\d.]+)mm"/, 'width="$1in"')), sheet), "scale-wrong");
    await refused(() => proveSvg(bytes(svg.replace(/d="M([\d.]+)/, (_, x: string) => `d="M${Number(x) + 0.05}`)), sheet), "outline-off");
  });

  test("a DXF in inches is refused, and one without a piece", async () => {
    const dxf = text(patternDxf(sheet, drawings));
    proveDxf(bytes(dxf), sheet);
    await refused(() => proveDxf(bytes(dxf.replace("$INSUNITS\n70\n4", "$INSUNITS\n70\n1")), sheet), "scale-wrong");
    await refused(() => proveDxf(bytes(dxf.replace("\n8\ncut\n", "\n8\nmark\n")), sheet), "outline-off");
  });

  test("a curve that bows by 0.05 mm otherwise is refused, though all its ends are in place", async () => {
    const svg = text(patternSvg("t", sheet, drawings));
    const bowed = svg.replace(/(c-?[\d.]+) ?(-?[\d.]+)/, (_, before: string, y: string) => `${before} ${Number(y) + 0.15}`);
    expect(bowed === svg).toBe(false);
    await refused(() => proveSvg(bytes(bowed), sheet), "outline-off");
    const dxf = text(patternDxf(sheet, drawings));
    const straight = dxf.replace(/\n42\n-?0\.0[1-9]\d+/, "");
    expect(straight === dxf).toBe(false);
    await refused(() => proveDxf(bytes(straight), sheet), "outline-off");
    const pdf = await patternPdf(input, paper, sheet, tiling, drawings, profile);
    const piece = tiling.tilesOfPiece.findIndex((tiles) => tiles.length === 1 && drawings[tiling.tilesOfPiece.indexOf(tiles)]!.strokes[0]!.curves!.straight.includes(0));
    const page = pdf.pages.length - tiling.tiles.length + tiling.tilesOfPiece[piece]![0]!;
    const moved = await rewritten(pdf, page, (c) => c.replace(new RegExp(`(/${cutName(piece)} BMC[^c]*? )([\\d.]+)( [\\d.]+ [\\d.]+ [\\d.]+ [\\d.]+ c)`), (_, before: string, y: string, after: string) => before + (Number(y) + 0.15).toFixed(3) + after));
    await refused(() => provePatternPdf(moved, sheet, tiling, cutName), "outline-off");
  });

  test("cutting lines are asked for only where they were chosen", async () => {
    const bare = ["mark", "text"] as const;
    proveSvg(patternSvg("t", sheet, drawings, bare), sheet, bare);
    proveDxf(patternDxf(sheet, drawings, bare), sheet, bare);
    await refused(() => proveSvg(patternSvg("t", sheet, drawings, bare), sheet), "outline-off");
    await refused(() => proveDxf(patternDxf(sheet, drawings, bare), sheet), "outline-off");
  });
});

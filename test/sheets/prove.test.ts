import { PDFDocument, PDFName, decodePDFRawStream, type PDFRawStream } from "@cantoo/pdf-lib";
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { arrange } from "#sheets/arrange.ts";
import { patternDxf } from "#sheets/dxf.ts";
import { jointStrips } from "#sheets/joint-strips.ts";
import { marksPdf } from "#sheets/marks/marks-pdf.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import { cutName, patternPdf } from "#sheets/pdf/pattern-pdf.ts";
import { drawPiece, ring } from "#sheets/piece-drawing.ts";
import { proveDxf, proveMarksPdf, provePatternPdf, proveSvg } from "#sheets/readback/prove.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import { patternSvg } from "#sheets/svg.ts";
import { tilingOf } from "#sheets/tiling.ts";
import { samplePair } from "../support/sample-pair.ts";

// Each file is spoilt on purpose in its bytes; the reading back must notice.

const input = samplePair();
const sheet = arrange(input.pieces, gridOf(papers.A4));
const profile = profileOf(input.last, input.lines);
const drawings = sheet.placed.map((p) => drawPiece(p, { title: "t", size: "38", profile }, jointStrips(sheet, p)));
const tiling = tilingOf(sheet, drawings.map((d) => d.strokes.map((s) => (s.closed ? ring(s.xy) : s.xy))));
const text = (b: Uint8Array) => new TextDecoder().decode(b);
const bytes = (t: string) => new TextEncoder().encode(t);

/** The same PDF with the content stream of one page rewritten. */
async function rewritten(pdf: Uint8Array, page: number, change: (content: string) => string): Promise<Uint8Array> {
  const doc = await PDFDocument.load(pdf, { updateMetadata: false });
  const node = doc.getPages()[page]!.node;
  const content = text(decodePDFRawStream(node.Contents() as PDFRawStream).decode());
  expect(change(content)).not.toBe(content);
  node.set(PDFName.of("Contents"), doc.context.register(doc.context.flateStream(change(content))));
  return doc.save();
}

const refused = async (work: () => unknown, code: string) => {
  const thrown = await Promise.resolve().then(work).then(() => undefined, (e: unknown) => e);
  expect(thrown).toBeInstanceOf(Refusal);
  expect((thrown as Refusal).finding.code).toBe(code);
};

describe("reading files back", () => {
  test("a PDF whose page is 0.1 % too small is refused", async () => {
    const pdf = await patternPdf(input, sheet, tiling, drawings, profile);
    await provePatternPdf(pdf, "A4", sheet, tiling, cutName);
    const small = await rewritten(pdf, 2, (c) => c.replace(/^[\d.]+ 0 0 [\d.]+/, "2.8318 0 0 2.8318"));
    await refused(() => provePatternPdf(small, "A4", sheet, tiling, cutName), "scale-wrong");
  });

  test("a PDF with one point of a cutting line moved by 0.1 mm is refused", async () => {
    const pdf = await patternPdf(input, sheet, tiling, drawings, profile);
    const piece = tiling.tilesOfPiece.findIndex((tiles) => tiles.includes(0));
    const moved = await rewritten(pdf, 1, (c) => c.replace(new RegExp(`(/${cutName(piece)} BMC\\n[^\\n]*\\n?[^m]*?m )([\\d.]+)`), (_, before: string, x: string) => before + (Number(x) + 0.1).toFixed(3)));
    await refused(() => provePatternPdf(moved, "A4", sheet, tiling, cutName), "outline-off");
  });

  test("a PDF of the wrong paper is refused", async () => {
    const pdf = await patternPdf(input, sheet, tiling, drawings, profile);
    await refused(() => provePatternPdf(pdf, "Letter", sheet, tiling, cutName), "scale-wrong");
  });

  test("a strip with its tick in the wrong place is refused", async () => {
    const marks = await marksPdf(input);
    await proveMarksPdf(marks.bytes, "A4", marks.strips);
    const moved = await rewritten(marks.bytes, 0, (c) => c.replace(/(\/tick-throat BMC\n)([\d.]+)/, (_, before: string, x: string) => before + (Number(x) + 0.1).toFixed(3)));
    await refused(() => proveMarksPdf(moved, "A4", marks.strips), "scale-wrong");
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
});

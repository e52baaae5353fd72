import type { Watch } from "#base/watch.ts";
import { bookPdf } from "./book/making-pdf.ts";
import { patternDxf } from "./dxf.ts";
import type { SheetInput } from "./input.ts";
import { jointStrips } from "./joint-strips.ts";
import { marksPdf } from "./marks/marks-pdf.ts";
import { cutName, headingOf, patternPdf } from "./pdf/pattern-pdf.ts";
import { drawPiece, ring } from "./piece-drawing.ts";
import { printPlan } from "./print-plan.ts";
import { proveBookPdf } from "./readback/prove-book.ts";
import { proveDxf, proveMarksPdf, provePatternPdf, proveSvg } from "./readback/prove.ts";
import { reportJson } from "./report.ts";
import type { SheetFile } from "./sheet-file.ts";
import { profileOf } from "./shoe-picture.ts";
import { patternSvg } from "./svg.ts";
import { tilingOf, type Tiling } from "./tiling.ts";

/**
 * Every sheet of one pair, each read back from its own bytes and measured before it is handed out. Deterministic but for the
 * times in the report. Method and limits: docs/method/sheets.md.
 * @throws Refusal `scale-wrong` or `outline-off` when a file does not read back true.
 */
export async function sheetsOf(input: SheetInput, watch: Watch): Promise<readonly SheetFile[]> {
  watch("sheets", 0);
  const { paper, sheet } = printPlan(input.pieces, input.choices);
  // Without a last there is no picture of the shoe to point at.
  const profile = input.from === "last" ? profileOf(input.last, input.lines) : undefined;
  const plate = { title: input.title, size: input.size, profile };
  const drawings = sheet.placed.map((placed, i) => {
    watch("sheets", (0.4 * i) / sheet.placed.length);
    return drawPiece(placed, plate, jointStrips(sheet, placed));
  });
  const tiling: Tiling = tilingOf(sheet, drawings.map((d) => d.strokes.map((s) => (s.closed ? ring(s.xy) : s.xy))));
  watch("sheets", 0.4);
  const pattern = await patternPdf(input, paper, sheet, tiling, drawings, profile);
  watch("sheets", 0.6);
  await provePatternPdf(pattern, sheet, tiling, cutName);
  watch("sheets", 0.7);
  const marks = await marksPdf(input, paper);
  await proveMarksPdf(marks, marks.strips);
  watch("sheets", 0.75);
  const book = await bookPdf(input, paper);
  await proveBookPdf(book);
  watch("sheets", 0.85);
  const { layers: chosen } = input.choices;
  const svg = patternSvg(headingOf(input), sheet, drawings, chosen);
  proveSvg(svg, sheet, chosen);
  const dxf = patternDxf(sheet, drawings, chosen);
  proveDxf(dxf, sheet, chosen);
  watch("sheets", 0.9);
  const report = reportJson(input, sheet);
  watch("sheets", 1);
  return [
    { name: "pattern.pdf", mime: "application/pdf", bytes: pattern.bytes },
    { name: "pattern.svg", mime: "image/svg+xml", bytes: svg },
    { name: "pattern.dxf", mime: "image/vnd.dxf", bytes: dxf },
    { name: "marks.pdf", mime: "application/pdf", bytes: marks.bytes },
    { name: "making.pdf", mime: "application/pdf", bytes: book.bytes },
    { name: "report.json", mime: "application/json", bytes: report },
  ];
}

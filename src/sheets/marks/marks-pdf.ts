import type { Half } from "#lines/feather.ts";
import type { LastInput, SheetInput, TapeInput } from "../input.ts";
import { brokenIntoLines, shortenedTo } from "../lettering.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import { bindPdf } from "../pdf/document.ts";
import { inkFrame } from "../pdf/page-frame.ts";
import { PageInk } from "../pdf/page-ink.ts";
import { headingOf, type BoundPages } from "../pdf/pattern-pdf.ts";
import { marksPage, type PrintPaper } from "../print-paper.ts";
import { cardMarks } from "./card-marks.ts";
import { cardViewHeight, inkCardView } from "./card-view.ts";
import { half, inkLyingStrip, inkUprightStrip, lyingStripHighMm, marksWithin, stripWidthMm, type Strip } from "./strips.ts";
import { tapeMarks, type TapeMark, type TapeMarks } from "./tape-marks.ts";
import { inkSideView, inkTopView, sideViewHeight, topViewHeight } from "./views.ts";

const intro =
  "Mark these lengths on both lasts with a soft tape laid on the surface. 1/4, 1/2 and 3/4 are parts of the way from the seat point to below the throat; low is where the topline is lowest. Go to each place along the feather line (column from seat), then square up. The left last is the exact mirror of the right: same numbers, other side. The strips are true to size: check the bars, cut the strips out, lay them on.";
const cardIntro =
  "These lengths are those of the taped pattern lying flat; there is no last in this job to measure on. Throat and back are true on the last as well. 1/4, 1/2 and 3/4 are parts of the topline from the back point; heights run straight to the feather edge; lengths along the feather edge leave out what slits stand open, and round the toe the flat edge may be longer than the last's. Mark both lasts alike: the left is the exact mirror of the right. The strips are true to size: check the bars, cut the strips out, lay them on.";
const notes =
  "Accepted difference between right and left when lasted. a: as in a factory's published work instruction for low-cut shoes (back height 1.0 mm, throat 1.0 to 1.5 mm). b: common practice, no source. Lengths are rounded to half a millimetre, the strips are exact.";

/** One page: drawings of the real last or of the taped pattern, the lengths to mark on both lasts with room for what is measured, and gauges. */
export async function marksPdf(input: SheetInput, printed: PrintPaper): Promise<BoundPages & { readonly strips: readonly Strip[] }> {
  const marks = input.from === "last" ? tapeMarks(input.last, input.lines) : cardMarks(input.tape);
  const paper = marksPage(printed);
  const ink = new PageInk(paper);
  const left = marginMm + leftStripMm - 4;
  const right = paper.widthMm - marginMm;
  const top = paper.heightMm - marginMm - topStripMm;
  inkFrame(ink, { title: input.title, size: input.size, page: 1, pages: 1, shows: "marks on both lasts" });
  const strips = stripsOf(marks, top - 4 - marginMm);
  const low = marginMm + 0.5;
  inkUprightStrip(ink, strips.alongInside, right - stripWidthMm, low);
  inkUprightStrip(ink, strips.alongOutside, right - 2 * stripWidthMm - 1, low);
  const width = right - 2 * stripWidthMm - 5 - left;
  let y = top - 10;
  ink.text("Marks on both lasts", left, y, 5, { bold: true });
  y = input.from === "last" ? inkLast(ink, input, marks, left, y - 2, width) : inkCard(ink, input, left, y - 2, width);
  const rowMm = Math.min(rowsMm[1], Math.max(rowsMm[0], (y - low - belowTableMm) / 13));
  y = inkTable(ink, marks, left, y, width, rowMm);
  inkUprightStrip(ink, strips.inside, left + width - stripWidthMm, low + lyingStripHighMm + 1);
  inkUprightStrip(ink, strips.outside, left + width - 2 * stripWidthMm - 1, low + lyingStripHighMm + 1);
  inkLyingStrip(ink, strips.throat, left, low);
  inkLyingStrip(ink, strips.back, left, low + lyingStripHighMm + 1);
  paragraph(ink, notes, left, y - 1, width - 2 * stripWidthMm - 4);
  return { bytes: await bindPdf(`${headingOf(input)}: marks on both lasts`, [ink]), pages: [paper], strips: Object.values(strips) };
}

/** What is to be done and the last from its sides and above; returns where they end. */
function inkLast(ink: PageInk, { last, lines }: LastInput, marks: TapeMarks, left: number, top: number, width: number): number {
  const view = (width - 6) / 2;
  let y = paragraph(ink, intro, left, top, width) - 3 - sideViewHeight(last, view);
  inkSideView(ink, last, lines, marks, "lateral", left, y, view);
  inkSideView(ink, last, lines, marks, "medial", left + width - view, y, view);
  y -= 16 + topViewHeight(last, width - 36) / 2;
  inkTopView(ink, last, lines, left + 18, y, width - 36);
  return y - 7 - topViewHeight(last, width - 36) / 2;
}

/** The same for a taped pattern: its two halves lying flat. */
function inkCard(ink: PageInk, { tape }: TapeInput, left: number, top: number, width: number): number {
  const view = width - 44;
  let y = paragraph(ink, cardIntro, left, top, width);
  for (const half of ["lateral", "medial"] as const) {
    y -= cardViewHeight(tape, view) + 3;
    inkCardView(ink, tape, half, left + 22, y, view);
    y -= 6;
  }
  return y - 4;
}

function stripsOf(marks: TapeMarks, room: number): Readonly<Record<"throat" | "back" | "inside" | "outside" | "alongInside" | "alongOutside", Strip>> {
  return {
    throat: { name: "throat", zero: "toe feather point", title: ["Throat depth", "along the centre"], marks: [marks.throat] },
    back: { name: "back", zero: "seat feather point", title: ["Back height", "along the back"], marks: [marks.back] },
    inside: { name: "inside", zero: "feather line", title: ["Inside", "heights"], marks: marks.heights.medial },
    outside: { name: "outside", zero: "feather line", title: ["Outside", "heights"], marks: marks.heights.lateral },
    alongInside: { name: "along-inside", zero: "seat point", title: ["Inside", "feather line"], marks: marksWithin(marks.along.medial, room) },
    alongOutside: { name: "along-outside", zero: "seat point", title: ["Outside", "feather line"], marks: marksWithin(marks.along.lateral, room) },
  };
}

function paragraph(ink: PageInk, text: string, x: number, top: number, width: number): number {
  let y = top - 2.5;
  for (const line of brokenIntoLines(text, 2.2, width)) {
    ink.text(line, x, y, 2.2);
    y -= 3.7;
  }
  return y;
}

/** Least and greatest height of a row of the table; what the drawings and the strips leave decides. */
const rowsMm = [4.6, 6.2] as const;
/** Height of the tallest strip below the table and of the notes, mm. */
const belowTableMm = 86;

/** Measure, where it is taken, right, left, two empty columns, accepted difference. Returns where it ends. */
function inkTable(ink: PageInk, marks: TapeMarks, x: number, top: number, width: number, rowMm: number): number {
  const rows = rowsOf(marks);
  const columns = [0, width - 84, width - 69, width - 57, width - 45, width - 29, width - 13, width];
  const head = ["Length to mark, mm", "from seat", "right", "left", "right lasted", "left lasted", "differ by"];
  ink.style(0.25);
  ink.line(x, top, x + width, top);
  head.forEach((words, i) => ink.text(words, x + columns[i]! + (i === 0 ? 0 : 1), top - rowMm / 2 - 0.8, 1.8, { bold: true }));
  rows.forEach(({ mark, along }, r) => {
    const y = top - (r + 1) * rowMm;
    ink.style(r === 0 ? 0.25 : 0.18);
    ink.line(x, y, x + width, y);
    ink.text(shortenedTo(columns[1]! - 1, mark.words, 2.2), x, y - rowMm / 2 - 0.9, 2.2);
    if (along) ink.text(half(along.lengthMm), x + columns[1]! + 1, y - rowMm / 2 - 0.9, 2.2);
    if (mark !== along) for (const c of [2, 3]) ink.text(half(mark.lengthMm), x + columns[c]! + 1, y - rowMm / 2 - 0.9, 2.5, { bold: true });
    if (mark.accepted) ink.text(`${mark.accepted.mm.toFixed(1)} ${mark.accepted.ground === "factory rule" ? "a" : "b"}`, x + columns[6]! + 1, y - rowMm / 2 - 0.9, 2.2);
  });
  const end = top - (rows.length + 1) * rowMm;
  ink.style(0.25);
  ink.line(x, end, x + width, end);
  ink.style(0.18);
  for (const c of columns.slice(1)) ink.line(x + c, top, x + c, end);
  return end;
}

/** Each length with the place along the feather line where it is taken; a joint point is such a place and no more. */
function rowsOf(marks: TapeMarks): readonly { readonly mark: TapeMark; readonly along?: TapeMark }[] {
  const side = (half: Half) => marks.along[half].map((along, i) => ({ mark: marks.heights[half][i] ?? along, along }));
  return [{ mark: marks.throat }, { mark: marks.back }, ...side("lateral"), ...side("medial")];
}

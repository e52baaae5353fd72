import type { Half } from "#lines/feather.ts";
import type { TapeInput } from "../input.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { cardMarks } from "./card-marks.ts";
import { cardViewHeight, inkCardView } from "./card-view.ts";
import { paragraph } from "./paragraph.ts";
import { half, inkLyingStrip, inkUprightStrip, lyingStripHighMm, marksWithin, stripWidthMm, type Strip } from "./strips.ts";
import { inkTable } from "./table.ts";
import { acceptedWords, acceptedNotes, type TapeMark, type TapeMarks } from "./tape-marks.ts";

const intro =
  "These lengths are those of the taped pattern lying flat; there is no last in this job to measure on. Throat and back are true on the last as well. 1/4, 1/2 and 3/4 are parts of the topline from the back point; heights run straight to the feather edge; lengths along the feather edge leave out what slits stand open, and round the toe the flat edge may be longer than the last's. Mark both lasts alike: the left is the exact mirror of the right. The strips are true to size: check the bars, cut the strips out, lay them on.";

/** The one page of a taped pattern: its halves lying flat, the lengths to mark on both lasts, and gauges. Returns what it is read back by. */
export function inkCardPage(ink: PageInk, { tape }: TapeInput): readonly Strip[] {
  const { page } = ink;
  const marks = cardMarks(tape);
  const [left, right, top, low] = [marginMm + leftStripMm - 4, page.widthMm - marginMm, page.heightMm - marginMm - topStripMm, marginMm + 0.5];
  const strips = stripsOf(marks, top - 4 - marginMm);
  inkUprightStrip(ink, strips.alongInside, right - stripWidthMm, low);
  inkUprightStrip(ink, strips.alongOutside, right - 2 * stripWidthMm - 1, low);
  const width = right - 2 * stripWidthMm - 5 - left;
  let y = top - 10;
  ink.text("Marks on both lasts", left, y, 5, { bold: true });
  const view = width - 44;
  y = paragraph(ink, intro, left, y - 2, width);
  for (const name of ["lateral", "medial"] as const) {
    y -= cardViewHeight(tape, view) + 3;
    inkCardView(ink, tape, name, left + 22, y, view);
    y -= 6;
  }
  y -= 4;
  const rowMm = Math.min(rowsMm[1], Math.max(rowsMm[0], (y - low - belowTableMm) / 13));
  y = inkLengths(ink, marks, { x: left, top: y, rowMm }, width);
  inkUprightStrip(ink, strips.inside, left + width - stripWidthMm, low + lyingStripHighMm + 1);
  inkUprightStrip(ink, strips.outside, left + width - 2 * stripWidthMm - 1, low + lyingStripHighMm + 1);
  inkLyingStrip(ink, strips.throat, left, low);
  inkLyingStrip(ink, strips.back, left, low + lyingStripHighMm + 1);
  paragraph(ink, acceptedNotes, left, y - 1, width - 2 * stripWidthMm - 4);
  return Object.values(strips);
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

/** Least and greatest height of a row of the table; what the drawings and the strips leave decides. */
const rowsMm = [4.6, 6.2] as const;
/** Height of the tallest strip below the table and of the notes, mm. */
const belowTableMm = 86;

/** Measure, where it is taken, right, left, two empty columns, accepted difference. Returns where it ends. */
function inkLengths(ink: PageInk, marks: TapeMarks, place: { readonly x: number; readonly top: number; readonly rowMm: number }, width: number): number {
  const columns = [
    { head: "Length to mark, mm", mm: width - 84 }, { head: "from seat", mm: 15 }, { head: "right", mm: 12, bold: true }, { head: "left", mm: 12, bold: true },
    { head: "right lasted", mm: 16 }, { head: "left lasted", mm: 16 }, { head: "differ by", mm: 13 },
  ];
  const rows = rowsOf(marks).map(({ mark, along }) => {
    const length = mark === along ? "" : half(mark.lengthMm);
    return [mark.words, along ? half(along.lengthMm) : "", length, length, "", "", acceptedWords(mark.accepted)];
  });
  return inkTable(ink, columns, rows, place);
}

/** Each length with the place along the feather line where it is taken; a joint point is such a place and no more. */
function rowsOf(marks: TapeMarks): readonly { readonly mark: TapeMark; readonly along?: TapeMark }[] {
  const side = (name: Half) => marks.along[name].map((along, i) => ({ mark: marks.heights[name][i] ?? along, along }));
  return [{ mark: marks.throat }, { mark: marks.back }, ...side("lateral"), ...side("medial")];
}

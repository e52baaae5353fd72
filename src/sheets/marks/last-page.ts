import { capital } from "#base/listed.ts";
import { readMm, shownBand, type Band } from "#lasting/foretold.ts";
import type { GaugeMark, Gauges } from "#lasting/gauges.ts";
import type { OverUpper } from "#lasting/over-upper.ts";
import { leftStripMm, marginMm, topStripMm } from "../paper.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { paragraph, paragraphHigh } from "./paragraph.ts";
import { half } from "./strips.ts";
import { inkTable, type Column } from "./table.ts";
import { acceptedNotes, acceptedOf, acceptedWords, sideWords } from "./tape-marks.ts";
import { inkSideView, inkTopView, sideViewHeight, topViewHeight, type Viewed } from "./views.ts";

const intro =
  "Mark these places on both lasts before anything lies on them, with a soft tape on the bare surface, or with the strips on the next pages. 1/4, 1/2 and 3/4 are parts of the way from the seat point to below the throat; the lowest place is where the topline is lowest. Go to each place along the feather line (from seat), then square up. The left last is the exact mirror of the right: same numbers, other side. The small numbers are the drafts, as on the lasting margin of the pieces.";
const judgement = "These numbers are what the pattern asks for. Leather, last and hand have their own: nothing here replaces your judgement at the bench.";

/** The page of both lasts, with what else is to be told below its table: the last from its sides and above, and every length to mark with room for what is measured. */
export function inkLastPage(ink: PageInk, viewed: Viewed, told: readonly string[] = []): void {
  const { last, gauges } = viewed;
  const { page } = ink;
  const [left, right, top] = [marginMm + leftStripMm - 4, page.widthMm - marginMm, page.heightMm - marginMm - topStripMm];
  const width = right - left;
  const view = Math.min(mostViewMm, (width - 16) / 2);
  let y = top - 10;
  ink.text("Marks on both lasts", left, y, 5, { bold: true });
  y = paragraph(ink, intro, left, y - 2, width) - 2 - sideViewHeight(last, view);
  inkSideView(ink, viewed, "lateral", left + 2, y, view);
  inkSideView(ink, viewed, "medial", right - view - 2, y, view);
  const above = Math.min(mostViewMm, width - 50);
  y -= 19 + topViewHeight(last, above) / 2;
  inkTopView(ink, viewed, left + (width - above) / 2, y, above);
  y -= 8 + topViewHeight(last, above) / 2;
  const rows = gauges.marks.length;
  const notes = [...told, acceptedNotes, overUpper(gauges), ...(gauges.marks.some((m) => m.foretold?.low !== undefined) ? [bandNote] : []), judgement].join(" ");
  const notesMm = Math.max(leastNotesMm, 0.5 + paragraphHigh(notes, width));
  y = inkMarks(ink, gauges, { x: left, top: y, rowMm: Math.min(mostRowMm, Math.max(leastRowMm, (y - marginMm - notesMm) / (rows + 1))) }, width);
  paragraph(ink, notes, left, y - 0.5, width);
}

/** No picture grows beyond this on wide paper, and no row beyond what a pen needs, mm. */
const mostViewMm = 130;
const leastRowMm = 4.2;
const mostRowMm = 6.2;
/** Room for the small print below the table, mm. */
const leastNotesMm = 19;
const bandNote = `In brackets where 80 of 100 such leathers end, never closer than ${readMm} mm either way, since no tape reads closer.`;

/** By how much the finished shoe reads more than the marks on the bare last. */
function overUpper({ overUpper: over }: Gauges): string {
  const surface = "All lengths lie on the bare last.";
  if (!over || Math.max(over.throatMm, over.backMm) < 0.25) return surface;
  return `${surface} On the lasted shoe the tape lies over lining, stiffening and upper and reads more: under “on shoe” stands what it should read at throat, back and lowest places.`;
}

function inkMarks(ink: PageInk, { marks, overUpper: over }: Gauges, place: { readonly x: number; readonly top: number; readonly rowMm: number }, width: number): number {
  const told = marks.some((m) => m.foretold);
  const columns: readonly Column[] = [
    { head: "", mm: 6, bold: true },
    { head: "Mark, mm", mm: width - 93 - (told ? 27 : 0) - (over ? 11 : 0) },
    { head: "from seat", mm: 15 },
    { head: "right", mm: 13, bold: true },
    { head: "left", mm: 13, bold: true },
    ...(told ? [{ head: "foretold", mm: 27 }] : []),
    ...(over ? [{ head: "on shoe", mm: 15, bold: true }] : []),
    { head: "right lasted", mm: over ? 15 : 17 },
    { head: "left lasted", mm: over ? 15 : 17 },
    { head: "differ by", mm: 12 },
  ];
  const rows = marks.map((m) => {
    const length = m.lengthMm === undefined ? "" : half(m.lengthMm);
    return [m.letter, nameOf(m), m.alongMm === undefined || m.letter === "P" ? "" : half(m.alongMm), length, length, ...(told ? [m.foretold ? bandWords(m.foretold) : ""] : []), ...(over ? [onTheShoe(m, over)] : []), "", "", acceptedWords(acceptedOf(m.letter))];
  });
  return inkTable(ink, columns, rows, place);
}

/** What the tape should read over the lasted upper; the sides are reckoned at their lowest place alone. */
function onTheShoe({ key, half: of, lengthMm }: GaugeMark, { throatMm, backMm, lowestMm }: OverUpper): string {
  const more = key === "throat" ? throatMm : key === "back" ? backMm : of && key === `${of}-lowest` ? lowestMm[of] : undefined;
  return more === undefined || lengthMm === undefined ? "" : half(lengthMm + more);
}

function nameOf({ half: of, name }: GaugeMark): string {
  return of ? `${sideWords[of]}, ${name}` : capital(name);
}

/** "71.5 (70.5 to 72.5)". */
function bandWords(told: Band): string {
  const { low, high } = shownBand(told);
  return low === undefined || high === undefined ? half(told.predicted) : `${half(told.predicted)} (${half(low)} to ${half(high)})`;
}

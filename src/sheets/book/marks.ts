import { capital } from "#base/listed.ts";
import type { GaugeMark, Gauges } from "#lasting/gauges.ts";
import type { OverUpper } from "#lasting/over-upper.ts";
import { correctedWords, marginWords } from "../corrected.ts";
import type { LastInput, TapeInput } from "../input.ts";
import { cardMarks } from "../marks/card-marks.ts";
import { cardViewHeight, inkCardView } from "../marks/card-view.ts";
import { draftWord } from "../marks/paper-strip.ts";
import { sideWords } from "../marks/tape-marks.ts";
import { inkSideView, inkTopView, sideViewHeight, topViewHeight } from "../marks/views.ts";
import type { Block, Line } from "./block.ts";
import type { Book } from "./book.ts";
import type { Chapter } from "./flow.ts";
import { halfMm } from "./numbers.ts";
import { columnsFor, tableBlocks } from "./table.ts";
import { heading, lines, small, strong } from "./words.ts";

const intro = "Mark both lasts alike before anything lies on them: one is the mirror of the other, so the numbers are the same. The strips to cut out and lay on stand in marks.pdf. From seat is measured along the feather line; lengths lie on the bare last.";
const ofTape = "Lengths of the taped pattern lying flat; throat and back are true on the last as well. The strips to cut out stand in marks.pdf.";

/** What is marked on both lasts, and the margins that must show at each draft. */
export function marksChapter(book: Book): Chapter {
  const { input, gauges, room: { width } } = book;
  return { title: "Marks on both lasts", blocks: input.from === "tape" ? tapeBlocks(input, width) : gauges ? lastBlocks(input, gauges, width) : [] };
}

const told = (text: string, width: number): Block => ({ cells: [{ x: 0, lines: lines(text, width, small) }], keep: true });

function lastBlocks(input: LastInput, gauges: Gauges, width: number): readonly Block[] {
  return [told(input.corrected ? `${intro} ${correctedWords(input.corrected)} The marks stay where they are.` : intro, width), { cells: [{ x: 0, lines: [viewsLine(input, gauges, width)] }], gapMm: 2 }, ...markTable(gauges, width), ...draftTable(gauges, width, input.corrected ? marginWords(gauges) : "")];
}

/** Views are no wider than this on broad paper, mm. */
const mostViewMm = 100;
/** Above a side view for words at the throat, and below it for its letters; round the view from above, mm. */
const aboveMm = 3;
const belowMm = 14;
const roundMm = 6;

function viewsLine({ last, lines: drawn }: LastInput, gauges: Gauges, width: number): Line {
  const viewed = { last, lines: drawn, gauges };
  const side = Math.min(mostViewMm, (width - 17.4) / 2), above = Math.min(1.35 * mostViewMm, width - 76);
  const sideHigh = sideViewHeight(last, side), topHigh = topViewHeight(last, above);
  return {
    highMm: aboveMm + sideHigh + belowMm + topHigh + 2 * roundMm,
    ink: (ink, x, top) => {
      const low = top - aboveMm - sideHigh;
      inkSideView(ink, viewed, "lateral", x + 4.1, low, side);
      inkSideView(ink, viewed, "medial", x + width - side - 4.1, low, side);
      inkTopView(ink, viewed, x + (width - above) / 2, low - belowMm - roundMm - topHigh / 2, above);
    },
  };
}

function markTable(gauges: Gauges, width: number): readonly Block[] {
  const { marks, overUpper } = gauges;
  const columns = columnsFor(width, [{ head: "", mm: 9, letters: strong }, { head: "Mark, mm" }, { head: "From seat", mm: 22 }, { head: "Right", mm: 20, letters: strong }, { head: "Left", mm: 20, letters: strong }, ...(overUpper ? [{ head: "On the lasted shoe", mm: 30 }] : [])]);
  const rows = marks.map((m) => {
    const length = m.lengthMm === undefined ? "" : halfMm(m.lengthMm);
    const from = m.alongMm === undefined || m.letter === "P" ? "" : halfMm(m.alongMm);
    return [m.letter, markName(m), from, length, length, ...(overUpper ? [onShoe(m, overUpper)] : [])];
  });
  return tableBlocks(columns, rows, { gapMm: 2, close: true });
}

export const markName = ({ half, name }: Pick<GaugeMark, "half" | "name">): string => (half ? `${sideWords[half]}, ${name}` : capital(name));

/** What the tape reads over the lasted upper, where that is reckoned. */
export function onShoe({ key, half, lengthMm }: GaugeMark, { throatMm, backMm, lowestMm }: OverUpper): string {
  const more = key === "throat" ? throatMm : key === "back" ? backMm : half && key === `${half}-lowest` ? lowestMm[half] : undefined;
  return more === undefined || lengthMm === undefined ? "" : halfMm(lengthMm + more);
}

function draftTable({ drafts }: Gauges, width: number, ofMargins: string): readonly Block[] {
  const columns = columnsFor(width, [{ head: "", mm: 9, letters: strong }, { head: "Draft, in the order in which it is taken" }, { head: "From seat", mm: 22 }, { head: "Upper right", mm: 22, letters: strong }, { head: "Upper left", mm: 22, letters: strong }, { head: "Lining, both", mm: 24 }]);
  const rows = drafts.map((d) => [draftWord(d.number), d.name, d.half === undefined ? "" : halfMm(d.alongMm), halfMm(d.upperMm), halfMm(d.upperMm), halfMm(d.liningMm)]);
  const head = "Margin that must show inside the feather line, mm";
  const dotted = drafts.some((d) => draftWord(d.number).endsWith(".")) ? "The dot behind 6. and 9. tells one from the other upside down. " : "";
  return [{ cells: [{ x: 0, lines: [...lines(head, width, heading), ...lines(`${dotted}${ofMargins}`.trim(), width, small)] }], keep: true, gapMm: 3 }, ...tableBlocks(columns, rows, { whole: true, close: true })];
}

function tapeBlocks({ tape }: TapeInput, width: number): readonly Block[] {
  const marks = cardMarks(tape), view = Math.min(1.3 * mostViewMm, width - 44);
  const views = (["lateral", "medial"] as const).map((name): Block => {
    const high = cardViewHeight(tape, view);
    return { cells: [{ x: 0, lines: [{ highMm: high + 10, ink: (ink, x, top) => inkCardView(ink, tape, name, x + 22, top - 3 - high, view) }] }] };
  });
  const columns = columnsFor(width, [{ head: "Length to mark, mm" }, { head: "From seat", mm: 26 }, { head: "Right", mm: 24, letters: strong }, { head: "Left", mm: 24, letters: strong }]);
  const side = (name: "lateral" | "medial") => marks.along[name].map((along, i) => ({ mark: marks.heights[name][i] ?? along, along }));
  const rows = [{ mark: marks.throat }, { mark: marks.back }, ...side("lateral"), ...side("medial")].map((row) => {
    const length = "along" in row && row.mark === row.along ? "" : halfMm(row.mark.lengthMm);
    return [row.mark.words, "along" in row ? halfMm(row.along.lengthMm) : "", length, length];
  });
  return [told(ofTape, width), ...views, ...tableBlocks(columns, rows, { gapMm: 3 })];
}


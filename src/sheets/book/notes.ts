import { capital } from "#base/listed.ts";
import { leastMarginMm, marginTolerance, tolerances } from "#lasting/log-tolerances.ts";
import type { Gauges } from "#lasting/gauges.ts";
import { digits } from "#making/steps/words.ts";
import type { SheetInput } from "../input.ts";
import { cardMarks } from "../marks/card-marks.ts";
import { draftWord } from "../marks/paper-strip.ts";
import type { Block, Line } from "./block.ts";
import type { Book } from "./book.ts";
import type { Chapter } from "./flow.ts";
import { markName, onShoe } from "./marks.ts";
import { halfMm } from "./numbers.ts";
import { columnsFor, tableBlocks, type BookCell } from "./table.ts";
import { baseOf, body, fine, heading, lines, small, type Letters } from "./words.ts";

/** High enough to write a number by hand, mm. */
const rowMm = 6.6;
const row: Letters = { ...body, stepMm: rowMm };
const tolerance = (mm: number): string => `${halfMm(mm)} mm`;

/** Pages to write on: what each shoe measures when it is lasted, what went into it, what to change. */
export function notesChapter({ input, gauges, room: { width } }: Book): Chapter {
  const intro = "Fill in while the tape is in your hand, right and left one after the other. What you write here can be typed in after lasting: it teaches the next pair.";
  const drafts = gauges ? draftRows(gauges, width) : [];
  return {
    title: "What this pair measured",
    joins: true,
    blocks: [{ cells: [{ x: 0, lines: lines(intro, width, small) }], keep: true }, ...form("Lasted, mm", lastedRows(input, gauges), width), ...drafts, ...form("Heel and sole, mm", heelRows(input), width), ...factBlocks(input, width)],
  };
}

const cell = (text: string): readonly Line[] => [{ highMm: rowMm, ink: (ink, x, top) => ink.text(text, x, top - baseOf(row), row.heightMm) }];

/** "76.0", and small behind it "over the leather, bare last 72.0". */
const askedCell = ({ asked, where = [] }: FormRow): readonly Line[] => cell(asked).map((told): Line => ({
  ...told,
  ink: (ink, x, top) => {
    told.ink(ink, x, top);
    where.forEach((words, i) => ink.text(words, x + 9, top - baseOf(row) + (where.length - 1) * 1.1 - fine.stepMm * 0.85 * i, fine.heightMm));
  },
}));

interface FormRow {
  readonly name: string;
  readonly asked: string;
  /** Small behind it, line by line: where it is measured. */
  readonly where?: readonly string[];
  readonly mayDiffer: string;
}

/** Name, what is asked, two places to write, and room for the difference beside what it may be. */
function form(title: string, rows: readonly FormRow[], width: number): readonly Block[] {
  if (rows.length === 0) return [];
  const columns = columnsFor(width, [{ head: title }, { head: "Asked", mm: 34 }, { head: "Right", mm: 24 }, { head: "Left", mm: 24 }, { head: "Differ by", mm: 22 }, { head: "May differ", mm: 18 }]);
  const uprights = [1, 2, 3, 4, 5].map((c) => columns.slice(0, c).reduce((mm, column) => mm + column.mm, 0) - 1.5);
  const [head, ...drawn] = tableBlocks(columns, rows.map((r): readonly BookCell[] => [cell(r.name), askedCell(r), "", "", "", cell(r.mayDiffer)]), { gapMm: 4, whole: true });
  return [head!, ...drawn.map((block) => ({ ...block, keep: true, cells: [...block.cells, { x: 0, lines: [ruled(uprights)] }] })), { cells: [], ruleMm: 0.25 }];
}

/** Upright lines between the places to write. */
const ruled = (at: readonly number[]): Line => ({
  highMm: rowMm,
  ink: (ink, x, top) => {
    ink.style(0.18);
    for (const dx of at) ink.line(x + dx, top + 1, x + dx, top - rowMm - 0.5);
  },
});

function lastedRows(input: SheetInput, gauges: Gauges | undefined): readonly FormRow[] {
  const { throatDepthMm: throat, backHeightMm: back, innerHeightMm: side } = tolerances;
  const differ = (key: string): string => tolerance((key === "throat" ? throat : key === "back" ? back : side).mm);
  if (input.from === "tape") {
    const { throat: t, back: b, heights } = cardMarks(input.tape);
    return [t, b, ...heights.lateral, ...heights.medial].map((m) => ({ name: m.words, asked: halfMm(m.lengthMm), mayDiffer: differ(m.key) }));
  }
  if (!gauges) return [];
  const { overUpper } = gauges;
  return gauges.marks.filter((m) => "ABCDEF".includes(m.letter)).map((m) => {
    const bare = m.lengthMm === undefined ? "" : halfMm(m.lengthMm), over = overUpper && onShoe(m, overUpper);
    return { name: `${m.letter}  ${markName(m)}`, asked: over || bare, ...(overUpper && bare && { where: over ? ["over the leather,", `bare last ${bare}`] : ["bare last"] }), mayDiffer: differ(m.key) };
  });
}

function draftRows({ drafts }: Gauges, width: number): readonly Block[] {
  const rows = drafts.map((d) => ({ name: `${draftWord(d.number)}  ${d.name}`, asked: halfMm(d.upperMm), mayDiffer: tolerance(marginTolerance.mm) }));
  const least = `Less than ${leastMarginMm} mm of margin is too little to cement and to draft by hand.`;
  return [...form("Margin left under each draft, mm", rows, width), { cells: [{ x: 0, lines: lines(least, width, small) }], gapMm: 1 }];
}

function heelRows({ made }: SheetInput): readonly FormRow[] {
  const heel = tolerance(tolerances.heelHeightMm.mm), margin = tolerance(tolerances.soleMarginMm.mm);
  const asked = (mm: number | undefined): string => (mm === undefined ? "" : digits(Number(mm.toFixed(1))));
  return [
    { name: "Heel height at the back", asked: asked(made?.heel?.backMm), mayDiffer: heel },
    { name: "Heel height at the breast", asked: asked(made?.heel?.breastMm), mayDiffer: heel },
    { name: "Sole margin at the toe", asked: "", mayDiffer: margin },
    { name: "Sole margin at the joints", asked: "", mayDiffer: margin },
    { name: "Sole margin at the waist", asked: "", mayDiffer: margin },
  ];
}

/** What went into the pair, and lines for what to change. */
function factBlocks({ making }: SheetInput, width: number): readonly Block[] {
  const asked = making.needs.filter((n) => n.measure === "area").map((n) => `${capital(n.good)} used`);
  const named = [...asked.slice(0, 4), "Hours taken", "Date, and for whom"];
  const written = (told: string): Line => ({
    highMm: 9,
    ink: (ink, x, top) => {
      ink.text(told, x, top - 6.4, body.heightMm);
      ink.style(0.18);
      ink.line(x + 52, top - 7.2, x + width, top - 7.2);
    },
  });
  const empty: Line = { highMm: 9, ink: (ink, x, top) => (ink.style(0.18), ink.line(x, top - 7.2, x + width, top - 7.2)) };
  return [
    { cells: [{ x: 0, lines: named.map(written) }], gapMm: 5 },
    { cells: [{ x: 0, lines: [...lines("What to change next time", width, heading), ...Array.from({ length: 5 }, () => empty)] }], gapMm: 4 },
  ];
}

import { type Block, type Cell, type Line } from "./block.ts";
import { atRight, blank, body, lines, smallStrong, type Letters } from "./words.ts";

export interface BookColumn {
  readonly head: string;
  readonly mm: number;
  /** Numbers stand at the right of their column. */
  readonly right?: boolean;
  readonly letters?: Letters;
}

/** What stands in one place of a table: words, or lines of their own. */
export type BookCell = string | readonly Line[];

/** Blank between two columns of a table, mm. */
const betweenMm = 3;
/** Blank above a row's first line and below its last, mm: usual, and in a long table of numbers. */
const usualBlank = { underRuleMm: 1, afterMm: 0.5 };
const closeBlank = { underRuleMm: 0.45, afterMm: 0.1 };

/** From line to line in a close table, times the height of its capitals. */
const closeStep = 1.48;

export interface TableManner {
  readonly gapMm?: number;
  /** On one page. */
  readonly whole?: boolean;
  /** Rows close to one another. */
  readonly close?: boolean;
}

/** A table with one block a row; its head stands again on every page that it goes on to. No row stands alone. */
export function tableBlocks(columns: readonly BookColumn[], rows: readonly (readonly BookCell[])[], { gapMm = 0, whole = false, close = false }: TableManner = {}): readonly Block[] {
  const { underRuleMm, afterMm } = close ? closeBlank : usualBlank;
  const startOf = (c: number): number => columns.slice(0, c).reduce((mm, column) => mm + column.mm, 0);
  const written = (c: number, text: string, usual: Letters): readonly Line[] => {
    const { mm, right } = columns[c]!, letters = close ? { ...usual, stepMm: Math.min(usual.stepMm, closeStep * usual.heightMm) } : usual, width = mm - (c + 1 < columns.length ? betweenMm : 0);
    return right ? atRight(text, width, letters) : lines(text, width, letters);
  };
  const row = (cells: readonly BookCell[], letters: Letters | undefined): readonly Cell[] =>
    cells.map((cell, c) => ({ x: startOf(c), lines: typeof cell === "string" ? written(c, cell, letters ?? columns[c]!.letters ?? body) : cell }));
  const head: Block = { cells: row(columns.map((c) => c.head), smallStrong), ruleMm: 0.35, keep: true, gapMm };
  const blocks = rows.map((cells, r): Block => {
    const drawn = row(cells, undefined);
    const high = Math.max(0, ...drawn.map((cell) => cell.lines.reduce((mm, l) => mm + l.highMm, 0)));
    // A blank line takes the row's blank, so that lines below never touch the next rule.
    const room: Cell = { x: 0, lines: [blank(high + afterMm)] };
    return { cells: [...drawn, room], ruleMm: 0.18, underRuleMm, head: { ...head, gapMm: 0 }, keep: r + 1 < rows.length && (whole || r === 0 || r + 2 === rows.length) };
  });
  return rows.length === 0 ? [] : [head, ...blocks];
}

/** Words between the columns of a table as wide as `whole`: what is left over goes to the column that has none of its own. */
export function columnsFor(whole: number, columns: readonly (Omit<BookColumn, "mm"> & { readonly mm?: number })[]): readonly BookColumn[] {
  const taken = columns.reduce((mm, c) => mm + (c.mm ?? 0), 0), open = columns.filter((c) => c.mm === undefined).length;
  return columns.map((c) => ({ ...c, mm: c.mm ?? (whole - taken) / open }));
}

/** A box to tick, with a word behind it. */
export function tickBox(sizeMm: number, word = "", highMm = sizeMm + 1.4): Line {
  return {
    highMm,
    ink: (ink, x, top) => {
      ink.style(0.25);
      ink.box(x, top - sizeMm - 0.4, sizeMm, sizeMm);
      if (word) ink.text(word, x + sizeMm + 1.2, top - 0.4 - sizeMm / 2 - 1.2, 2.5, { bold: true });
    },
  };
}



import { shortenedTo } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";

export interface Column {
  readonly head: string;
  readonly mm: number;
  /** Numbers that are to be read at arm's length. */
  readonly bold?: boolean;
}

/** A ruled table with its upper left corner at (x, top); its first row names the columns. Returns where it ends. */
export function inkTable(ink: PageInk, columns: readonly Column[], rows: readonly (readonly string[])[], { x, top, rowMm }: { readonly x: number; readonly top: number; readonly rowMm: number }): number {
  const starts = columns.map((_, c) => x + columns.slice(0, c).reduce((sum, column) => sum + column.mm, 0));
  const right = starts[starts.length - 1]! + columns[columns.length - 1]!.mm;
  const inset = (c: number): number => (c === 0 ? 0 : 1);
  ink.style(0.25);
  ink.line(x, top, right, top);
  columns.forEach(({ head, mm }, c) => ink.text(shortenedTo(mm - inset(c), head, 1.8, true), starts[c]! + inset(c), top - rowMm / 2 - 0.8, 1.8, { bold: true }));
  rows.forEach((cells, r) => {
    const y = top - (r + 1) * rowMm;
    ink.style(r === 0 ? 0.25 : 0.18);
    ink.line(x, y, right, y);
    cells.forEach((text, c) => {
      const { mm, bold = false } = columns[c]!;
      const high = bold ? 2.5 : 2.2;
      if (text) ink.text(shortenedTo(mm - inset(c), text, high, bold), starts[c]! + inset(c), y - rowMm / 2 - 0.9, high, { bold });
    });
  });
  const end = top - (rows.length + 1) * rowMm;
  ink.style(0.25);
  ink.line(x, end, right, end);
  ink.style(0.18);
  for (const start of starts.slice(1)) ink.line(start, top, start, end);
  return end;
}

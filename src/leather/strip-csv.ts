// Readings of strips as rows of text, as a spreadsheet saves them. The form is told in docs/guide/leather.md.
import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { cellsOf, isNoText, isTold, linesOf, separatorOf } from "#base/table-rows.ts";
import type { Strip, StripReading, StripWay } from "./leather.ts";
import type { StripColumn, WhereOf } from "./strip-check.ts";
import { columnsOf, type Columns } from "./strip-csv-header.ts";
import { forceUnitNamed, forceUnits, lengthUnitNamed, lengthUnits, wayNamed, type ForceUnit } from "./strip-csv-units.ts";

export interface StripsRead {
  readonly strips: readonly Strip[];
  /** What was left out and why, by row and column. */
  readonly findings: readonly Finding[];
  /** Where in the text a strip and its readings stand: for what is found about them later. */
  readonly where: WhereOf;
}

/** As many as a job can hold. */
const most = { strips: 60, readings: 60 } as const;

/** What the rows of one strip share; a blank cell means the same as in the row above. */
interface Head {
  readonly row: number;
  readonly label: string;
  readonly way: StripWay | undefined;
  readonly widthMm: number | undefined;
  readonly gaugeMm: number | undefined;
}
interface Growing {
  readonly head: Head;
  readonly rows: number[];
  readonly readings: StripReading[];
}

/**
 * Strips out of rows parted by commas, semicolons or tabs, under a row that names the columns. Lines that begin with # are passed over; an
 * empty line begins a new strip. A row that cannot be read is left out and told.
 * @throws Refusal `strips-no-rows`, `strips-no-header`, `strips-not-text`, `strips-too-many`
 */
export function readStripCsv(text: string): StripsRead {
  if (isNoText(text)) throw new Refusal(finding("strips-not-text", {}));
  const lines = linesOf(text);
  const headed = lines.findIndex(isTold);
  if (headed < 0) throw new Refusal(finding("strips-no-rows", {}));
  const separator = separatorOf(lines[headed]!);
  const columns = columnsOf(cellsOf(lines[headed]!, separator));
  const findings: Finding[] = [];
  const grown: Growing[] = [];
  let above: Head = { row: 0, label: "", way: undefined, widthMm: undefined, gaugeMm: undefined };
  let fresh = true;
  for (let i = headed + 1; i < lines.length; i++) {
    const line = lines[i]!;
    if (line.trim().replaceAll(separator, "") === "") fresh = true;
    if (!isTold(line) || line.trim().replaceAll(separator, "") === "") continue;
    const wrong: Finding[] = [];
    const cells = new Row(cellsOf(line, separator), i + 1, { ...columns, separator }, wrong);
    const head = headOf(cells, above);
    const reading = readingOf(cells);
    const spilt = cells.spilt(wrong.length > 0);
    findings.push(...(spilt ? [spilt] : wrong));
    // Nothing that stands in a spilt row can be meant for the rows below.
    above = spilt ? { ...head, way: undefined, widthMm: undefined, gaugeMm: undefined } : head;
    if (spilt || !reading || head.way === undefined || head.widthMm === undefined || head.gaugeMm === undefined) continue;
    if (fresh || !same(grown.at(-1)!.head, head)) grown.push({ head, rows: [], readings: [] });
    fresh = false;
    grown.at(-1)!.rows.push(i + 1);
    grown.at(-1)!.readings.push(reading);
  }
  const { strips, rows } = gathered(grown);
  if (strips.length === 0 && findings.length === 0) throw new Refusal(finding("strips-no-rows", {}));
  if (strips.length > most.strips || strips.some((s) => s.readings.length > most.readings)) throw new Refusal(finding("strips-too-many", most));
  return { strips, findings, where: whereIn(rows, columns) };
}

const same = (a: Head, b: Head): boolean => a.label === b.label && a.way === b.way && a.widthMm === b.widthMm && a.gaugeMm === b.gaugeMm;

interface ParsedColumns extends Columns {
  /** What cells are parted by. */
  readonly separator: string;
}
interface Measured {
  readonly value: number;
  /** What stands behind the number. */
  readonly unit: string;
}

/** One row; what is wrong with a cell goes to the findings with its row and column. */
class Row {
  readonly #cells: readonly string[];
  readonly row: number;
  readonly #columns: ParsedColumns;
  readonly #findings: Finding[];

  constructor(cells: readonly string[], row: number, columns: ParsedColumns, findings: Finding[]) {
    this.#cells = cells;
    this.row = row;
    this.#columns = columns;
    this.#findings = findings;
  }

  /** The cell's text; empty where the column or the cell is not there. */
  text(key: keyof Columns["at"]): string {
    const at = this.#columns.at[key];
    return at === undefined ? "" : (this.#cells[at] ?? "");
  }

  /** More cells than columns: mostly decimal commas between commas, so that every number is another. An unread row shows it by a number for a unit too. */
  spilt(unread: boolean): Finding | undefined {
    const columns = this.#columns.names.length, cells = this.#cells.length, commas = this.#columns.separator === ",";
    const over = this.#cells.slice(columns).some((cell) => cell !== "");
    const shifted = unread && commas && (cells > columns || /^\d+$/.test(this.text("unit")));
    return over || shifted ? finding("strip-row-spilt", { row: this.row, cells, columns, commas }) : undefined;
  }

  /** The number of a cell, above 0, and the word behind it; undefined, and told, where it is none or the word is no unit. */
  number(key: keyof Columns["at"], isUnit: (word: string) => boolean): Measured | undefined {
    const got = this.text(key), where = this.where(key);
    const [, number, unit = ""] = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*([a-z]*)$/i.exec(got) ?? [];
    if (got === "") return this.wrong(finding("strip-cell-empty", { where }));
    if (number === undefined || (unit !== "" && !isUnit(unit))) return this.wrong(finding("strip-cell-number", { where, got, commas: this.#columns.separator === "," }));
    const value = Number(number.replace(",", "."));
    return value > 0 ? { value, unit } : this.wrong(finding("strip-cell-zero", { where, got }));
  }

  wrong(told: Finding): undefined {
    this.#findings.push(told);
    return undefined;
  }

  where(key: keyof Columns["at"]): string {
    return placeOf(this.row, this.#columns, key);
  }

  lengthMm(key: "width" | "between" | "length" | "after"): number | undefined {
    const read = this.number(key, (word) => lengthUnitNamed(word) !== undefined);
    return read && read.value * lengthUnits[lengthUnitNamed(read.unit) ?? this.#columns.lengthUnit[key] ?? "mm"];
  }

  /** The load in N. A unit behind the number counts before the one in the column's name, and may not gainsay the one in its own row. */
  loadN(): number | undefined {
    const read = this.number("load", (word) => forceUnitNamed(word) !== undefined);
    const own = read && forceUnitNamed(read.unit), beside = this.text("unit");
    const unit = own ?? this.#unitBeside();
    if (!read || !unit) return undefined;
    if (own && beside !== "" && forceUnitNamed(beside) !== own) return this.wrong(finding("strip-cell-units", { where: this.where("load"), got: this.text("load"), unit: beside }));
    return read.value * forceUnits[unit];
  }

  #unitBeside(): ForceUnit | undefined {
    const word = this.#columns.loadUnit ?? this.text("unit");
    return forceUnitNamed(word) ?? this.wrong(finding("strip-cell-unit", { where: this.where("unit"), got: word }));
  }
}

function headOf(row: Row, above: Head): Head {
  const kept = <T>(key: "way" | "width" | "between", before: T | undefined, read: () => T | undefined): T | undefined => {
    if (row.text(key) !== "" || above.row === 0) return read();
    return before ?? row.wrong(finding("strip-cell-above", { where: row.where(key), row: above.row }));
  };
  const word = row.text("way");
  const way = kept("way", above.way, () => wayNamed(word) ?? row.wrong(finding("strip-cell-way", { where: row.where("way"), got: word })));
  const widthMm = kept("width", above.widthMm, () => row.lengthMm("width"));
  const gaugeMm = kept("between", above.gaugeMm, () => row.lengthMm("between"));
  return { row: row.row, label: row.text("strip") || above.label, way, widthMm, gaugeMm };
}

function readingOf(row: Row): StripReading | undefined {
  const loadN = row.loadN();
  const lengthMm = row.lengthMm("length");
  const afterMm = row.text("after") === "" ? undefined : row.lengthMm("after");
  if (loadN === undefined || lengthMm === undefined || (afterMm === undefined && row.text("after") !== "")) return undefined;
  return { loadN, lengthMm, ...(afterMm === undefined ? {} : { afterMm }) };
}

/** Rows that name the same strip are put together, wherever they stand; rows without a name only where they follow each other. */
function gathered(grown: readonly Growing[]): { readonly strips: readonly Strip[]; readonly rows: readonly (readonly number[])[] } {
  const joined: Growing[] = [];
  for (const part of grown) {
    const before = part.head.label === "" ? undefined : joined.find((other) => same(other.head, part.head));
    if (before) {
      before.rows.push(...part.rows);
      before.readings.push(...part.readings);
    } else joined.push(part);
  }
  const strips = joined.map(({ head, readings }): Strip => ({ way: head.way!, widthMm: head.widthMm!, gaugeMm: head.gaugeMm!, readings }));
  return { strips, rows: joined.map(({ rows }) => rows) };
}

const placeOf = (row: number, columns: Columns, key: keyof Columns["at"]): string => {
  const at = columns.at[key];
  return at === undefined ? `Row ${row}` : `Row ${row}, column "${columns.names[at]!}"`;
};

function whereIn(rows: readonly (readonly number[])[], columns: Columns): WhereOf {
  return (strip: number, reading?: number, column?: StripColumn) => {
    const row = rows[strip]?.[reading ?? 0] ?? 0;
    return column === undefined ? `Row ${row}` : placeOf(row, columns, column);
  };
}

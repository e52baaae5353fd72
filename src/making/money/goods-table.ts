// What tables of prices and of the shelf share: rows of which each speaks of one good.
import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { cellsOf, isNoText, isTold, linesOf, separatorOf } from "#base/table-rows.ts";
import type { GoodId } from "../goods.ts";
import { goodMeant } from "./good-meant.ts";
import { goodNamed } from "./said-goods.ts";

/** Far more than there are goods; letters as a job holds them. */
export const tableLimits = { rows: 500, letters: 60 } as const;

export interface TableForm<C extends string> {
  readonly table: "prices" | "shelf";
  /** In the order in which they stand where no row names them; what it is comes first. */
  readonly columns: readonly ["what", ...C[]];
  /** The columns that a row with names may not lack. */
  readonly needed: readonly C[];
}

export interface GoodsRow<C extends string> {
  /** Counted from 1, with all lines of the text. */
  readonly row: number;
  readonly good: GoodId;
  /** As written; empty where there is none. */
  readonly cells: Readonly<Record<C, string>>;
}

/**
 * The rows of a table, the last of each good. A row that names the columns may stand first. Lines that begin with # are passed over; rows
 * that cannot be used are left out and told.
 * @param file its name, for what is told
 * @throws Refusal `table-not-text`, `table-too-long`
 */
export function readGoodsTable<C extends string>(text: string, form: TableForm<C>, file?: string): { readonly rows: readonly GoodsRow<C>[]; readonly findings: readonly Finding[] } {
  const { table } = form;
  if (isNoText(text)) throw new Refusal(finding("table-not-text", { table, file }));
  const lines = linesOf(text), first = lines.findIndex(isTold);
  if (first < 0) return { rows: [], findings: [finding("table-empty", { table, file })] };
  if (lines.filter(isTold).length > tableLimits.rows + 1) throw new Refusal(finding("table-too-long", { table, file, rows: tableLimits.rows }));
  const separator = separatorOf(lines[first]!);
  const named = columnsNamed(cellsOf(lines[first]!, separator), form);
  const missing = named ? ["what" as const, ...form.needed].filter((column) => !named.includes(column)) : [];
  if (missing.length > 0) return { rows: [], findings: [finding("table-no-column", { table, file, missing })] };
  const findings: Finding[] = [], rows = new Map<GoodId, GoodsRow<C>>();
  for (let i = named ? first + 1 : first; i < lines.length; i++) {
    if (!isTold(lines[i]!) || lines[i]!.replaceAll(separator, "").trim() === "") continue;
    const read = rowOf(cellsOf(lines[i]!, separator), { row: i + 1, columns: named ?? form.columns, commas: separator === ",", file });
    if ("code" in read) findings.push(read);
    else {
      const before = rows.get(read.good)?.row;
      if (before !== undefined) findings.push(finding("table-row-twice", { file, row: read.row, before, good: read.good }));
      rows.set(read.good, read);
    }
  }
  if (rows.size === 0 && findings.length === 0) findings.push(finding("table-empty", { table, file }));
  return { rows: [...rows.values()], findings };
}

/** What the cells of the first row name, undefined for what is not ours; nothing where the row is one of goods. */
function columnsNamed<C extends string>(cells: readonly string[], { columns }: TableForm<C>): readonly ("what" | C | undefined)[] | undefined {
  const named = cells.map((cell) => columns.find((column) => column === cell.toLowerCase().split(/[^\p{L}]/u)[0]));
  const words = cells.length > 1 && cells.every((cell) => /^\p{L}/u.test(cell)) && goodNamed(cells[0]!) === undefined;
  return words || named.some((column) => column !== undefined) ? named : undefined;
}

interface RowPlace<C extends string> {
  readonly row: number;
  readonly columns: readonly ("what" | C | undefined)[];
  readonly commas: boolean;
  readonly file: string | undefined;
}

function rowOf<C extends string>(cells: readonly string[], { row, columns, commas, file }: RowPlace<C>): GoodsRow<C> | Finding {
  const texts = Object.fromEntries(columns.map((column, i) => [column ?? "", cells[i] ?? ""])) as Record<"what" | C, string>;
  const good = goodNamed(texts.what);
  if (cells.slice(columns.length).some((cell) => cell !== "") || (commas && isSplit(cells))) return finding("table-row-spilt", { file, row, commas });
  if (cells.some((cell) => cell.length > tableLimits.letters)) return finding("table-row-long", { file, row, most: tableLimits.letters });
  return good === undefined ? finding("table-row-good", { file, row, name: texts.what, ...goodMeant(texts.what) }) : { row, good, cells: texts };
}

/**
 * "upper leather,12,50,1 ft2", "shanks,€1,60": a decimal comma made two cells of one number. Of what is counted the second may be an amount too,
 * but nobody can tell, so a unit has to stand behind it.
 */
const isSplit = (cells: readonly string[]): boolean => cells.slice(1).some((cell, i) => /^[^\d.,]*\d[\d\s'’]*$/u.test(cell) && /^\d{1,2}$/.test(cells[i + 2] ?? ""));

import { finding, type Finding } from "#base/findings.ts";
import { measureOf } from "../amounts/good-measures.ts";
import type { GoodId } from "../goods.ts";
import { readGoodsTable, type GoodsRow, type TableForm } from "./goods-table.ts";
import { readMoney } from "./read-money.ts";
import type { MakingSaid, PriceSaid } from "../said.ts";
import { readAmount } from "../amounts/units.ts";

export const priceForm: TableForm<"price" | "for" | "size"> = { table: "prices", columns: ["what", "price", "for", "size"], needed: ["price"] };

export interface PricesRead {
  /** As written, by good. */
  readonly prices: NonNullable<MakingSaid["prices"]>;
  /** Sizes of one skin, sheet, spool or tin, as written; empty where the table has none. */
  readonly skins: NonNullable<MakingSaid["skins"]>;
  /** What was left out and why, by row. */
  readonly findings: readonly Finding[];
}

/**
 * Prices out of a table: what,price,for and, where wished, size. The form is told in docs/guide/what-to-buy-and-what-it-costs.md.
 * @param file its name, for what is told
 * @throws Refusal `table-not-text`, `table-too-long`
 */
export function readPriceTable(text: string, file?: string): PricesRead {
  const read = readGoodsTable(text, priceForm, file);
  const prices: Partial<Record<GoodId, PriceSaid>> = {}, skins: Partial<Record<GoodId, string>> = {};
  const findings = [...read.findings], blank: number[] = [];
  for (const one of read.rows) {
    const { row, good, cells } = one;
    const wrong = wrongIn(one, file);
    if (wrong) findings.push(wrong);
    else {
      if (cells.price) prices[good] = { price: cells.price, ...(cells.for && { for: cells.for }) };
      else blank.push(row);
      if (cells.size) skins[good] = cells.size;
    }
  }
  if (blank.length > 0) findings.push(finding("table-rows-blank", { file, rows: blank }));
  return { prices: prices as PricesRead["prices"], skins: skins as PricesRead["skins"], findings };
}

/** The first thing that is wrong in a row; empty cells say nothing. */
function wrongIn({ row, good, cells }: GoodsRow<"price" | "for" | "size">, file: string | undefined): Finding | undefined {
  const money = cells.price ? readMoney(cells.price) : undefined;
  if (money?.wrong !== undefined) return finding("table-row-price", { file, row, good, got: cells.price, wrong: money.wrong });
  for (const column of ["for", "size"] as const) {
    const amount = cells[column] ? readAmount(cells[column], measureOf[good]) : undefined;
    const wrong = amount && ("wrong" in amount ? amount.wrong : amount.value === 0 ? `"${cells[column]}" is nothing; write how much it is` : undefined);
    if (wrong !== undefined) return finding("table-row-amount", { file, row, good, column, wrong });
  }
  return undefined;
}

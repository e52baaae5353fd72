import { finding, type Finding } from "#base/findings.ts";
import { measureOf } from "../amounts/good-measures.ts";
import type { GoodId } from "../goods.ts";
import { readGoodsTable, type TableForm } from "./goods-table.ts";
import type { MakingSaid } from "../said.ts";
import { readAmount } from "../amounts/units.ts";

export const shelfForm: TableForm<"amount"> = { table: "shelf", columns: ["what", "amount"], needed: ["amount"] };

export interface ShelfRead {
  /** As written, by good. */
  readonly shelf: NonNullable<MakingSaid["shelf"]>;
  /** What was left out and why, by row. */
  readonly findings: readonly Finding[];
}

/**
 * What lies on the shelf, out of a table: what,amount. A good without an amount is not there. The form is told in
 * docs/guide/what-to-buy-and-what-it-costs.md.
 * @param file its name, for what is told
 * @throws Refusal `table-not-text`, `table-too-long`
 */
export function readShelfTable(text: string, file?: string): ShelfRead {
  const read = readGoodsTable(text, shelfForm, file);
  const shelf: Partial<Record<GoodId, string>> = {}, findings = [...read.findings];
  for (const { row, good, cells } of read.rows) {
    const amount = cells.amount ? readAmount(cells.amount, measureOf[good]) : undefined;
    if (amount && "wrong" in amount) findings.push(finding("table-row-amount", { file, row, good, column: "amount", wrong: amount.wrong }));
    else if (amount) shelf[good] = cells.amount;
  }
  return { shelf: shelf as ShelfRead["shelf"], findings };
}

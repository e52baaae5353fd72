import type { Finding } from "#base/findings.ts";
import { measureOf } from "../amounts/good-measures.ts";
import type { GoodId } from "../goods.ts";
import { saidAmount, type SaidAmount } from "./said-amount.ts";
import { saidByGood } from "./said-goods.ts";
import type { MakingSaid } from "../said.ts";

/** What lies on the shelf, by good. An empty field says that nothing does. */
export function readShelf(shelf: MakingSaid["shelf"], findings: Finding[]): ReadonlyMap<GoodId, SaidAmount> {
  const read = new Map<GoodId, SaidAmount>();
  for (const [good, written] of saidByGood(shelf, "shelf", findings)) {
    const amount = String(written).trim() === "" ? undefined : saidAmount(written, { field: "shelf", good, measure: measureOf[good], mayBeNone: true }, findings);
    if (amount) read.set(good, amount);
  }
  return read;
}

/** How large one skin, sheet, spool or tin is, by good. What is wrong with sizes of skins and sheets is told where waste is estimated from them (skins.ts). */
export function readSizes(skins: MakingSaid["skins"], findings: Finding[]): ReadonlyMap<GoodId, SaidAmount> {
  const read = new Map<GoodId, SaidAmount>();
  for (const [good, written] of saidByGood(skins, "size", [])) {
    const amount = String(written).trim() === "" ? undefined : saidAmount(written, { field: "size", good, measure: measureOf[good] }, measureOf[good] === "area" ? [] : findings);
    if (amount) read.set(good, amount);
  }
  return read;
}

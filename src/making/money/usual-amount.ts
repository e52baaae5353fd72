import { skinGoods } from "./cost-parts.ts";
import type { GoodId, Measure } from "../goods.ts";
import type { SaidAmount } from "./said-amount.ts";
import { ofUnit } from "../amounts/units.ts";

const leathers: readonly GoodId[] = [...skinGoods, "sole leather", "lift leather", "top piece leather"];

/**
 * What a price is for where the maker does not say: a square foot of leather, a square metre of sheet, a metre of tape, a pair of shanks or buckles
 * (common practice, no source). A stiffener or puff may be either, `ofLeather` says so. What is sold in spools, tins and packs of any size has no usual amount.
 */
export function usualAmount(good: GoodId, measure: Measure, ofLeather = false): SaidAmount | undefined {
  if (measure === "area") return ofLeather || leathers.includes(good) ? { amount: ofUnit(1, "ft2"), words: "1 ft²" } : { amount: ofUnit(1, "m2"), words: "1 m²" };
  if (measure === "length" && good !== "thread") return { amount: ofUnit(1, "m"), words: "1 m" };
  return good === "shanks" || good === "fastenings" ? { amount: ofUnit(1, "pair"), words: "1 pair" } : undefined;
}

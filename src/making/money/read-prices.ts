import { finding, type Finding } from "#base/findings.ts";
import { sameCurrency } from "./currencies.ts";
import { measureOf } from "../amounts/good-measures.ts";
import type { GoodId } from "../goods.ts";
import { readMoney } from "./read-money.ts";
import { saidAmount, type SaidAmount } from "./said-amount.ts";
import { saidByGood } from "./said-goods.ts";
import type { MakingSaid, PriceSaid } from "../said.ts";
import { usualAmount } from "./usual-amount.ts";

/** A price as it was read. */
export interface Price {
  readonly price: number;
  /** The amount it is for. */
  readonly per: SaidAmount;
  /** Of the unit of the good's measure: money for mm², mm, mm³, g or piece. */
  readonly each: number;
}

export interface Prices {
  readonly of: ReadonlyMap<GoodId, Price>;
  /** The maker's word for her money, or the first that stands beside a price. */
  readonly currency: string;
}

/**
 * All prices, also of goods this very pair does not need: they are kept for other pairs.
 * @param ofLeather goods that this pair has of leather, and another of sheet
 */
export function readPrices(said: MakingSaid, findings: Finding[], ofLeather: readonly GoodId[] = []): Prices {
  const written = saidByGood(said.prices, "price", findings);
  const own = said.currency?.trim() ?? "";
  const of = new Map<GoodId, Price>(), assumed: { readonly good: GoodId; readonly words: string }[] = [], signs: { readonly good: GoodId; readonly sign: string }[] = [];
  for (const [good, one] of written) {
    const money = readMoney(one.price, own), measure = measureOf[good];
    if (money.wrong !== undefined) findings.push(finding("money-number", { field: "price", good, got: String(one.price).trim(), wrong: money.wrong }));
    else if (money.currency !== "") signs.push({ good, sign: money.currency });
    const per = amountOf(one, () => usualAmount(good, measure, ofLeather.includes(good)), (text) => saidAmount(text, { field: "for", good, measure }, findings));
    // What cannot be read as a price is told already.
    if (money.wrong !== undefined || per === "wrong") continue;
    if (per === undefined) findings.push(finding("money-for-missing", { good }));
    else {
      if (!isSaid(one.for)) assumed.push({ good, words: per.words });
      of.set(good, { price: money.value, per, each: money.value / per.amount });
    }
  }
  if (assumed.length > 0) findings.push(finding("money-usual", { assumed }));
  const free = [...of].filter(([, { price }]) => price === 0).map(([good]) => good);
  if (free.length > 0) findings.push(finding("money-free", { goods: free }));
  return { of, currency: currencyOf(own, signs, findings) };
}

const isSaid = (text: string | undefined): text is string => text !== undefined && text.trim() !== "";

/** What a price is for: as written, or the usual amount; nothing where there is none, "wrong" where it was told. */
function amountOf(price: PriceSaid, usual: () => SaidAmount | undefined, read: (text: string) => SaidAmount | undefined): SaidAmount | "wrong" | undefined {
  return isSaid(price.for) ? (read(price.for) ?? "wrong") : usual();
}

/** Money is not changed from one kind into another: prices in other money are told, and counted as the numbers they are. */
function currencyOf(own: string, signs: readonly { readonly good: GoodId; readonly sign: string }[], findings: Finding[]): string {
  const currency = own !== "" ? own : (signs[0]?.sign ?? "");
  for (const { sign, good } of signs) if (!sameCurrency(sign, currency)) findings.push(finding("money-currency", { good, got: sign, currency }));
  return currency;
}

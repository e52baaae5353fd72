import type { ToBuy } from "./cost.ts";
import { skinGoods } from "./cost-parts.ts";
import { decimal } from "../amounts/decimal.ts";
import { goodAmount } from "../amounts/good-amounts.ts";
import type { GoodId } from "../goods.ts";
import type { Need } from "../need.ts";
import { socksOutOfLining } from "./out-of-lining.ts";
import { packOf, packWords } from "./packs.ts";
import type { Price } from "./read-prices.ts";
import type { SaidAmount } from "./said-amount.ts";

export interface BuyingInput {
  readonly needs: readonly Need[];
  readonly pairs: number;
  readonly prices: ReadonlyMap<GoodId, Price>;
  readonly shelf: ReadonlyMap<GoodId, SaidAmount>;
  /** Size of one skin, sheet, spool or tin as it is bought. */
  readonly sizes: ReadonlyMap<GoodId, SaidAmount>;
}

/** What has to be bought of each good for all pairs, in the order of the needs. */
export function toBuyOf({ needs, pairs, prices, shelf, sizes }: BuyingInput): readonly ToBuy[] {
  const alone = needs.map((need): ToBuy => {
    const { good, gross, again, atOnce = 1, spare = 0 } = need, price = prices.get(good);
    // What is used again is bought for the pairs that use it at once, what is kept in hand only once.
    const needed = decimal((again ? atOnce : pairs) * gross + spare), onShelf = shelf.get(good)?.amount ?? 0;
    const short = Math.max(0, decimal(needed - onShelf));
    const pack = packOf(need, price, sizes.get(good));
    const count = pack && Math.ceil(decimal(short / pack.amount));
    const bought = pack ? decimal(count! * pack.amount) : short;
    const caution = shelfCaution(need, onShelf, short);
    return {
      good, needed, onShelf, short,
      ...(pack && { whole: { count: count!, each: pack.amount, words: packWords(need, count!, pack) } }),
      left: decimal(onShelf + bought - needed),
      ...(price && { paid: decimal(bought * price.each) }),
      ...(caution !== undefined && { caution }),
    };
  });
  return socksOutOfLining(alone);
}

/** Scraps that together are large enough by area may hold no pair; none where the shelf holds all or nothing. */
function shelfCaution({ good, measure, gross, holds }: Need, onShelf: number, short: number): string | undefined {
  if (!skinGoods.includes(good) || onShelf <= 0 || short <= 0) return undefined;
  const room = holds && `${holds.count > 1 ? `${holds.count} pieces of ` : ""}${Math.ceil(holds.longMm)} × ${Math.ceil(holds.wideMm)} mm${holds.count > 1 ? " side by side" : ""}`;
  return `Your shelf is taken off by its area alone. ${room ? `A pair needs room for ${room}` : "A pair is cut from one skin"}: what does not hold a pair does not count, and then each pair takes ${goodAmount(good, gross, measure)}.`;
}

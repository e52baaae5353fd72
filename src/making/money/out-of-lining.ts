import { decimal } from "../amounts/decimal.ts";
import type { ToBuy } from "./cost.ts";
import type { Price, Prices } from "./read-prices.ts";

/** The list with the socks cut out of what the lining's skins leave over, where that is enough for all of them; only whole skins leave over anything. */
export function socksOutOfLining(toBuy: readonly ToBuy[]): readonly ToBuy[] {
  const lining = toBuy.find(({ good }) => good === "lining leather"), sock = toBuy.find(({ good }) => good === "sock leather");
  if (!lining?.whole || lining.whole.count === 0 || !sock || sock.short <= 0 || lining.left < sock.short) return toBuy;
  const { whole: _, ...rest } = sock, amount = sock.short;
  return toBuy.map((one) => {
    if (one === lining) return { ...one, left: decimal(one.left - amount) };
    return one === sock ? { ...rest, short: 0, left: 0, paid: 0, outOf: { good: "lining leather", amount } } : one;
  });
}

/** "out of the lining's skin". */
export const outOfWords = ({ good }: NonNullable<ToBuy["outOf"]>): string => `out of the ${good.replace(/ leather$/, "")}'s skin`;

/** Prices by which a pair's cost is reckoned: socks out of the lining's skin cost what the lining does, where no price of their own is said. */
export function pricesBorne(prices: Prices, toBuy: readonly ToBuy[]): Prices {
  const borne: [ToBuy["good"], Price][] = toBuy.flatMap(({ good, outOf }): [ToBuy["good"], Price][] => {
    const price = outOf && prices.of.get(outOf.good);
    return price && !prices.of.has(good) ? [[good, price]] : [];
  });
  return borne.length === 0 ? prices : { ...prices, of: new Map([...prices.of, ...borne]) };
}

import { finding, type Finding } from "#base/findings.ts";
import type { Cost, ToBuy } from "./cost.ts";
import { costPerPair } from "./cost-per-pair.ts";
import { moneyWords } from "../amounts/decimal.ts";
import type { Need } from "../need.ts";
import { pricesBorne } from "./out-of-lining.ts";
import { checkSizes } from "./packs.ts";
import { readPairs } from "./read-pairs.ts";
import { readPrices } from "./read-prices.ts";
import { readShelf, readSizes } from "./said-amounts.ts";
import { readSums } from "./said-sums.ts";
import type { MakingSaid } from "../said.ts";
import { stepMinutes } from "../calendar/step-minutes.ts";
import type { Step } from "../steps/step.ts";
import { toBuyOf } from "./to-buy.ts";
import { uncountedOf } from "./uncounted.ts";

export interface MoneyInput {
  /** For one pair. */
  readonly needs: readonly Need[];
  readonly steps: readonly Step[];
  readonly said: MakingSaid;
}

export interface Money {
  readonly pairs: number;
  /** For all pairs, in the order of the needs. */
  readonly toBuy: readonly ToBuy[];
  /** For one pair. */
  readonly cost: Cost;
  readonly findings: readonly Finding[];
}

/**
 * What has to be bought for all pairs, and what one pair costs. What cannot be read in a field is told in a finding and left out; the rest
 * is reckoned with. Formulas: docs/method/cost.md.
 */
export function moneyOf({ needs, steps, said }: MoneyInput): Money {
  const findings: Finding[] = [];
  const pairs = readPairs(said.pairs, findings);
  const prices = readPrices(said, findings, needs.filter(({ ofLeather }) => ofLeather).map(({ good }) => good));
  const sizes = readSizes(said.skins, findings);
  const shelf = readShelf(said.shelf, findings);
  const sums = readSums(said, prices.currency, findings);
  const minutes = stepMinutes(steps, said.minutes);
  checkSizes(needs, sizes, findings);
  const toBuy = toBuyOf({ needs, pairs, prices: prices.of, shelf, sizes });
  const uncounted = uncountedOf(needs, steps);
  if (uncounted.length > 0) findings.push(finding("goods-uncounted", { goods: uncounted }));
  const cost = costPerPair({ needs, pairs, minutes: minutes.byPhase, prices: pricesBorne(prices, toBuy), sums, toBuy, uncounted });
  const pieces = toBuy.filter(({ caution }) => caution !== undefined).map(({ good }) => good);
  if (pieces.length > 0) findings.push(finding("money-shelf-pieces", { goods: pieces }));
  return { pairs, toBuy, cost, findings: [...findings, ...minutes.findings, ...judged(cost, needs.some(({ good }) => prices.of.has(good)))] };
}

/** What the sums leave out, and whether what is asked covers them. Said only to those who reckon with money here. */
function judged({ currency, unpriced, uncounted, rate, total, asked, left }: Cost, priced: boolean): Finding[] {
  const work = rate === undefined, told: Finding[] = [];
  if ((priced || asked !== undefined) && (unpriced.length > 0 || uncounted.length > 0 || work)) told.push(finding("money-left-out", { goods: unpriced, uncounted, work }));
  if (left !== undefined && left < 0) told.push(finding("money-asked-below", { asked: moneyWords(asked!, currency), total: moneyWords(total, currency), short: moneyWords(-left, currency) }));
  return told;
}

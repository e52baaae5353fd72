import { partOfGood, skinGoods } from "./cost-parts.ts";
import { costParts, type Cost, type CostLine, type CostPart, type ToBuy } from "./cost.ts";
import { decimal } from "../amounts/decimal.ts";
import type { GoodId } from "../goods.ts";
import type { Need } from "../need.ts";
import type { Prices } from "./read-prices.ts";
import type { SaidSums } from "./said-sums.ts";
import type { StepMinutes } from "../calendar/step-minutes.ts";

export interface CostInput {
  readonly needs: readonly Need[];
  readonly pairs: number;
  readonly minutes: StepMinutes["byPhase"];
  readonly prices: Prices;
  readonly sums: SaidSums;
  readonly toBuy: readonly ToBuy[];
  readonly uncounted: readonly GoodId[];
}

/** By how much skins are taken to be dearer. */
const dearer = 0.1;

/** What one pair costs: what it uses of each good, the work by phase, and the overhead. */
export function costPerPair({ needs, pairs, minutes: byPhase, prices, sums: { rate, overhead = 0, asked }, toBuy, uncounted }: CostInput): Cost {
  const lines = needs.map(({ good, gross, again, atOnce = 1 }): CostLine => {
    // What is bought once for all pairs is borne by all of them.
    const price = prices.of.get(good), borne = again ? (atOnce * gross) / pairs : gross;
    return { good, part: partOfGood[good], amount: gross, ...(price && { cost: decimal(borne * price.each) }) };
  });
  // A pattern is made once for all pairs, as in the calendar.
  const work = byPhase.map(({ phase, minutes: alone }) => {
    const minutes = decimal(phase === "pattern" ? alone / pairs : alone);
    return { phase, minutes, ...(rate !== undefined && { cost: decimal((minutes * rate) / 60) }) };
  });
  const material = sumOf(lines), workCost = sumOf(work), minutes = decimal(work.reduce((sum, one) => sum + one.minutes, 0));
  const total = decimal(material + workCost + overhead);
  return {
    currency: prices.currency,
    lines, unpriced: lines.filter(({ cost }) => cost === undefined).map(({ good }) => good), uncounted, material,
    reused: sumOf(lines.filter(({ good }) => needs.some((need) => need.good === good && need.again))),
    work, minutes, ...(rate !== undefined && { rate }), workCost, overhead, total,
    shares: sharesOf(lines, workCost, overhead),
    shopping: decimal(toBuy.reduce((sum, { paid = 0 }) => sum + paid, 0)),
    ...(asked !== undefined && { asked, left: decimal(asked - total), ...(minutes > 0 && { anHour: decimal((60 * (asked - material - overhead)) / minutes) }) }),
    skinsDearer: skinsDearer(lines, total, asked),
  };
}

const sumOf = (lines: readonly { readonly cost?: number }[]): number => decimal(lines.reduce((sum, { cost = 0 }) => sum + cost, 0));

/** Parts that cost something, the dearest first; of equal ones the earlier part. */
function sharesOf(lines: readonly CostLine[], workCost: number, overhead: number): Cost["shares"] {
  const costOf = (part: CostPart): number => (part === "work" ? workCost : part === "overhead" ? overhead : sumOf(lines.filter((line) => line.part === part)));
  const parts = costParts.map((part) => ({ part, cost: costOf(part) })).filter(({ cost }) => cost > 0);
  const whole = parts.reduce((sum, { cost }) => sum + cost, 0);
  return parts.map(({ part, cost }) => ({ part, cost, share: cost / whole })).sort((a, b) => b.cost - a.cost);
}

function skinsDearer(lines: readonly CostLine[], total: number, asked: number | undefined): Cost["skinsDearer"] {
  const skins = lines.filter(({ good, cost }) => skinGoods.includes(good) && cost !== undefined);
  const more = decimal(dearer * sumOf(skins));
  return { more, total: decimal(total + more), ...(asked !== undefined && { asked: decimal(asked + more) }), goods: skins.map(({ good }) => good) };
}

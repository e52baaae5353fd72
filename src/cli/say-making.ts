// What to buy, what it costs and how long it takes, in the terminal.
import { goodAmount } from "#making/amounts/good-amounts.ts";
import type { Cost, ToBuy } from "#making/money/cost.ts";
import { moneyWords } from "#making/amounts/decimal.ts";
import { earnedWords, leftOutWords, sumParts, sumWords } from "#making/money/cost-words.ts";
import { readyWords } from "#making/calendar/stint-words.ts";
import { outOfWords } from "#making/money/out-of-lining.ts";
import type { Making } from "#making/making.ts";
import type { Need } from "#making/need.ts";

/** The shopping list, the cost and the plan in short; all of it stands in making.pdf. */
export function sayMaking({ pairs, needs, toBuy, cost, steps, calendar }: Making): string {
  const rows = needs.map((need) => `  ${need.good}: ${buyingWords(need, toBuy.find((one) => one.good === need.good)!)}; ${need.kind}`);
  const ready = calendar ? ` With your times at the bench it is ready on ${readyWords(calendar)}.` : "";
  return [`To buy for ${pairs === 1 ? "the pair" : `${pairs} pairs`}, with what falls away:`, ...rows, shopWords(cost), costWords(cost, pairs), `${steps.length} steps, about ${hours(cost.minutes)} of work on a pair.${ready} The bench book making.pdf holds it all, with cautions and a page to note measures on.`].join("\n");
}

/** "24.1 dm² (2.6 ft²), as 1 skin of 6 ft2, of which 31.6 dm² (3.4 ft²) are left over". */
function buyingWords({ good, measure }: Need, { short, whole, left, outOf }: ToBuy): string {
  if (outOf) return `${outOfWords(outOf)}, ${goodAmount(good, outOf.amount, measure)}`;
  if (short === 0) return "nothing, it is on your shelf";
  const amount = goodAmount(good, short, measure);
  if (!whole || whole.each * whole.count === short) return amount;
  const over = goodAmount(good, left, measure);
  return `${amount}, as ${whole.words}${left > 0 ? `, with ${over} left over` : ""}`;
}

/** What is paid this time, where anything has a price. */
const shopWords = ({ currency, shopping, unpriced, lines }: Cost): string =>
  `${unpriced.length === lines.length ? "" : `In the shop this time ${moneyWords(shopping, currency)}${unpriced.length === 0 ? "" : ", without what has no price"}. `}Tools are not in this list; they stand in making.pdf.`;

const hours = (minutes: number): string => `${(minutes / 60).toFixed(1)} h`;

function costWords(cost: Cost, pairs: number): string {
  const { currency, unpriced, reused, workCost, overhead, asked, lines } = cost;
  if (unpriced.length === lines.length && asked === undefined && workCost === 0 && overhead === 0) return "What it costs is told as soon as you say prices (--prices).";
  const money = moneyWords(reused, currency);
  const serves = reused > 0 ? `Of the material ${money} ${pairs === 1 ? "is for what serves other pairs too (tacks, card) and falls wholly on this one" : "is a pair's share of what serves all of them (tacks, card)"}.` : undefined;
  return [`${sumWords(cost)} (${sumParts(cost)}).`, serves, earnedWords(cost), leftOutWords(cost)].filter((words) => words !== undefined).join(" ");
}

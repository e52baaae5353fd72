// What to buy, what it costs and how long it takes, in the terminal.
import type { Cost } from "#making/money/cost.ts";
import { moneyWords } from "#making/amounts/decimal.ts";
import type { Making } from "#making/making.ts";
import { amountWords } from "#making/amounts/units.ts";

/** The shopping list, the cost and the plan in short; all of it stands in making.pdf. */
export function sayMaking({ pairs, needs, toBuy, cost, steps, calendar }: Making): string {
  const rows = needs.map(({ good, kind, measure }) => {
    const { short, whole } = toBuy.find((one) => one.good === good)!;
    const packed = whole && measure !== "count" ? ` (${whole.words})` : "";
    return `  ${good}: ${short > 0 ? `${amountWords(short, measure)}${packed}` : "nothing, it is on your shelf"}; ${kind}`;
  });
  const ready = calendar ? ` With your times at the bench it is ready on ${calendar.ready.date}.` : "";
  return [`To buy for ${pairs === 1 ? "the pair" : `${pairs} pairs`}, with what falls away:`, ...rows, costWords(cost), `${steps.length} steps, about ${hours(cost.minutes)} of work on a pair.${ready} The bench book making.pdf holds it all, with cautions and a page to note measures on.`].join("\n");
}

const hours = (minutes: number): string => `${(minutes / 60).toFixed(1)} h`;

function costWords({ currency, unpriced, material, total, workCost, overhead, asked, left, lines }: Cost): string {
  if (unpriced.length === lines.length && asked === undefined && workCost === 0) return "What it costs is told as soon as you say prices (--prices).";
  const money = (value: number): string => moneyWords(value, currency);
  const without = unpriced.length === 0 ? "" : ` No price is said yet for ${unpriced.join(", ")}: the sums leave that out.`;
  const sold = asked === undefined ? "" : ` Asked ${money(asked)}, ${left! < 0 ? `${money(-left!)} too little` : `${money(left!)} left over`}.`;
  return `A pair costs ${money(total)}: material ${money(material)}, work ${money(workCost)}, overhead ${money(overhead)}.${sold}${without}`;
}

// What is told of a pair's cost, in one and the same words wherever it is told.
import { listed } from "#base/listed.ts";
import { moneyWords } from "../amounts/decimal.ts";
import type { Cost } from "./cost.ts";

type Sums = Pick<Cost, "currency" | "rate" | "material" | "workCost" | "overhead" | "total" | "unpriced" | "uncounted" | "asked" | "left" | "anHour">;

/** Whether material and overhead lack something: a thing without a price, or one that nothing was drawn to count by. */
const lacksGoods = ({ unpriced, uncounted }: Sums): boolean => unpriced.length + uncounted.length > 0;

/** Whether all that a pair takes is in the sum, and something can be said to be left of what is asked. */
export const isWhole = (cost: Sums): boolean => cost.rate !== undefined && !lacksGoods(cost);

/** What the sum is: "A pair costs", or what it is of alone where no hour's pay is said. */
export const sumName = ({ rate, overhead }: Sums): string => (rate !== undefined ? "A pair costs" : `Material${overhead > 0 ? " and overhead" : ""} alone, your work not counted`);

/** "516.22 EUR", "more than 516.22 EUR". */
export const sumMoney = (cost: Sums): string => `${lacksGoods(cost) ? "more than " : ""}${moneyWords(cost.total, cost.currency)}`;

/** "A pair costs more than 516.22 EUR", "Material alone, your work not counted: 41.08 EUR". */
export const sumWords = (cost: Sums): string => `${sumName(cost)}${cost.rate === undefined ? ":" : ""} ${sumMoney(cost)}`;

/** "material 30.00 EUR, work 150.00 EUR, overhead 6.00 EUR": what the sum is of; work only where an hour has a price, overhead only where there is some. */
export function sumParts({ currency, material, rate, workCost, overhead }: Sums): string {
  const parts = [["material", material], ...(rate === undefined ? [] : [["work", workCost] as const]), ...(overhead === 0 ? [] : [["overhead", overhead] as const])] as const;
  return parts.map(([name, value]) => `${name} ${moneyWords(value, currency)}`).join(", ");
}

/** What of the price asked is left, where nothing is lacking, and what an hour earns; nothing where none is asked. */
export function earnedWords(cost: Sums): string | undefined {
  const { asked, left = 0, anHour, currency } = cost;
  if (asked === undefined) return undefined;
  const money = (value: number): string => moneyWords(value, currency);
  const over = left < 0 ? `${money(-left)} too little` : isWhole(cost) ? `${money(left)} left over` : undefined;
  const earns = anHour === undefined ? undefined : `an hour earns ${lacksGoods(cost) ? "less than " : ""}${money(anHour)} after material and overhead`;
  const told = [over, earns].filter((words) => words !== undefined).join("; ");
  return `Asked ${money(asked)}${told && `: ${told}`}.`;
}

/** What the sum leaves out, and why; nothing where it is whole. `names` lists many names. */
export function leftOutWords({ rate, unpriced, uncounted }: Sums, names: (all: readonly string[]) => string = listed): string | undefined {
  const told = [
    ...(rate === undefined ? ["for want of an hourly rate: your work"] : []),
    ...(unpriced.length > 0 ? [`for want of a price: ${names(unpriced)}`] : []),
    ...(uncounted.length > 0 ? [`since nothing was drawn to count by: ${names(uncounted)}`] : []),
  ];
  return told.length === 0 ? undefined : `Left out, ${told.join("; ")}.`;
}

import { goodAmount } from "#making/amounts/good-amounts.ts";
import { minutesWords } from "#making/amounts/time-words.ts";
import type { Cost } from "#making/money/cost.ts";
import { earnedWords, isWhole, leftOutWords, sumMoney, sumName, sumParts } from "#making/money/cost-words.ts";
import type { Need } from "#making/need.ts";
import { moneyWords } from "#making/amounts/decimal.ts";
import type { Block, Line } from "./block.ts";
import type { Book } from "./book.ts";
import { capital, listed } from "#base/listed.ts";
import type { Chapter } from "./flow.ts";
import { printedCurrency } from "./numbers.ts";
import { columnsFor, tableBlocks } from "./table.ts";
import { blank, body, heading, large, line, lines, small, strong } from "./words.ts";

/** What one pair costs and where the money goes, or how to learn it. */
export function costChapter({ input: { making }, room: { width } }: Book): Chapter {
  const { needs } = making;
  const cost: Cost = { ...making.cost, currency: printedCurrency(making.cost.currency) };
  const priced = cost.lines.some((l) => l.cost !== undefined) || cost.rate !== undefined || cost.overhead > 0;
  if (!priced) return { title: "Cost", joins: true, blocks: [{ cells: [{ x: 0, lines: [...lines("No price is said for any material, nor money for an hour's work, so nothing can be added up. Write what you pay at the station Making, or in the job under making, and print this page again.", width, body), ...lines(`One pair takes about ${minutesWords(cost.minutes)} of work.`, width, body)] }] }, ...costForm(needs, width)] };
  return {
    title: "Cost of one pair",
    joins: true,
    blocks: [
      { cells: [{ x: 0, lines: [...lines(capital(sumMoney(cost)), width, large), ...(cost.rate === undefined ? lines(`${sumName(cost)}.`, width, strong) : []), ...sumLines(cost, width)] }] },
      { cells: [{ x: 0, lines: lines("Where the money goes", width, heading) }], keep: true, gapMm: 3 },
      ...shareBlocks(cost, width),
      ...lineBlocks(cost, needs, width),
      ...workBlocks(cost, width),
    ],
  };
}

function sumLines(cost: Cost, width: number): readonly Line[] {
  const { currency, minutes, rate, left = 0, reused, skinsDearer } = cost;
  const money = (v: number): string => moneyWords(v, currency);
  const told = [
    `${capital(sumParts(cost))}. ${minutesWords(minutes)} of work${rate === undefined ? "" : ` at ${money(rate)} an hour`}.${reused > 0 ? ` ${money(reused)} of the material is for tacks, card and what else serves again.` : ""}`,
    ...[earnedWords(cost)].filter((words) => words !== undefined),
    ...(skinsDearer.more > 0 ? [`When skins cost 10 % more (${listed(skinsDearer.goods)}), a pair costs ${money(skinsDearer.more)} more${isWhole(cost) ? `: ${money(skinsDearer.total)}` : ""}.${skinsDearer.asked === undefined || left < 0 || !isWhole(cost) ? "" : ` To keep what is left, ask ${money(skinsDearer.asked)}.`}`] : []),
  ];
  const leftOut = leftOutWords(cost);
  return [...told.flatMap((t) => lines(t, width, body)), ...(leftOut === undefined ? [] : [blank(1), ...lines(leftOut, width, strong)])];
}

const partMm = 40;
const amountMm = 34;
const barMm = 3;

const shareWords = (share: number): string => (share > 0 && share < 0.01 ? "under 1 %" : `${Math.round(100 * share)} %`);

/** A bar for each part, outlined so that it takes no toner, with its share in words behind it. */
function shareBlocks({ shares, currency }: Cost, width: number): readonly Block[] {
  const most = Math.max(...shares.map((s) => s.share), 1e-9), room = width - partMm - amountMm - 20;
  return shares.map(({ part, cost, share }): Block => {
    const long = (room * share) / most;
    const bar: Line = {
      highMm: 5,
      ink: (ink, x, top) => {
        ink.style(0.35);
        ink.box(x, top - 1.2 - barMm, Math.max(0.4, long), barMm);
        ink.text(shareWords(share), x + Math.max(0.4, long) + 2, top - barMm - 0.9, 2.5, { bold: true });
      },
    };
    return { cells: [{ x: 0, lines: [blank(0.6), line(capital(part), body)] }, { x: partMm, lines: [bar] }, { x: width - amountMm, lines: [blank(0.6), line(moneyWords(cost, currency), body)] }] };
  });
}

/** What has a price; what has none is named above, once. */
function lineBlocks({ lines: all, currency }: Cost, needs: readonly Need[], width: number): readonly Block[] {
  const columns = columnsFor(width, [{ head: "Material" }, { head: "Goes into", mm: 36 }, { head: "One pair, with what falls away", mm: 48 }, { head: "Cost", mm: 32, letters: strong }]);
  const measureOf = (good: string) => needs.find((n) => n.good === good)?.measure ?? "count";
  const rows = all.flatMap((l) => (l.cost === undefined ? [] : [[capital(l.good), l.part, goodAmount(l.good, l.amount, measureOf(l.good)), moneyWords(l.cost, currency)]]));
  return tableBlocks(columns, rows, { gapMm: 4, close: true });
}

function workBlocks({ work, currency }: Cost, width: number): readonly Block[] {
  const columns = columnsFor(width, [{ head: "Work" }, { head: "One pair", mm: 48 }, { head: "Cost", mm: 32, letters: strong }]);
  return tableBlocks(columns, work.map((w) => [capital(w.phase), minutesWords(w.minutes), w.cost === undefined ? "" : moneyWords(w.cost, currency)]), { gapMm: 4, close: true });
}

/** Room to write prices down in the shop. */
function costForm(needs: readonly Need[], width: number): readonly Block[] {
  const columns = columnsFor(width, [{ head: "Material" }, { head: "One pair takes", mm: 48 }, { head: "Paid", mm: 32 }, { head: "For how much", mm: 40 }]);
  return tableBlocks(columns, needs.map((n) => [[blank(1.6), ...lines(capital(n.good), 50, strong), blank(1)], [blank(1.6), ...lines(goodAmount(n.good, n.gross, n.measure), 45, small)], "", ""]), { gapMm: 4 });
}

import { goodAmount } from "#making/amounts/good-amounts.ts";
import type { ToBuy } from "#making/money/cost.ts";
import { outOfWords } from "#making/money/out-of-lining.ts";
import type { Making } from "#making/making.ts";
import type { Bond, Need } from "#making/need.ts";
import { moneyWords } from "#making/amounts/decimal.ts";
import { amountWords, areaWords, massWords } from "#making/amounts/units.ts";
import type { Block, Line } from "./block.ts";
import type { Book } from "./book.ts";
import { capital, listed } from "#base/listed.ts";
import { halfOf, inTwoColumns } from "./entries.ts";
import type { Chapter } from "./flow.ts";
import { pairsWords, plain, printedCurrency } from "./numbers.ts";
import { thickWords } from "./piece-index.ts";
import { columnsFor, tableBlocks, tickBox, type BookCell } from "./table.ts";
import { threadBlocks } from "./thread.ts";
import { amountLines, blank, close, fine, heading, labelled, lines, small, smallStrong, strong } from "./words.ts";

const numberMm = 23;

/** What to buy, each to be ticked off, with the reasons below; cement by its bonds, thread by its seams. */
export function materialsChapter({ input: { making }, room: { width } }: Book): Chapter | undefined {
  if (making.needs.length === 0) return undefined;
  const { pairs, needs, bonds, thread } = making;
  const intro = `For ${pairsWords(pairs)}. Net is what lies in the shoes; with what falls away is what one pair has to be cut from. Tick what lies on your bench. Tools have a list of their own and are not in it.`;
  return {
    title: "Materials",
    blocks: [
      { cells: [{ x: 0, lines: lines(intro, width, small) }], keep: true },
      ...shoppingBlocks(making, width),
      { cells: [{ x: 0, lines: lines("Why these", width, heading) }], keep: true, gapMm: 6 },
      ...reasonBlocks(needs, width),
      ...(bonds.length > 0 ? bondBlocks(bonds, width) : []),
      ...(thread.seams?.length > 0 ? threadBlocks(thread, width) : []),
    ],
  };
}

function shoppingBlocks({ needs, toBuy, pairs, cost }: Making, width: number): readonly Block[] {
  const many = pairs !== 1;
  const numbers = ["One pair, net", "With what falls away", ...(many ? [pairsWords(pairs)] : []), "On the shelf", "To buy"];
  const columns = columnsFor(width, [{ head: "", mm: 7 }, { head: "What to ask for" }, ...numbers.map((head, i) => ({ head, mm: numberMm, ...(i + 1 === numbers.length && { letters: strong }) }))]);
  const textMm = columns[1]!.mm - 3;
  const rows = needs.map((need) => {
    const buy = toBuy.find((b) => b.good === need.good);
    const told = (value: number) => amountLines(goodAmount(need.good, value, need.measure), numberMm - 3);
    return [
      [tickBox(4)],
      [...lines(capital(need.good), textMm, strong), ...lines(kindWords(need), textMm, small), ...(buy?.caution === undefined ? [] : lines(buy.caution, textMm, smallStrong))],
      told(need.net), told(need.gross), ...(many ? [told(buy?.needed ?? need.gross * pairs)] : []), buy && buy.onShelf > 0 ? told(buy.onShelf) : "", buyLines(need, buy, cost.currency),
    ];
  });
  return tableBlocks(columns, [...rows, ...totalRow(cost, columns.length, textMm)], { gapMm: 2, close: true });
}

/** What is paid in the shop, below all that is bought there; none where nothing has a price. */
function totalRow({ shopping, currency, lines: all, unpriced }: Making["cost"], columns: number, textMm: number): readonly (readonly BookCell[])[] {
  if (unpriced.length === all.length) return [];
  const told = [...lines("In the shop this time", textMm, strong), ...lines(`tools not in it${unpriced.length > 0 ? ", nor what has no price" : ""}`, textMm, small)];
  return [["", told, ...Array.from({ length: columns - 3 }, () => ""), lines(moneyWords(shopping, printedCurrency(currency)), numberMm, strong)]];
}

/** What is bought: the amount, whole skins or packs, what of them is left over, what they cost; "nothing" where the shelf holds it. */
function buyLines(need: Need, buy: ToBuy | undefined, currency: string) {
  const width = numberMm;
  if (buy?.outOf) return lines(outOfWords(buy.outOf), width, small);
  if (buy && buy.short <= 0) return lines("nothing", width, strong);
  const whole = buy?.whole?.words, told = goodAmount(need.good, buy?.short ?? need.gross, need.measure);
  const amount = need.measure === "count" && whole ? lines(whole, width, strong) : [...amountLines(told, width, strong), ...(whole ? lines(whole, width, small) : [])];
  const over = buy?.whole && buy.left > 0 ? lines(`${goodAmount(need.good, buy.left, need.measure).replace(/ \(.*\)$/, "")} left over`, width, small) : [];
  return [...amount, ...over, ...(buy?.paid === undefined ? [] : lines(moneyWords(buy.paid, printedCurrency(currency)), width, small))];
}

/** "goat or calf, firm; 1.1 mm (2¾ oz)"; what the kind says already is not said twice. */
function kindWords({ kind, thicknessMm, widthMm, good }: Need): string {
  const thick = thicknessMm === undefined || kind.includes(" mm") ? "" : thickWords(thicknessMm, good);
  const wide = widthMm === undefined || kind.includes(" mm") ? "" : `${plain(widthMm)} mm wide`;
  return [kind, thick, wide].filter(Boolean).join("; ");
}

/** Each good's reason, below it in small what the table does not say; what falls away for one and the same cause is told once, at the end. */
function reasonBlocks(needs: readonly Need[], width: number): readonly Block[] {
  return [...inTwoColumns(needs.map((need) => reasonLines(need, halfOf(width))), width, 1.8), ...wasteBlocks(needs, width)];
}

function reasonLines(need: Need, width: number): readonly Line[] {
  const { good, reason, parts, holds, source, measure } = need;
  // Bonds and seams have a table each.
  const of = parts.length > 1 && measure !== "mass" && good !== "thread" ? parts.map((p) => `${p.name} ${plainAmount(p.net, measure)}${p.perPair > 1 ? ` in ${p.perPair}` : ""}`).join("; ") : "";
  const holding = holds ? `${of ? "largest" : "Largest"} piece ${Math.ceil(holds.longMm)} × ${Math.ceil(holds.wideMm)} mm${holds.count > 1 ? `, ${holds.count} of them` : ""}` : "";
  const amounts = sentence([capital(of), holding].filter(Boolean).join("; "));
  return [...labelled(`${capital(good)}.`, sentence(reason), width, close), ...lines(`${amounts} Source: ${sentence(source)}`.trim(), width, fine)];
}

/** What falls away, and how that was estimated. */
function wasteBlocks(needs: readonly Need[], width: number): readonly Block[] {
  const goodsOf = new Map<string, string[]>();
  for (const { good, waste } of needs) if (waste) goodsOf.set(waste.why, [...(goodsOf.get(waste.why) ?? []), `${good} ${percent(waste.ofBought)}`]);
  if (goodsOf.size === 0) return [];
  const entries = [...goodsOf].map(([why, goods]) => labelled(`${capital(listed(goods))}.`, sentence(why), halfOf(width), close));
  const told = "Of what is bought. The table's second amount has it in it.";
  return [{ cells: [{ x: 0, lines: [...lines("What falls away", width, heading), ...lines(told, width, small), blank(1)] }], keep: true, gapMm: 4 }, ...inTwoColumns(entries, width, 1.8)];
}

/** Without what it is in other units. */
const plainAmount = (value: number, measure: Need["measure"]): string => amountWords(value, measure).replace(/ \(.*\)$/, "");
const percent = (share: number): string => `${Math.round(100 * share)} %`;
const sentence = (text: string): string => (text === "" || /[.!?]$/.test(text) ? text : `${text}.`);

/** "2 each", "1 and 2", "1, one face". */
function coatWords({ coats: [a, b] }: Bond): string {
  return a === b ? `${a} each` : Math.min(a, b) === 0 ? `${Math.max(a, b)}, one face` : `${a} and ${b}`;
}

function bondBlocks(bonds: readonly Bond[], width: number): readonly Block[] {
  const columns = columnsFor(width, [{ head: "What is stuck" }, { head: "With", mm: 28 }, { head: "One face, both shoes", mm: 33 }, { head: "Coats", mm: 22 }, { head: "Wet, a coat", mm: 20 }, { head: "In all", mm: 24 }]);
  const rows = bonds.map((b) => [capital(b.name), b.glue, areaWords(b.areaMm2), coatWords(b), `${plain(b.gPerM2)} g/m²`, massWords(b.g)]);
  return [{ cells: [{ x: 0, lines: lines("Cement, bond by bond", width, heading) }], keep: true, gapMm: 4 }, ...tableBlocks(columns, rows, { close: true })];
}


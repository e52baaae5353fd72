import { listed } from "../listed.ts";
import { sentence } from "../sentence.ts";

/** Which field of what the maker wrote about money. */
export type MoneyField = "price" | "for" | "size" | "shelf" | "rate" | "overhead" | "asked";
type NumberWrong = "empty" | "words" | "negative" | "ambiguous" | "huge";

function fieldName(field: MoneyField, good = ""): string {
  switch (field) {
    case "price": return `The price of the ${good}`;
    case "for": return `What the price of the ${good} is for`;
    case "size": return `The size in which the ${good} is bought`;
    case "shelf": return `What lies on the shelf of the ${good}`;
    case "rate": return "Your rate for an hour";
    case "overhead": return "Your overhead for a pair";
    case "asked": return "What you ask for a pair";
  }
}

/** Why a number is none, and what to write. */
function numberWrong(wrong: NumberWrong, got: string): string {
  switch (wrong) {
    case "empty": return `is empty and left out. Write a number like 12.50, or take the line away.`;
    case "words": return `"${got}" is no amount of money and is left out. Write it like 12.50 or 12,50.`;
    case "negative": return `"${got}" is below 0 and is left out. Write 0 for what costs you nothing.`;
    case "ambiguous": return `"${got}" may be a thousand and more, or one and a bit, so it is left out. Write it like 1234 or 1.23.`;
    case "huge": return `"${got}" is more than is reckoned with here and is left out. Look for a digit too many.`;
  }
}

interface GoodMeant {
  readonly nearest: readonly string[];
  /** What it is counted as here. */
  readonly as?: readonly string[];
}
const meant = ({ nearest, as }: GoodMeant): string => as ? `Write it as ${listed(as, "or")}.` : (nearest.length === 0 ? "Look at the list of what this pair takes for its names." : `Did you mean ${listed(nearest, "or")}?`);
const places: Readonly<Record<string, string>> = { price: "among the prices", shelf: "on the shelf", size: "among the sizes" };
const tables = {
  prices: { what: "prices", look: "what,price,for, and under it rows like: upper leather,9.50,1 ft2" },
  shelf: { what: "what lies on the shelf", look: "what,amount, and under it rows like: upper leather,6 ft2" },
} as const;
type Table = keyof typeof tables;
interface RowTold {
  readonly file: string | undefined;
  readonly row: number;
}
const rowName = ({ file, row }: RowTold): string => (file === undefined ? `Row ${row}` : `${file}, row ${row}`);

/** "upper leather and your work: no price or rate is said; and filler, which is not counted". */
function leftOut({ goods, uncounted = [], work }: { readonly goods: readonly string[]; readonly uncounted?: readonly string[]; readonly work: boolean }): string {
  const unsaid = [...goods, ...(work ? ["your work"] : [])], why = goods.length === 0 ? "no rate for an hour is said" : work ? "no price or rate is said" : "no price is said";
  return [...(unsaid.length > 0 ? [`${listed(unsaid)}: ${why}`] : []), ...(uncounted.length > 0 ? [`${listed(uncounted)}, of which nothing is counted`] : [])].join("; and ");
}

export const moneySentences = {
  "money-number": sentence("look", (d: { field: MoneyField; good?: string; got: string; wrong: NumberWrong }) => `${fieldName(d.field, d.good)}${d.wrong === "empty" ? "" : ":"} ${numberWrong(d.wrong, d.got)}`),
  "money-amount": sentence("look", (d: { field: MoneyField; good: string; wrong: string }) =>
    `${fieldName(d.field, d.good)} cannot be read: ${d.wrong}. ${d.field === "shelf" ? "Until then nothing is taken to lie there." : d.field === "for" ? "Until then the price is left out." : "Until then it is left out."}`,
  ),
  "money-for-missing": sentence("look", (d: { good: string }) => `The price of the ${d.good} does not say for how much it is, and is left out. Write how much is in the pack beside it, like 1000 m, 250 g or 200 pieces.`),
  "money-unknown-good": sentence("note", (d: GoodMeant & { field: MoneyField; name: string }) => `"${d.name}" ${places[d.field]!} is nothing that is bought here, and is kept without being counted. ${meant(d)}`),
  "money-usual": sentence("note", (d: { assumed: readonly { readonly good: string; readonly words: string }[] }) => `Where you do not say what a price is for, it is taken for ${listed(d.assumed.map(({ good, words }) => `${words} of ${good}`))}. Write it beside the price if it is another amount.`),
  "money-free": sentence("note", (d: { goods: readonly string[] }) => `Counted as costing nothing, as you wrote: ${listed(d.goods)}.`),
  "money-currency": sentence("look", (d: { field?: MoneyField; good?: string; got: string; currency: string }) => `${fieldName(d.field ?? "price", d.good)} is in ${d.got}, and the sums are in ${d.currency}. Nothing is changed into other money: the number is counted as it stands. Write what it comes to in ${d.currency}.`),
  "goods-uncounted": sentence("note", (d: { goods: readonly string[] }) => `The steps use ${listed(d.goods)} too, which ${d.goods.length === 1 ? "is" : "are"} not on the list: nothing was drawn to count ${d.goods.length === 1 ? "it" : "them"} by. Measure on the lasted shoe what you need, and buy it as well.`),
  "money-left-out": sentence("note", (d: { goods: readonly string[]; uncounted?: readonly string[]; work: boolean }) => `The sums leave out ${leftOut(d)}. The pair costs more than they tell.`),
  "money-asked-below": sentence("note", (d: { asked: string; total: string; short: string }) => `You ask ${d.asked} for a pair that costs you ${d.total}: ${d.short} are missing. Ask more, or look at which part costs most.`),
  "money-shelf-pieces": sentence("note", (d: { goods: readonly string[] }) => `What lies on the shelf of ${listed(d.goods)} is taken off what you have to buy. Right and left of a pair are cut from one skin: write down only pieces out of which a whole pair comes.`),
  "money-size-small": sentence("look", (d: { good: string; name: string; got: string; longMm: number; wideMm: number }) => `One ${d.name} of ${d.good} is said to be ${d.got}. The largest part needs ${d.longMm.toFixed(0)} × ${d.wideMm.toFixed(0)} mm, which does not lie on it. Buy a larger one, or look at its unit.`),

  "money-pairs": sentence("look", (d: { got: string; most: number }) => `How many pairs: "${d.got}" is no whole number from 1 to ${d.most}. One pair is counted; write a number like 2.`),
  "money-pairs-most": sentence("look", (d: { got: string; most: number }) => `How many pairs: "${d.got}" is more than is reckoned here; ${d.most} are counted. Look for a digit too many.`),
  "money-pairs-read": sentence("note", (d: { got: string; pairs: number }) => `How many pairs: "${d.got}" is read as ${d.pairs}.`),
  "money-pairs-many": sentence("note", (d: { pairs: number }) => `For ${d.pairs} pairs everything is that many times one pair, hours too. A workshop that makes so many buys at other prices, wastes less and works faster: take it as what it would be at your bench.`),

  // Tables of prices and of the shelf, as a spreadsheet saves them; `file` is the table's name where it has one.
  "table-not-text": sentence("stop", (d: { table: Table; file: string | undefined }) => `${d.file ?? "This"} is no plain text. Save the table of ${tables[d.table].what} from your spreadsheet as CSV and take that file.`),
  "table-too-long": sentence("stop", (d: { table: Table; file: string | undefined; rows: number }) => `${d.file ?? "This table"} is too long for a table of ${tables[d.table].what}: at most ${d.rows} rows are read. Keep one row for each thing you buy.`),
  "table-empty": sentence("note", (d: { table: Table; file: string | undefined }) => `There is nothing in ${d.file ?? `this table of ${tables[d.table].what}`}. Its first row reads ${tables[d.table].look}`),
  "table-no-column": sentence("look", (d: { table: Table; file: string | undefined; missing: readonly string[] }) => `The first row of ${d.file ?? `the table of ${tables[d.table].what}`} does not name the ${d.missing.length === 1 ? "column" : "columns"} ${listed(d.missing)}, so nothing is read. It should read ${tables[d.table].look}`),
  "table-row-spilt": sentence("look", (d: RowTold & { commas: boolean }) => d.commas
    ? `${rowName(d)} is left out: it looks as if a decimal comma parts a number into two cells. Part the cells by semicolons or write the numbers with points, and write a unit behind every amount.`
    : `${rowName(d)} has more cells than columns and is left out. Look for a sign too many between its cells.`,
  ),
  "table-row-good": sentence("look", (d: RowTold & GoodMeant & { name: string }) => `${rowName(d)}: ${d.name === "" ? "it does not say what it is for" : `"${d.name}" is nothing that is bought here`}; the row is left out. ${meant(d)}`),
  "table-row-price": sentence("look", (d: RowTold & { good: string; got: string; wrong: NumberWrong }) => `${rowName(d)}: the price of the ${d.good} ${d.wrong === "empty" ? "" : "cannot be read: "}${numberWrong(d.wrong, d.got)}`),
  "table-row-amount": sentence("look", (d: RowTold & { good: string; column: string; wrong: string }) => `${rowName(d)}, column "${d.column}" of the ${d.good}, cannot be read: ${d.wrong}. The row is left out.`),
  "table-row-long": sentence("look", (d: RowTold & { most: number }) => `${rowName(d)} has a cell of more than ${d.most} letters and is left out. Write it shorter.`),
  "table-row-twice": sentence("look", (d: RowTold & { before: number; good: string }) => `${rowName(d)}: the ${d.good} stands in row ${d.before} already. The later one counts; keep one of them.`),
  "table-rows-blank": sentence("note", (d: { file: string | undefined; rows: readonly number[] }) => `${d.file === undefined ? "" : `${d.file}: `}${d.rows.length === 1 ? "row" : "rows"} ${listed(d.rows.map(String))} ${d.rows.length === 1 ? "names" : "name"} no price, and ${d.rows.length === 1 ? "counts" : "count"} as not said.`.replace(/^r/, "R")),
};

import { lineOf } from "#base/table-rows.ts";
import { measureOf } from "../amounts/good-measures.ts";
import { goodIds, type GoodId } from "../goods.ts";
import type { MakingSaid, Written } from "../said.ts";

/** Prices, and sizes where any are said, as a table that `readPriceTable` reads back. */
export function writePriceTable(prices: MakingSaid["prices"] = {}, skins: MakingSaid["skins"] = {}): string {
  const sized = Object.keys(skins).length > 0;
  const rows = inOrder([prices, skins]).map((good) => [good, cell(prices[good]?.price), amount(good, prices[good]?.for), ...(sized ? [amount(good, skins[good])] : [])]);
  return tableOf([["what", "price", "for", ...(sized ? ["size"] : [])], ...rows]);
}

/** What lies on the shelf, as a table that `readShelfTable` reads back. */
export function writeShelfTable(shelf: MakingSaid["shelf"] = {}): string {
  return tableOf([["what", "amount"], ...inOrder([shelf]).map((good) => [good, cell(shelf[good])])]);
}

/** Names that are no goods are written too, behind them: nothing the maker wrote is lost. */
function inOrder(said: readonly Readonly<Record<string, unknown>>[]): readonly string[] {
  const names = new Set(said.flatMap((one) => Object.keys(one)));
  return [...goodIds.filter((good) => names.has(good)), ...[...names].filter((name) => !(goodIds as readonly string[]).includes(name))];
}

const cell = (written: Written | undefined): string => String(written ?? "").replaceAll(/\s+/gu, " ").trim();
/** Pieces are counted where no unit stands; beside a price one has to, since 4,10 may be one number. */
const amount = (good: string, written: Written | undefined): string => (measureOf[good as GoodId] === "count" ? cell(written).replace(/^\d+$/, "$& pieces") : cell(written));
const tableOf = (rows: readonly (readonly string[])[]): string => rows.map((cells) => `${lineOf(cells)}\n`).join("");

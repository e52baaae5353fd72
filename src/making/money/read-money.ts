import { currencyAt } from "./currencies.ts";
import { readFigure, type FigureWrong } from "../amounts/read-figure.ts";
import type { Written } from "../said.ts";

export type MoneyRead = { readonly value: number; /** As written beside it; empty where none is. */ readonly currency: string; readonly wrong?: undefined } | { readonly wrong: FigureWrong };

/**
 * An amount of money as people write it: "12.50", "12,50 €", "EUR 1.234,50", "Fr. 12.–". Nothing and above.
 * @param own the maker's own word for her money, tolerated beside the number whatever it is
 */
export function readMoney(written: Written, own = ""): MoneyRead {
  if (typeof written === "number") return withCurrency(written, "");
  const text = written.trim();
  const [, sign = "", unsigned = ""] = /^([+\-−–]?)\s*(.*)$/s.exec(text)!;
  const before = currencyAt(unsigned, "begin", own);
  const rest = unsigned.slice(before.length).trim();
  const behind = before === "" ? currencyAt(rest, "end", own) : "";
  // "12.–" and "12,-" are whole amounts.
  const number = rest.slice(0, rest.length - behind.length).trim().replace(/(\d)\s*[.,][-–—]$/, "$1");
  // A minus stands once, before the money's sign or before the number; and a sign of money alone is no amount.
  const wrong = (sign !== "" && /^[+\-−–]/.test(number)) || (text !== "" && number === "");
  return wrong ? { wrong: "words" } : withCurrency(sign + number, before + behind);
}

function withCurrency(written: Written, currency: string): MoneyRead {
  const read = readFigure(written);
  return read.wrong === undefined ? { value: read.value, currency } : read;
}

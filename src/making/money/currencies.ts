/**
 * Signs and short names of money that may stand before or behind a price, with the currencies (ISO 4217) each may mean. Three capital
 * letters are taken for a code of that standard without being listed.
 */
const names: Readonly<Record<string, readonly string[]>> = {
  "€": ["EUR"], euro: ["EUR"], euros: ["EUR"],
  "£": ["GBP"],
  $: ["USD", "CAD", "AUD", "NZD"], "us$": ["USD"], "ca$": ["CAD"], "c$": ["CAD"], "au$": ["AUD"], "a$": ["AUD"], "nz$": ["NZD"], dollar: ["USD", "CAD", "AUD", "NZD"], dollars: ["USD", "CAD", "AUD", "NZD"],
  "r$": ["BRL"],
  "fr.": ["CHF"], fr: ["CHF"], "sfr.": ["CHF"], sfr: ["CHF"],
  "kr.": ["DKK", "NOK", "SEK", "ISK"], kr: ["DKK", "NOK", "SEK", "ISK"],
  "zł": ["PLN"], "kč": ["CZK"], lei: ["RON"],
  "¥": ["JPY", "CNY"], "₹": ["INR"], "₺": ["TRY"], "₴": ["UAH"], "₩": ["KRW"], "₪": ["ILS"],
};
const longestFirst = Object.keys(names).sort((a, b) => b.length - a.length);

/** The sign or name of money that a text begins or ends with, as written; empty where there is none. `own` is the maker's own word for it. */
export function currencyAt(text: string, end: "begin" | "end", own: string): string {
  const touches = (name: string): boolean => {
    const part = end === "begin" ? text.slice(0, name.length) : text.slice(-name.length);
    const beside = end === "begin" ? text.charAt(name.length) : text.charAt(text.length - name.length - 1);
    return name !== "" && part.toLowerCase() === name.toLowerCase() && !(/\p{L}/u.test(beside) && /\p{L}/u.test(name.at(end === "begin" ? -1 : 0)!));
  };
  const known = [own, ...longestFirst].find(touches);
  if (known !== undefined) return end === "begin" ? text.slice(0, known.length) : text.slice(-known.length);
  return (end === "begin" ? /^(?:[A-Z]{3}(?!\p{L})|\p{Sc})/u : /(?:(?<!\p{L})[A-Z]{3}|\p{Sc})$/u).exec(text)?.[0] ?? "";
}

/** Whether two signs or names may mean the same money. */
export function sameCurrency(a: string, b: string): boolean {
  const meant = (name: string): readonly string[] => names[name.toLowerCase()] ?? [name.toUpperCase()];
  return meant(a).some((code) => meant(b).includes(code));
}

import { readFigure, type FigureWrong } from "./read-figure.ts";

/** A number as it was written, or what is wrong with it: a clause that follows "… cannot be read:". */
export type QuantityRead = { readonly value: number } | { readonly wrong: string };

const fractions: Readonly<Record<string, number>> = { "½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8 };

/** In any unit far less than is bought or worked; what costs something for less would cost more than all money. */
const least = 1e-6;

/** A number that is not below nothing, as people write amounts: 12.50, 12,50, 1 234, 1,234.5, and fractions 1/2, 2½, 2 1/2. */
export function readQuantity(written: string | number): QuantityRead {
  const text = String(written).replaceAll("−", "-").replaceAll("⁄", "/").trim();
  const fraction = typeof written === "number" || text.startsWith("-") ? undefined : readFraction(text);
  if (fraction) return fraction;
  const figure = readFigure(typeof written === "number" ? written : text);
  if (figure.wrong !== undefined) return { wrong: wrongWords(figure.wrong, text) };
  return figure.value > 0 && figure.value < least ? { wrong: `"${text}" is less than can be measured or weighed; look at its decimals` } : { value: figure.value };
}

function readFraction(text: string): QuantityRead | undefined {
  const sign = /^(\d{0,6}) ?([½¼¾⅓⅔⅛⅜⅝⅞])$/u.exec(text);
  if (sign) return { value: Number(sign[1]) + fractions[sign[2]!]! };
  const ratio = /^(?:(\d{1,6})\s+)?(\d{1,6})\s?\/\s?(\d{1,6})$/u.exec(text);
  if (!ratio) return undefined;
  const under = Number(ratio[3]);
  return under === 0 ? { wrong: `"${text}" is a fraction by 0; write it like 1/2` } : { value: Number(ratio[1] ?? 0) + Number(ratio[2]) / under };
}

function wrongWords(wrong: FigureWrong, text: string): string {
  switch (wrong) {
    case "empty":
      return "it is empty";
    case "negative":
      return `"${text}" is below 0`;
    case "huge":
      return `"${text}" is more than there is`;
    case "ambiguous":
      return `"${text}" may mean ${text.replace(/[.,]/u, ".")}0 or ${text.replace(/[.,]/u, "")}; write it like that`;
    default:
      return `"${text}" is no number; write it like 12.5, 12,5 or 1/2`;
  }
}

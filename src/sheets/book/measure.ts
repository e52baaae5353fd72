import { plainLetters, textWidth } from "../lettering.ts";

/** Widths of single letters at a height of 1 mm. */
const widths = { plain: new Map<string, number>(), bold: new Map<string, number>() } as const;

/** Letters that are written as they are. */
const plain = /^[ -~]*$/;

/**
 * Width of a line as it is printed, mm: letters set one after the other, without the closer setting of pairs that `textWidth` reckons with,
 * so a hair more than that. Remembered by letter, for a book has many words.
 */
export function printedWidth(text: string, heightMm: number, bold = false): number {
  const known = widths[bold ? "bold" : "plain"];
  let sum = 0;
  for (const letter of plain.test(text) ? text : plainLetters(text)) {
    let width = known.get(letter);
    if (width === undefined) known.set(letter, (width = textWidth(letter, 1, bold)));
    sum += width;
  }
  return sum * heightMm;
}

/** A printer's own faces are not wide to the last letter what the standard ones are. */
const spareShare = 0.005;

/** A number is not parted from its unit. */
const unit = /(\d) (?=(?:%|mm|cm|m|dm²|cm²|m²|ft²|cm³|ml|in|yd|g|kg|oz|lb|iron|min|h|days|ppm|mg\/m³|g\/m²|°C)(?![\p{L}\d]))/gu;

/**
 * Words broken into lines no wider than `widthMm`, the first of them by `firstLess` narrower and blank where no word fits there; a word wider
 * than a line is broken between its letters.
 */
export function brokenAt(text: string, heightMm: number, widthMm: number, bold = false, firstLess = 0): readonly string[] {
  const space = printedWidth(" ", heightMm, bold), whole = (1 - spareShare) * widthMm;
  const out: string[] = [];
  let line = "", long = 0, room = whole - firstLess;
  const put = (word: string, width: number): void => {
    if (line ? long + space + width > room : width > room) {
      out.push(line);
      line = "";
      room = whole;
    }
    long = line ? long + space + width : width;
    line = line ? `${line} ${word}` : word;
  };
  for (const word of text.replace(unit, "$1\u00a0").split(/[ \t\r\n]+/)) {
    if (!word) continue;
    const width = printedWidth(word, heightMm, bold);
    if (width <= whole) put(word, width);
    else for (const part of parted(word, heightMm, whole, bold)) put(part, printedWidth(part, heightMm, bold));
  }
  if (line) out.push(line);
  return out;
}

function parted(word: string, heightMm: number, widthMm: number, bold: boolean): readonly string[] {
  const out: string[] = [];
  let part = "";
  for (const letter of word) {
    if (part && printedWidth(part + letter, heightMm, bold) > widthMm) {
      out.push(part);
      part = "";
    }
    part += letter;
  }
  return [...out, part];
}

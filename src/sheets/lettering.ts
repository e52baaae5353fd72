import { StandardFontEmbedder, StandardFonts } from "@cantoo/pdf-lib";

/** Letters of the sheets: the two plain faces that every PDF reader carries. Their capitals stand 0.718 of the size high. */
export const capitalShare = 0.718;
const faces = {
  plain: StandardFontEmbedder.for(StandardFonts.Helvetica as never),
  bold: StandardFontEmbedder.for(StandardFonts.HelveticaBold as never),
};
export const facesOf = { plain: StandardFonts.Helvetica, bold: StandardFonts.HelveticaBold } as const;

const known = new Set<number>(faces.plain.encoding.supportedCodePoints);
/** Letters that do not fall apart into a plain one and its accent. Letters are ours to choose, none is a standard. */
const lookAlikes: Readonly<Record<string, string>> = {
  ł: "l", Ł: "L", đ: "d", Đ: "D", ħ: "h", ı: "i", "\u2212": "-", "\u2010": "-", "\u2011": "-", "\u2032": "'", "\u2033": '"', "\u2009": " ", "\u202f": " ", "\u00a0": " ", "\t": " ", "\n": " ",
};

/**
 * Any text in the letters that the PDF's plain faces have (Windows Latin 1): what they lack is written without its accent, and
 * what remains strange as "?". Never throws.
 */
export function plainLetters(text: string): string {
  let out = "";
  for (const letter of text.normalize("NFC")) {
    if (known.has(letter.codePointAt(0)!)) out += letter;
    else if (lookAlikes[letter] !== undefined) out += lookAlikes[letter];
    else {
      const bare = [...letter.normalize("NFKD")].filter((c) => known.has(c.codePointAt(0)!)).join("");
      if (bare) out += bare;
      else if (!/\p{M}|\p{C}/u.test(letter)) out += "?";
    }
  }
  return out;
}

/** Width of a line of text whose capitals stand `heightMm` high, mm. */
export function textWidth(text: string, heightMm: number, bold = false): number {
  return faces[bold ? "bold" : "plain"].widthOfTextAtSize(plainLetters(text), heightMm / capitalShare);
}

/** The text as the hexadecimal string of a PDF content stream, with its angle brackets. */
export function pdfString(text: string): string {
  return faces.plain.encodeText(plainLetters(text)).toString();
}

/** Breaks a text into lines no wider than `widthMm`. */
export function brokenIntoLines(text: string, heightMm: number, widthMm: number, bold = false): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line ? `${line} ${word}` : word;
    if (line && textWidth(longer, heightMm, bold) > widthMm) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line) lines.push(line);
  return lines;
}

/** Shortens a text to `widthMm`, with three dots where something was left out. */
export function shortenedTo(widthMm: number, text: string, heightMm: number, bold = false): string {
  if (textWidth(text, heightMm, bold) <= widthMm) return text;
  const letters = [...text];
  while (letters.length > 1 && textWidth(`${letters.join("")}…`, heightMm, bold) > widthMm) letters.pop();
  return `${letters.join("")}…`;
}

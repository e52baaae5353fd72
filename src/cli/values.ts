// Values of options: numbers as makers write them (72, 72.5, 72,5, "72 mm") and words from a short list.
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";

/** A parser for an option in millimetres; refuses anything that is no number in the range. */
export const millimetres = (option: string, min: number, max: number) => (text: string): number => {
  const plain = text.trim().replace(/\s*mm$/i, "").replace(",", ".");
  const value = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
  if (!(value >= min && value <= max)) throw new Refusal(finding("option-not-number", { option, got: text, min, max }));
  return value;
};

/** A parser for an option that is one of a few words; upper and lower case are the same. */
export const oneOf = <T extends string>(option: string, choices: readonly T[]) => (text: string): T => {
  const found = choices.find((choice) => choice.toLowerCase() === text.trim().toLowerCase());
  if (found === undefined) throw new Refusal(finding("option-not-choice", { option, got: text, choices: choices.join(" or ") }));
  return found;
};

/** A parser for a text that must find room on a piece. */
export const textUpTo = (option: string, most: number) => (text: string): string => {
  if (text.length > most) throw new Refusal(finding("option-too-long", { option, letters: text.length, most }));
  return text;
};

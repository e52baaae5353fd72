import { minutesWords } from "#making/amounts/time-words.ts";
import { plainLetters } from "../lettering.ts";

/** Codes (ISO 4217) of currencies whose sign the sheets' letters lack. */
const codes: Readonly<Record<string, string>> = { "₹": "INR", "₺": "TRY", "₴": "UAH", "₩": "KRW", "₪": "ILS", "₽": "RUB", "₫": "VND", "₦": "NGN", "₱": "PHP" };

/** The maker's sign or word for money in letters that can be printed: left out, or told by its code, where it cannot. */
export const printedCurrency = (currency: string): string => plainLetters(codes[currency] ?? currency).replaceAll("?", "").trim();

/** Minutes as a wait: in days where it is long, to the half of one. */
export function waitWords(minutes: number): string {
  if (minutes < 1440) return minutesWords(minutes);
  const days = Math.round(minutes / 720) / 2;
  return days === 1 ? "a day" : `${days} days`;
}

/** To a half of a millimetre. */
export const halfMm = (mm: number): string => (Math.round(mm * 2) / 2).toFixed(1);

/** As short as a number can be at a hundredth. */
export const plain = (v: number): string => String(Math.round(v * 100) / 100);

/** "1 pair", "12 pairs". */
export const pairsWords = (pairs: number): string => (pairs === 1 ? "1 pair" : `${pairs} pairs`);

import { plainLetters } from "../lettering.ts";

/** Codes (ISO 4217) of currencies whose sign the sheets' letters lack. */
const codes: Readonly<Record<string, string>> = { "₹": "INR", "₺": "TRY", "₴": "UAH", "₩": "KRW", "₪": "ILS", "₽": "RUB", "₫": "VND", "₦": "NGN", "₱": "PHP" };

/** The maker's sign or word for money in letters that can be printed: left out, or told by its code, where it cannot. */
export const printedCurrency = (currency: string): string => plainLetters(codes[currency] ?? currency).replaceAll("?", "").trim();

/** 95 as "1 h 35 min", 40 as "40 min". */
export function timeWords(minutes: number): string {
  const whole = Math.round(minutes), h = Math.floor(whole / 60), min = whole % 60;
  return [h > 0 ? `${h} h` : "", min > 0 || h === 0 ? `${min} min` : ""].filter(Boolean).join(" ");
}

/** Minutes as a wait: in days where it is long, to the half of one. */
export function waitWords(minutes: number): string {
  if (minutes < 1440) return timeWords(minutes);
  const days = Math.round(minutes / 720) / 2;
  return days === 1 ? "a day" : `${days} days`;
}

/** To a half of a millimetre. */
export const halfMm = (mm: number): string => (Math.round(mm * 2) / 2).toFixed(1);

/** As short as a number can be at a hundredth. */
export const plain = (v: number): string => String(Math.round(v * 100) / 100);

/** "1 pair", "12 pairs". */
export const pairsWords = (pairs: number): string => (pairs === 1 ? "1 pair" : `${pairs} pairs`);

export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

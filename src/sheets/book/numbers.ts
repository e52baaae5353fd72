/** Money and amounts as a maker reads them; no sign of our own for a currency that was not said. */
export const moneyWords = (amount: number, currency: string): string => [amount.toFixed(2), currency].filter(Boolean).join(" ");

/** 95 as "1 h 35 min", 40 as "40 min". */
export function timeWords(minutes: number): string {
  const whole = Math.round(minutes), h = Math.floor(whole / 60), min = whole % 60;
  return [h > 0 ? `${h} h` : "", min > 0 || h === 0 ? `${min} min` : ""].filter(Boolean).join(" ");
}

/** Minutes as a wait: days where it is long. */
export const waitWords = (minutes: number): string => (minutes >= 2880 ? `${plain(minutes / 1440)} days` : minutes >= 1440 ? "a day" : timeWords(minutes));

/** To a half of a millimetre. */
export const halfMm = (mm: number): string => (Math.round(mm * 2) / 2).toFixed(1);

/** As short as a number can be at a hundredth. */
export const plain = (v: number): string => String(Math.round(v * 100) / 100);

/** "1 pair", "12 pairs". */
export const pairsWords = (pairs: number): string => (pairs === 1 ? "1 pair" : `${pairs} pairs`);

/** Minutes from midnight as "19:05". */
export const clockWords = (minutes: number): string => `${Math.floor(minutes / 60) % 24}:${String(Math.round(minutes) % 60).padStart(2, "0")}`;

export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

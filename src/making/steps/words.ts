import { cutLength } from "../amounts/cut-length.ts";

/** "4.5", "4", "0.55": no more digits than the maker set. */
export const digits = (value: number): string => String(Number(value.toFixed(2)));

/** "4.5 mm". */
export const mm = (value: number): string => `${digits(value)} mm`;

/** What was measured or reckoned, to half of a tenth: "54.3 mm". */
export const mmMeasured = (value: number): string => `${Number(value.toFixed(1))} mm`;

/** What a tape is read to, half a millimetre: "75.5 mm". */
export const mmRead = (value: number): string => `${Math.round(2 * value) / 2} mm`;

/** A strip as it is cut from the roll. */
export const stripLong = ({ lengthMm }: { readonly lengthMm: number }): string => `${cutLength(lengthMm)} mm`;

/** "1 piece", "8 pieces". */
export const counted = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`;

/** The texts that are there. */
export const those = (...texts: readonly (string | false | undefined)[]): readonly string[] => texts.filter((text): text is string => typeof text === "string");

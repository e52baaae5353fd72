import type { StripWay } from "./leather.ts";

/** Standard gravity, m/s² (exact; CGPM 1901): a kilogram hangs with 9.80665 N. */
const gravity = 9.80665;
/** The avoirdupois pound, kg (exact; agreement of 1959). */
const pound = 0.45359237;

/** What loads may be written in, as newtons. */
export const forceUnits = { N: 1, kg: gravity, g: gravity / 1000, lb: pound * gravity, oz: (pound / 16) * gravity } as const;
export type ForceUnit = keyof typeof forceUnits;

/** What lengths may be written in, as millimetres. */
export const lengthUnits = { mm: 1, cm: 10, in: 25.4 } as const;
export type LengthUnit = keyof typeof lengthUnits;

export const forceUnitNamed = (word: string): ForceUnit | undefined => (Object.keys(forceUnits) as ForceUnit[]).find((one) => one.toLowerCase() === word.toLowerCase());
export const lengthUnitNamed = (word: string): LengthUnit | undefined => (Object.keys(lengthUnits) as LengthUnit[]).find((one) => one === word.toLowerCase());

const wayNames: Readonly<Record<StripWay, readonly string[]>> = {
  along: ["along"],
  across: ["across"],
  bias: ["45", "45°", "45 degrees", "at 45 degrees", "at 45", "bias"],
};

export const wayNamed = (word: string): StripWay | undefined => (Object.keys(wayNames) as StripWay[]).find((way) => wayNames[way].includes(word.trim().toLowerCase()));

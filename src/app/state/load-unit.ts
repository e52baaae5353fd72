import { newtonsPerKg, decimalsOf } from "./numbers.ts";
import type { Field } from "./measure-field.ts";

/** What the maker hangs on a strip is read off weights or off a spring balance. */
export const loadUnits = ["kg", "g", "N"] as const;
export type LoadUnit = (typeof loadUnits)[number];

export const loadUnitWords: Readonly<Record<LoadUnit, string>> = { kg: "kilograms", g: "grams", N: "newtons" };

const stepOf: Readonly<Record<LoadUnit, number>> = { kg: 0.1, g: 100, N: 1 };
/** Up to what a strip is usually loaded, N. */
const mostN = 60;

/** A field for a load, kept in N and read in the maker's unit. */
export function loadField(unit: LoadUnit): Field {
  const factor = unit === "N" ? 1 : unit === "kg" ? 1 / newtonsPerKg : 1000 / newtonsPerKg;
  const step = stepOf[unit];
  return { factor, unit, min: step, max: Math.round(mostN * factor), step, decimals: unit === "kg" ? 3 : decimalsOf(step) };
}

const key = "lastwise unit of loads";

export function keptLoadUnit(): LoadUnit {
  try {
    const kept = localStorage.getItem(key);
    return loadUnits.find((u) => u === kept) ?? "kg";
  } catch {
    return "kg";
  }
}

export function keepLoadUnit(unit: LoadUnit): void {
  try {
    localStorage.setItem(key, unit);
  } catch {
    // Where the browser keeps nothing it is asked for again.
  }
}

import { readFileSync } from "node:fs";
import { sharedData } from "./shared.ts";

/** Foot columns of ANSUR II, women, mm: one record a woman. */
export function womensFeet(): readonly Readonly<Record<string, number>>[] {
  const [head, ...rows] = readFileSync(sharedData("people", "ANSUR_II_FEMALE_foot_columns.csv")!, "latin1").trim().split(/\r?\n/);
  const names = head!.split(",");
  return rows.map((row) => Object.fromEntries(row.split(",").map((v, i) => [names[i]!, Number(v)])));
}

/** Percentile by linear interpolation between ordered values. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const i = Math.floor(at);
  return sorted[i]! + (at - i) * ((sorted[i + 1] ?? sorted[i]!) - sorted[i]!);
}

/**
 * Whether a way of measuring passes by ISO 20685: the 95 % interval of its mean error lies inside ± the allowed one. (As restated in
 * the textbook Anthropometry, Apparel Sizing and Design, p. 41.)
 */
export function passes(errors: readonly number[], allowed: number): { readonly low: number; readonly high: number; readonly pass: boolean } {
  const n = errors.length;
  const mean = errors.reduce((a, b) => a + b, 0) / n;
  const sd = Math.sqrt(errors.reduce((sum, e) => sum + (e - mean) ** 2, 0) / (n - 1));
  return interval(mean, sd, n, allowed);
}

export function interval(mean: number, sd: number, n: number, allowed: number): { readonly low: number; readonly high: number; readonly pass: boolean } {
  const half = (1.96 * sd) / Math.sqrt(n);
  return { low: mean - half, high: mean + half, pass: mean - half > -allowed && mean + half < allowed };
}

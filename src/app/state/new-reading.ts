import type { KnownLeather, Strip, StripReading } from "#leather/leather.ts";
import { loadField, type LoadUnit } from "./load-unit.ts";
import { aftersOf, isGrowth, lengthsOf, loadsOn } from "#leather/strip-limits.ts";
import { knownWords } from "#leather/strip-words.ts";
import { readMeasure, say } from "./numbers.ts";

/** A reading while it is being typed, before it belongs to the work. */
export interface TypedReading {
  readonly load: string;
  readonly length: string;
  readonly after: string;
}
export type ReadingPart = keyof TypedReading;
export const noReading: TypedReading = { load: "", length: "", after: "" };

/** What is wrong with a reading as it was typed, and at which of its fields; or the reading. */
export type ReadReading = { readonly reading: StripReading } | { readonly at: ReadingPart; readonly sentence: string };

/** What the limits of a reading hang on. */
export type ReadingOn = Pick<Strip, "widthMm" | "gaugeMm"> & { readonly known: KnownLeather };

/** Reads a typed row on a strip. */
export function readReading({ load, length, after }: TypedReading, unit: LoadUnit, { widthMm, gaugeMm, known }: ReadingOn): ReadReading {
  const loaded = readMeasure(load, unit);
  if (loaded === undefined || loaded <= 0) return { at: "load", sentence: load.trim() === "" ? "Type the load first." : `“${load.trim()}” is no load here. Type it in ${unit}, like ${unit === "kg" ? "1,5" : unit === "g" ? "1500" : "15"}.` };
  const loadN = Number((loaded / loadField(unit).factor).toFixed(4));
  if (loadN >= loadsOn(widthMm).most) return { at: "load", sentence: loadOutside(widthMm, unit) };
  const lengthMm = readMeasure(length, "mm");
  if (lengthMm === undefined) return { at: "length", sentence: length.trim() === "" ? "Type how far the marks are apart under this load." : `“${length.trim()}” is no length here. Type millimetres, like 106,5.` };
  const wrong = lengthWrong(lengthMm, gaugeMm, known);
  if (wrong) return { at: "length", sentence: wrong };
  if (after.trim() === "") return { reading: { loadN, lengthMm } };
  const afterMm = readMeasure(after, "mm");
  if (afterMm === undefined) return { at: "after", sentence: `“${after.trim()}” is no length here. Type millimetres, or leave it empty.` };
  const afterWrong = afterIsWrong(afterMm, lengthMm, gaugeMm);
  return afterWrong ? { at: "after", sentence: afterWrong } : { reading: { loadN, lengthMm, afterMm } };
}

/** Said of a load that no strip so wide bears. */
export function loadOutside(widthMm: number, unit: LoadUnit): string {
  return `Loads on a strip ${say(widthMm)}\u00a0mm wide are above 0 and below ${say(loadsOn(widthMm).most * loadField(unit).factor, 0)}\u00a0${unit}. Look at the unit of the loads.`;
}

/** Leather under load is not shorter, and goes no farther than where it tears. */
function lengthWrong(lengthMm: number, gaugeMm: number, known: KnownLeather): string | undefined {
  const { least, most } = lengthsOf(gaugeMm, known);
  if (isGrowth(gaugeMm, lengthMm)) return `Type the whole length between the marks, like ${say(gaugeMm + lengthMm)}, not by how much it grew.`;
  return lengthMm < least || lengthMm > most ? lengthOutside(gaugeMm, known) : undefined;
}

/** Said of a length under load that cannot be. */
export function lengthOutside(gaugeMm: number, known: KnownLeather): string {
  return `Without load the marks are ${say(gaugeMm)}\u00a0mm apart; type the whole length under load, not by how much it grew. It is no less, and no more than ${say(lengthsOf(gaugeMm, known).most)}\u00a0mm, where ${knownWords[known]} has torn.`;
}

function afterIsWrong(afterMm: number, lengthMm: number, gaugeMm: number): string | undefined {
  const { least, most } = aftersOf(gaugeMm, lengthMm);
  if (afterMm > most) return `A minute after the load is off the strip is no longer than ${say(lengthMm)}\u00a0mm.`;
  if (afterMm < least) return `It does not go back below the ${say(gaugeMm)}\u00a0mm it began with.`;
  return undefined;
}

/**
 * Rows of numbers that were pasted: load, length and, if it was read, the length after, apart by tabs, semicolons or blanks, or by commas where
 * the numbers have points. A heading without a figure is passed over. Nothing where it is a single field.
 */
export function pastedRows(text: string): readonly TypedReading[] | undefined {
  const lines = text.split(/\r?\n/).map((l) => l.trim()).filter((l) => l !== "");
  const numbered = /\d/.test(lines[0] ?? "") ? lines : lines.slice(1);
  const rows = numbered.map(cellsIn);
  if (rows.some((r) => r.length < 2 || r.length > 3)) return undefined;
  return rows.length === 0 ? undefined : rows.map(([load = "", length = "", after = ""]) => ({ load, length, after }));
}

/** A blank before a unit parts no cells. */
function cellsIn(line: string): readonly string[] {
  const close = line.replaceAll(/(\d)\s+(?=(?:kg|g|n|mm|cm)\b)/gi, "$1");
  const commas = !/[\t;]/.test(close) && /\.\d/.test(close) && close.includes(",");
  return close.split(commas ? /, */ : /[\t;]| +/).map((c) => c.trim()).filter((c) => c !== "");
}

/** Whether rows that were pasted have commas both in their numbers and between them, so that nobody can tell which is which. */
export const commasBothWays = (text: string): boolean => pastedRows(text) === undefined && text.split(/\r?\n/).some((l) => /^\s*\d+(\s*,\s*\d+){2,}\s*,?\s*$/.test(l));

export const commasBothWaysWords = "Decimal commas and commas between the cells cannot be told apart. Part the cells by semicolons, or write the numbers with points, and paste again.";

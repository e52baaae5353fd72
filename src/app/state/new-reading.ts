import type { StripReading } from "#leather/leather.ts";
import { loadField, type LoadUnit } from "./load-unit.ts";
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

/** Reads a typed row; `gaugeMm` is the length between the marks without load. */
export function readReading({ load, length, after }: TypedReading, unit: LoadUnit, gaugeMm: number): ReadReading {
  const loaded = readMeasure(load, unit);
  if (loaded === undefined || loaded <= 0) return { at: "load", sentence: load.trim() === "" ? "Type the load first." : `“${load.trim()}” is no load here. Type it in ${unit}, like ${unit === "kg" ? "1,5" : unit === "g" ? "1500" : "15"}.` };
  const lengthMm = readMeasure(length, "mm");
  if (lengthMm === undefined) return { at: "length", sentence: length.trim() === "" ? "Type how far the marks are apart under this load." : `“${length.trim()}” is no length here. Type millimetres, like 106,5.` };
  const wrong = lengthWrong(lengthMm, gaugeMm);
  if (wrong) return { at: "length", sentence: wrong };
  const loadN = Number((loaded / loadField(unit).factor).toFixed(4));
  if (after.trim() === "") return { reading: { loadN, lengthMm } };
  const afterMm = readMeasure(after, "mm");
  if (afterMm === undefined) return { at: "after", sentence: `“${after.trim()}” is no length here. Type millimetres, or leave it empty.` };
  const afterWrong = afterIsWrong(afterMm, lengthMm, gaugeMm);
  return afterWrong ? { at: "after", sentence: afterWrong } : { reading: { loadN, lengthMm, afterMm } };
}

/** Leather under load is not shorter, and no leather goes to twice its length in the hand. */
export function lengthWrong(lengthMm: number, gaugeMm: number): string | undefined {
  if (lengthMm < gaugeMm) return `Without load the marks are ${say(gaugeMm)}\u00a0mm apart; loaded they cannot be nearer.`;
  if (lengthMm > 2 * gaugeMm) return `That is more than twice the ${say(gaugeMm)}\u00a0mm without load: read it again.`;
  return undefined;
}

export function afterIsWrong(afterMm: number, lengthMm: number, gaugeMm: number): string | undefined {
  if (afterMm > lengthMm) return `A minute after the load is off the strip is no longer than ${say(lengthMm)}\u00a0mm.`;
  if (afterMm < 0.98 * gaugeMm) return `It does not go back below the ${say(gaugeMm)}\u00a0mm it began with.`;
  return undefined;
}

/** Rows of numbers that were pasted: load, length and, if it was read, the length after, apart by tabs, semicolons or blanks. Nothing where it is a single field. */
export function pastedRows(text: string): readonly TypedReading[] | undefined {
  const lines = text.split(/\r?\n/).map((l) => l.trim()).filter((l) => l !== "");
  const rows = lines.map((line) => line.split(/[\t;]| +/).map((c) => c.trim()).filter((c) => c !== ""));
  if (rows.some((r) => r.length < 2 || r.length > 3)) return undefined;
  return rows.length === 0 ? undefined : rows.map(([load = "", length = "", after = ""]) => ({ load, length, after }));
}

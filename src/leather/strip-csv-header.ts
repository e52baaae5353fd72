import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { forceUnits, lengthUnits, type LengthUnit } from "./strip-csv-units.ts";

/** Names of the columns as they stand in the text, and where each of ours is among them, counted from 0. */
export interface Columns {
  readonly names: readonly string[];
  readonly at: { readonly [K in ColumnKey]?: number };
  /** The unit in a length column's name; mm where it has none. */
  readonly lengthUnit: { readonly [K in ColumnKey]?: LengthUnit };
  /** The unit in the name of the load column, for all rows. */
  readonly loadUnit: string | undefined;
}

/** Our columns and what their names begin with, unit apart. */
const columnNames = { strip: "strip", way: "way", width: "width", between: "between marks", load: "load", unit: "unit", length: "length", after: "after a minute" } as const;
type ColumnKey = keyof typeof columnNames;
const needed: readonly ColumnKey[] = ["way", "width", "between", "load", "length"];

/** @throws Refusal `strips-no-header` where a column that is needed is not there */
export function columnsOf(names: readonly string[]): Columns {
  const at: { [K in ColumnKey]?: number } = {};
  const lengthUnit: { [K in ColumnKey]?: LengthUnit } = {};
  let loadUnit: string | undefined;
  names.forEach((name, i) => {
    const words = name.toLowerCase().replaceAll(/[()[\],]/g, " ").trim().split(/\s+/);
    const last = words.at(-1)!;
    const unit = words.length > 1 && (last in lengthUnits || Object.keys(forceUnits).some((one) => one.toLowerCase() === last)) ? last : undefined;
    const plain = (unit === undefined ? words : words.slice(0, -1)).join(" ");
    const key = (Object.keys(columnNames) as ColumnKey[]).find((one) => columnNames[one] === plain);
    if (key === undefined || at[key] !== undefined) return;
    at[key] = i;
    if (unit !== undefined && unit in lengthUnits) lengthUnit[key] = unit as LengthUnit;
    else if (key === "load") loadUnit = unit;
  });
  const missing = [...needed, ...(loadUnit === undefined ? (["unit"] as const) : [])].filter((key) => at[key] === undefined).map((key) => columnNames[key]);
  if (missing.length > 0) throw new Refusal(finding("strips-no-header", { missing }));
  return { names, at, lengthUnit, loadUnit };
}

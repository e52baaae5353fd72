import { listed } from "#base/listed.ts";
import type { Measure } from "../goods.ts";
import { readQuantity } from "./read-quantity.ts";
import type { Written } from "../said.ts";
import { unitNamed, units, unitsOf, type UnitId, type UnitKind } from "./unit-table.ts";

/** An amount held inside (mm², mm, mm³, g, pieces) in a unit: 92903.04 in ft2 is 1. */
export const inUnit = (value: number, unit: UnitId): number => value / units[unit].size;

/** The other way: 1 of ft2 is 92903.04. */
export const ofUnit = (value: number, unit: UnitId): number => value * units[unit].size;

/** An amount as it was read, in the measure's own unit (mm², mm, mm³, g, pieces), and the unit it was written in; or what is wrong: a clause that follows "… cannot be read:". */
export type AmountRead = { readonly value: number; readonly unit: UnitId } | { readonly wrong: string };

/**
 * Reads "6 ft2", "0,4 m²", "1/2 sq ft", "2½ dm2", "1 000 m", "200 pieces". Where no unit is written it counts in `usual`; pieces need none.
 * Refuses what is below nothing, what is no number and units of another kind.
 */
export function readAmount(written: Written, measure: UnitKind, usual: UnitId | undefined = measure === "count" ? "piece" : undefined): AmountRead {
  const text = String(written).trim();
  const [, number = "", unit = ""] = /^([^\p{L}"]*)(.*)$/u.exec(text) ?? [];
  if (text === "") return { wrong: `it is empty; write an amount with its unit: ${unitWords(measure)}` };
  const read = readQuantity(typeof written === "number" ? written : number === "" ? text : number);
  if ("wrong" in read) return read;
  const id = unit === "" ? usual : unitNamed(unit, measure);
  if (id !== undefined) return { value: ofUnit(read.value, id), unit: id };
  return { wrong: unit === "" ? `"${text}" has no unit; write one behind the number: ${unitWords(measure)}` : `"${unit}" is no unit of ${kindWords[measure]} here; write ${unitWords(measure)}` };
}

const kindWords: Readonly<Record<UnitKind, string>> = { area: "area", length: "length", volume: "volume", mass: "weight", count: "count", thickness: "thickness" };

/** "mm², cm² or m²". */
const unitWords = (kind: UnitKind): string => listed(unitsOf(kind), "or");

/** Three figures are enough to shop by: 1230, 123, 12.3, 1.2, 0.12. */
function figures(value: number): string {
  return value >= 99.95 ? value.toFixed(0) : value >= 0.95 || value === 0 ? value.toFixed(1) : value.toFixed(2);
}

/** "18.4 dm² (2.0 ft²)". */
export const areaWords = (mm2: number): string => `${figures(inUnit(mm2, "dm2"))} dm² (${figures(inUnit(mm2, "ft2"))} ft²)`;

/** "451 mm (17.8 in)", from a metre on "4.2 m (4.6 yd)". */
export const lengthWords = (mm: number): string => (mm < 999.5 ? `${mm.toFixed(0)} mm (${figures(inUnit(mm, "in"))} in)` : `${figures(inUnit(mm, "m"))} m (${figures(inUnit(mm, "yd"))} yd)`);

/** "45 g (1.6 oz)", from a kilogram on "1.2 kg (2.6 lb)". */
export const massWords = (g: number): string => (g < 999.5 ? `${g < 9.95 ? g.toFixed(1) : g.toFixed(0)} g (${figures(inUnit(g, "oz"))} oz)` : `${figures(inUnit(g, "kg"))} kg (${figures(inUnit(g, "lb"))} lb)`);

/** "12 cm³", and "12 ml" of what flows. */
export const volumeWords = (mm3: number, sign: "cm³" | "ml" = "cm³"): string => `${figures(inUnit(mm3, "cm3"))} ${sign}`;

export const countWords = (count: number): string => (Math.abs(count - Math.round(count)) < 1e-9 ? count.toFixed(0) : figures(count));

/** An amount in words for the maker, by what measures it. */
export const amountWords = (value: number, measure: Measure): string =>
  measure === "area" ? areaWords(value) : measure === "length" ? lengthWords(value) : measure === "mass" ? massWords(value) : measure === "volume" ? volumeWords(value, "ml") : countWords(value);

const quarters = ["", "¼", "½", "¾"] as const;

/** To the nearest quarter, as weights of leather are told: "2¾". */
export function quarterWords(value: number): string {
  const count = Math.round(4 * value);
  const whole = Math.floor(count / 4), rest = quarters[count % 4]!;
  return whole === 0 && rest !== "" ? rest : `${whole}${rest}`;
}

/** "1.1 mm"; of boards and sheets, which no one tells in ounces. */
export const mmWords = (mm: number): string => `${thick(mm)} mm`;

const thick = (mm: number): string => (Math.abs(10 * mm - Math.round(10 * mm)) < 1e-6 ? mm.toFixed(1) : mm.toFixed(2));

/** "1.1 mm (2¾ oz)"; of soles "4.5 mm (8½ iron)". */
export const thicknessWords = (mm: number, scale: "oz" | "iron" = "oz"): string => `${thick(mm)} mm (${quarterWords(inUnit(mm, scale === "oz" ? "thickOz" : "iron"))} ${scale})`;

/** "1.0 to 1.1 mm (2½ to 2¾ oz)". */
export function thicknessRange(leastMm: number, mostMm: number, scale: "oz" | "iron" = "oz"): string {
  const id = scale === "oz" ? "thickOz" : "iron";
  const [least, most] = [quarterWords(inUnit(leastMm, id)), quarterWords(inUnit(mostMm, id))];
  return `${thick(leastMm)} to ${thick(mostMm)} mm (${least === most ? least : `${least} to ${most}`} ${scale})`;
}

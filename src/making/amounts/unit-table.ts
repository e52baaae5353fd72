import type { Measure } from "../goods.ts";

/** What a unit measures; thickness has units of its own, since an ounce of leather is no mass. */
export type UnitKind = Measure | "thickness";

export interface Unit {
  readonly kind: UnitKind;
  /** How many mm², mm, mm³, g or pieces one of it is; exact. */
  readonly size: number;
  /** As it is written for the maker. */
  readonly sign: string;
}

const inch = 25.4;
const foot = 12 * inch;
const pound = 453.59237;

/**
 * Exact by definition: 1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 3 ft, 1 lb = 453.59237 g (international yard and pound, 1959), 1 oz = 1/16 lb.
 * Thickness: an ounce of leather is 1/64 in (charts of leather weights), an iron of a sole 1/48 in (tables of leather weights).
 */
export const units = {
  mm2: { kind: "area", size: 1, sign: "mm²" },
  cm2: { kind: "area", size: 100, sign: "cm²" },
  dm2: { kind: "area", size: 10_000, sign: "dm²" },
  m2: { kind: "area", size: 1_000_000, sign: "m²" },
  in2: { kind: "area", size: 645.16, sign: "in²" },
  ft2: { kind: "area", size: 92_903.04, sign: "ft²" },
  mm: { kind: "length", size: 1, sign: "mm" },
  cm: { kind: "length", size: 10, sign: "cm" },
  m: { kind: "length", size: 1000, sign: "m" },
  in: { kind: "length", size: inch, sign: "in" },
  ft: { kind: "length", size: foot, sign: "ft" },
  yd: { kind: "length", size: 3 * foot, sign: "yd" },
  mm3: { kind: "volume", size: 1, sign: "mm³" },
  cm3: { kind: "volume", size: 1000, sign: "cm³" },
  ml: { kind: "volume", size: 1000, sign: "ml" },
  l: { kind: "volume", size: 1_000_000, sign: "l" },
  g: { kind: "mass", size: 1, sign: "g" },
  kg: { kind: "mass", size: 1000, sign: "kg" },
  oz: { kind: "mass", size: pound / 16, sign: "oz" },
  lb: { kind: "mass", size: pound, sign: "lb" },
  piece: { kind: "count", size: 1, sign: "pieces" },
  pair: { kind: "count", size: 2, sign: "pairs" },
  dozen: { kind: "count", size: 12, sign: "dozen" },
  thickMm: { kind: "thickness", size: 1, sign: "mm" },
  thickOz: { kind: "thickness", size: inch / 64, sign: "oz" },
  iron: { kind: "thickness", size: inch / 48, sign: "iron" },
} as const satisfies Readonly<Record<string, Unit>>;
export type UnitId = keyof typeof units;

const aliases: Readonly<Record<string, UnitId>> = {
  millimetre: "mm", millimeter: "mm", centimetre: "cm", centimeter: "cm", metre: "m", meter: "m", inch: "in", inches: "in", '"': "in", foot: "ft", feet: "ft", yard: "yd",
  sf: "ft2", sqft: "ft2", sqin: "in2", sqm: "m2", sqcm: "cm2", sqdm: "dm2", sqmm: "mm2",
  cc: "cm3", millilitre: "ml", milliliter: "ml", litre: "l", liter: "l",
  gram: "g", gramme: "g", gr: "g", kilo: "kg", kilogram: "kg", ounce: "oz", pound: "lb", lbs: "lb",
  pc: "piece", pcs: "piece", pce: "piece", prs: "pair", pr: "pair", doz: "dozen", dz: "dozen",
};

const ofThickness: Readonly<Record<string, UnitId>> = { mm: "thickMm", oz: "thickOz", iron: "iron" };

const known = (word: string): UnitId | undefined => (Object.hasOwn(units, word) ? (word as UnitId) : Object.hasOwn(aliases, word) ? aliases[word] : undefined);

/** The unit that is written like this ("sq ft", "ft²", "metres"), for what it is to measure; nothing where there is none. */
export function unitNamed(written: string, kind: UnitKind): UnitId | undefined {
  const plain = written.toLowerCase().replaceAll(".", "").replaceAll("²", "2").replaceAll("³", "3").replaceAll("^", "").trim().replace(/\s+/gu, " ");
  const square = /^(?:square|sq) ?(.+)$/u.exec(plain)?.[1];
  const single = (word: string): UnitId | undefined => known(word) ?? (word.endsWith("s") ? known(word.slice(0, -1)) : undefined);
  const length = square === undefined ? undefined : single(square);
  const id = length === undefined ? single(plain.replaceAll(" ", "")) : known(`${length}2`);
  if (id === undefined) return undefined;
  const fitting = kind === "thickness" ? ofThickness[id] : id;
  return fitting !== undefined && units[fitting].kind === kind ? fitting : undefined;
}

/** The units in which something of this kind may be written, as the maker reads them. */
export const unitsOf = (kind: UnitKind): readonly string[] => Object.values(units).flatMap((unit) => (unit.kind === kind ? [unit.sign] : []));

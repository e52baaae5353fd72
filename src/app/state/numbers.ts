/** Units that a maker reads off her tools. */
export type FieldUnit = "mm" | "%" | "°" | "N" | "kg" | "g";

/** Standard gravity: what a mass of 1 kg pulls, N (exact by definition, 3rd CGPM 1901). */
export const newtonsPerKg = 9.80665;
const newtonsPer: Readonly<Record<string, number>> = { n: 1, kg: newtonsPerKg, g: newtonsPerKg / 1000 };

/** Reads what a maker types into a field of this unit: decimal comma or point, a real minus, the unit behind it; lengths also in cm, loads in N, kg or g. */
export function readMeasure(text: string, unit: FieldUnit): number | undefined {
  const [, number, behind] = /^(.*?)\s*(mm|cm|%|°|N|kg|g)?$/i.exec(text.trim())!;
  const own = unit.toLowerCase();
  const said = behind?.toLowerCase() ?? own;
  const value = readNumber(number!);
  if (value === undefined) return undefined;
  // To the thousandth, so that 7,3 cm is 73 and not a hair beside it.
  if (said === "cm" && unit === "mm") return Number((10 * value).toFixed(3));
  if (said === own) return value;
  const [from, to] = [newtonsPer[said], newtonsPer[own]];
  return from !== undefined && to !== undefined ? Number(((value * from) / to).toFixed(6)) : undefined;
}

/** A bare number. */
function readNumber(text: string): number | undefined {
  const bare = text.replace("−", "-").replace(",", ".");
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare)) return undefined;
  const value = Number(bare);
  return Number.isFinite(value) ? value : undefined;
}

/** Decimals that a step needs: 0.5 → 1, 1 → 0, 0.01 → 2. */
export function decimalsOf(step: number): number {
  for (let d = 0; d < 6; d++) if (Math.abs(step * 10 ** d - Math.round(step * 10 ** d)) < 1e-9) return d;
  return 6;
}

/** A number as it is read on the bench: no trailing zeros, a real minus. */
export function say(value: number, decimals = 1): string {
  const fixed = value.toFixed(decimals);
  const bare = fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
  return bare === "-0" ? "0" : bare.replace("-", "−");
}

/** A number with all its decimals, for columns of figures. */
export function sayFixed(value: number, decimals = 1): string {
  const fixed = value.toFixed(decimals);
  return Number(fixed) === 0 ? fixed.replace("-", "") : fixed.replace("-", "−");
}

export function clamp(value: number, min: number, max: number): number {
  return Math.min(max, Math.max(min, value));
}

/** Nearest multiple of `step`, without the dust of floating point. */
export function snap(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(decimalsOf(step)));
}

/** A length with its unit, kept on one line. */
export function mm(value: number, decimals = 1): string {
  return `${say(value, decimals)}\u00a0mm`;
}

/** A small difference, with its sign where it is more: hundredths under a millimetre, tenths above. */
export function apart(value: number): string {
  return `${value > 0 ? "+" : ""}${say(value, Math.abs(value) < 1 ? 2 : 1)}`;
}

/** A difference in tenths, with its sign where it is more. */
export const signed = (value: number): string => (Number(value.toFixed(1)) > 0 ? "+" : "") + sayFixed(value);

/** A share in percent, kept on one line. */
export function percent(share: number, decimals = 1): string {
  return `${say(share * 100, decimals)}\u00a0%`;
}

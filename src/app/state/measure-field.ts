import type { Rule } from "#lines/lines.ts";
import { decimalsOf, type FieldUnit } from "./numbers.ts";

/** How a value is shown in its field: shown = value · factor. Shares are shown in percent. */
export interface Field {
  readonly factor: number;
  readonly unit: FieldUnit;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly decimals: number;
}

export function fieldOf(rule: Pick<Rule, "min" | "max" | "step" | "unit">): Field {
  const share = rule.unit === "of length" || rule.unit === "share";
  const factor = share ? 100 : 1;
  const step = clean(rule.step * factor);
  const unit = share ? "%" : rule.unit === "deg" ? "°" : rule.unit === "N" ? "N" : "mm";
  return { factor, unit, step, min: clean(rule.min * factor), max: clean(rule.max * factor), decimals: decimalsOf(step) };
}

/** A field for a plain length in mm that no rule speaks of. */
export function lengthField(min: number, max: number, step: number): Field {
  return { factor: 1, unit: "mm", min, max, step, decimals: decimalsOf(step) };
}

const clean = (v: number): number => Number(v.toFixed(6));

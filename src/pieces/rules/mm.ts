import type { Rule } from "#lines/lines.ts";

export const practice = "common practice, no source";

/** A rule for a length in mm. */
export function mm(name: string, value: number, min: number, max: number, step: number, why: string, source: string): Rule {
  return { value, min, max, step, unit: "mm", name, why, source };
}

import type { Rule } from "#lines/lines.ts";
import { possible } from "#shell/possible.ts";
import { fieldOf } from "./measure-field.ts";

/** What may be typed for a number of the pieces at all, in its field's unit: what is unusual is allowed and told, what no shoe has is not. */
export function pieceLimits(key: string, rule: Rule): { readonly least: number; readonly most: number } | undefined {
  // These have a refusal of their own, that names the reason.
  if (key in possible) return undefined;
  const { max } = fieldOf(rule);
  return { least: 0, most: Math.ceil(Math.max(4 * max, max + 20)) };
}

import type { Rule } from "#lines/lines.ts";
import { possibleRange } from "#pieces/possible-range.ts";

/** What may be typed for a number of the pieces at all, mm: just what the core can cut, so that field and refusal name one range. */
export function pieceLimits(key: string, rule: Rule): { readonly least: number; readonly most: number } {
  const [least, most] = possibleRange(key, rule);
  return { least, most };
}

import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { seamToleranceMm } from "./check/seams.ts";
import type { NetUpper } from "./net-upper.ts";
import { possibleRange } from "./possible-range.ts";
import type { PieceRules, PieceSettings } from "./settings.ts";

/**
 * Looks at the settings before anything is drawn. Throws a Refusal for what is no number or would turn a piece inside out;
 * returns notes for what is outside the usual range.
 */
export function checkSettings(rules: PieceRules, settings: PieceSettings): readonly Finding[] {
  const findings: Finding[] = [];
  for (const [key, rule] of Object.entries(rules)) {
    const value = settings[key as keyof PieceSettings];
    const [least, most] = possibleRange(key, rule);
    if (!(value >= least && value <= most)) throw new Refusal(finding("piece-setting-impossible", { name: rule.name, value, least, most }));
    if (value < rule.min || value > rule.max) findings.push(finding("piece-setting-unusual", { name: rule.name, value, min: rule.min, max: rule.max }));
  }
  return findings;
}

/** What making the back edges equal has moved. */
export function checkBack({ backDifferenceMm }: NetUpper): readonly Finding[] {
  if (Math.abs(backDifferenceMm) <= seamToleranceMm) return [];
  return [finding("back-edges-differ", { differenceMm: backDifferenceMm, allowedMm: seamToleranceMm })];
}

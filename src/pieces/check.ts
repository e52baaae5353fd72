import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Thicknesses } from "#shell/beneath.ts";
import { possible } from "#shell/possible.ts";
import { seamToleranceMm } from "./check/seams.ts";
import type { NetUpper } from "./net-upper.ts";
import type { PieceRules, PieceSettings } from "./settings.ts";

/** Most that any allowance may be at all, mm; a longer part, such as a shank, twice the most that is usual. */
const mostAllowanceMm = 100;

/**
 * Looks at the settings before anything is drawn. Throws a Refusal for what is no number or would turn a piece inside out;
 * returns notes for what is outside the usual range.
 */
export function checkSettings(rules: PieceRules, settings: PieceSettings): readonly Finding[] {
  const findings: Finding[] = [];
  for (const [key, rule] of Object.entries(rules)) {
    const value = settings[key as keyof PieceSettings];
    const [least, most] = key in possible ? possible[key as keyof Thicknesses] : [Math.min(0, rule.min), Math.max(mostAllowanceMm, 2 * rule.max)];
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

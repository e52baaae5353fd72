import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Rule } from "#lines/lines.ts";
import type { BeneathSettings, PiecesBeneath } from "./beneath.ts";
import type { ShellRules } from "./settings.ts";

/**
 * The least and the most that what lies beneath an upper may be at all, mm: twice and more what any pump is made of, and short of where
 * the surface pushed outward runs into itself. Our own limits.
 */
export const possible: Readonly<Record<keyof BeneathSettings, readonly [least: number, most: number]>> = {
  upperThicknessMm: [0, 5],
  liningThicknessMm: [0, 4],
  toePuffMm: [0, 4],
  sideLiningMm: [0, 3],
  sideLiningHeightMm: [0, 100],
  sideLiningBelowMm: [0, 100],
  sideLiningLapMm: [0, 100],
  counterMm: [0, 5],
  counterBelowMm: [0, 60],
  counterInnerMm: [0, 180],
  counterOuterMm: [0, 180],
  puffReachMm: [0, 150],
  skiveMm: [0.5, 60],
  skiveFeatherMm: [0.5, 60],
};

/**
 * @throws Refusal `piece-setting-impossible` or `shell-setting-impossible` that names the first thickness or length which is no number or
 * outside {@link possible}; `pieces` are the rules of what the pieces' settings say
 */
export function refuseImpossible(settings: BeneathSettings, pieces: Readonly<Record<keyof PiecesBeneath, Rule>>, shell: ShellRules): void {
  for (const key of Object.keys(possible) as (keyof BeneathSettings)[]) {
    const value = settings[key], [least, most] = possible[key];
    if (value >= least && value <= most) continue;
    if (isOfPieces(key)) throw new Refusal(finding("piece-setting-impossible", { name: pieces[key].name, value, least, most }));
    throw new Refusal(finding("shell-setting-impossible", { name: shell[key].name, value, least, most }));
  }
}

const isOfPieces = (key: keyof BeneathSettings): key is keyof PiecesBeneath => key.startsWith("sideLining") || key === "upperThicknessMm" || key === "liningThicknessMm" || key === "toePuffMm";

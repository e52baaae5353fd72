import { finding, type Finding } from "#base/findings.ts";
import type { Measures } from "#last/last.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { TapedShell } from "#tape/taped-shell.ts";
import { isFolded } from "./choices.ts";
import { bottomRules } from "./rules/bottom.ts";
import { extraRules } from "./rules/extras.ts";
import { lastingRules } from "./rules/lasting.ts";
import { liningRules } from "./rules/lining.ts";
import { seamRules } from "./rules/seams.ts";
import { stiffeningRules } from "./rules/stiffening.ts";
import { upperRules } from "./rules/upper.ts";
import type { PieceRules, PieceSettings } from "./settings.ts";

/**
 * Every allowance and thickness as a rule of construction. Allowances do not grow with the size; only the most that the
 * lasting margins may be depends on the last, since margins from both sides must not meet in the middle of the bottom. A raw topline
 * has no fold.
 */
export function pieceRulesFor(last: { readonly measures: Pick<Measures, "ballWidth" | "seatWidth"> & Partial<Pick<Measures, "stickLength">> }, edge: ToplineEdge = "taped"): PieceRules {
  const halfBall = Math.max(20, Math.floor(last.measures.ballWidth / 2) - 4);
  const halfSeat = Math.max(20, Math.floor(last.measures.seatWidth / 2) - 1);
  return { ...lastingRules(Math.min(30, halfBall), Math.min(30, halfSeat)), ...upperRules(edge), ...seamRules, ...liningRules(last.measures.stickLength ?? usualStickMm), ...stiffeningRules, ...bottomRules(last.measures.stickLength ?? usualStickMm), ...extraRules };
}

/** EU 37, where the length is not known. */
const usualStickMm = 251;

/** Widths of the bottom as shares of its length, where no bottom was traced (clean lasts: 0.30 to 0.31 and 0.205 to 0.21). */
const usualWidths = { ball: 0.305, seat: 0.208 } as const;

/** The same rules for a taped pattern, by its traced bottom or else by the widths that are usual at its length. */
export function pieceRulesForTape({ bottom, length }: TapedShell, edge?: ToplineEdge): PieceRules {
  return pieceRulesFor({ measures: { ballWidth: bottom?.ballWidthMm ?? usualWidths.ball * length.mm, seatWidth: bottom?.seatWidthMm ?? usualWidths.seat * length.mm, stickLength: length.mm } }, edge);
}

/** All rules at their default, with what the maker chose instead; a rule that leaves no choice stands as it is. */
export function pieceSettingsFrom(rules: PieceRules, chosen: Partial<PieceSettings> = {}): PieceSettings {
  const settings: Record<string, number> = {};
  for (const [key, rule] of Object.entries(rules)) settings[key] = (rule.min < rule.max ? chosen[key as keyof PieceSettings] : undefined) ?? rule.value;
  return settings as unknown as PieceSettings;
}

/** A maker's own fold is kept, but not cut, where the topline is made in another way: that is said. */
export function foldLeftOut(edge: ToplineEdge | undefined, { toplineFoldMm = 0 }: Partial<PieceSettings>): readonly Finding[] {
  return edge !== undefined && !isFolded(edge) && toplineFoldMm > 0 ? [finding("raw-edge-has-no-fold", { foldMm: toplineFoldMm, edge })] : [];
}

/** The names of all settings, whatever the last. */
export const pieceKeys = Object.keys(pieceRulesFor({ measures: { ballWidth: 80, seatWidth: 55 } })) as readonly (keyof PieceSettings)[];

/** Those that the bottom follows from: its own, the lasting margins and what lies under the feather line. */
export const bottomKeys: readonly (keyof PieceSettings)[] = [
  ...(Object.keys(bottomRules(usualStickMm)) as (keyof PieceSettings)[]),
  ...(Object.keys(lastingRules(30, 30)) as (keyof PieceSettings)[]),
  "upperThicknessMm",
  "liningThicknessMm",
  "liningLastingShorterMm",
  "sideLiningMm",
  "toeCapMm",
  "toeCapBowMm",
  "backStripFeatherMm",
];
/** Those that nothing but the bottom follows from. */
export const bottomOnlyKeys: ReadonlySet<keyof PieceSettings> = new Set(Object.keys(bottomRules(usualStickMm)).filter((key) => key !== "toePuffMm") as (keyof PieceSettings)[]);

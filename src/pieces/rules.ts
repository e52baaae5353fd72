import { finding, type Finding } from "#base/findings.ts";
import type { Measures } from "#last/last.ts";
import type { Rule } from "#lines/lines.ts";
import type { TapedShell } from "#tape/taped-shell.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { PieceRules, PieceSettings } from "./settings.ts";

const practice = "common practice, no source";
const handLasting = "common practice of hand lasting, no source; notes on a factory shoemaking manual of 1957 give 9.5 to 16 mm for machines";
const foldedEdge = "trade notes on edge finishing: 3.5 to 4 mm for light calf and kid, 6 to 6.5 mm for heavy grain; other makers give 4 and 5 mm";
const soleAtToe = "a shoemaking textbook's rule of about 2 mm at the toe; the rest is common practice, no source";

function mm(name: string, value: number, min: number, max: number, step: number, why: string, source: string): Rule {
  return { value, min, max, step, unit: "mm", name, why, source };
}

/**
 * Every allowance and thickness as a rule of construction. Allowances do not grow with the size; only the most that the
 * lasting margins may be depends on the last, since margins from both sides must not meet in the middle of the bottom. A raw topline
 * has no fold.
 */
export function pieceRulesFor(last: { readonly measures: Pick<Measures, "ballWidth" | "seatWidth"> }, edge: ToplineEdge = "taped"): PieceRules {
  const halfBall = Math.max(20, Math.floor(last.measures.ballWidth / 2) - 4);
  const halfSeat = Math.max(20, Math.floor(last.measures.seatWidth / 2) - 1);
  return { ...lastingRules(Math.min(30, halfBall), Math.min(30, halfSeat)), ...upperRules, ...(edge === "raw" ? rawEdge : {}), ...liningRules, ...bottomRules };
}

/** Widths of the bottom as shares of its length, where no bottom was traced (clean lasts: 0.30 to 0.31 and 0.205 to 0.21). */
const usualWidths = { ball: 0.305, seat: 0.208 } as const;

/** The same rules for a taped pattern, by its traced bottom or else by the widths that are usual at its length. */
export function pieceRulesForTape({ bottom, length }: TapedShell, edge?: ToplineEdge): PieceRules {
  return pieceRulesFor({ measures: { ballWidth: bottom?.ballWidthMm ?? usualWidths.ball * length.mm, seatWidth: bottom?.seatWidthMm ?? usualWidths.seat * length.mm } }, edge);
}

/** All rules at their default, with what the maker chose instead; a rule that leaves no choice stands as it is. */
export function pieceSettingsFrom(rules: PieceRules, chosen: Partial<PieceSettings> = {}): PieceSettings {
  const settings: Record<string, number> = {};
  for (const [key, rule] of Object.entries(rules)) settings[key] = (rule.min < rule.max ? chosen[key as keyof PieceSettings] : undefined) ?? rule.value;
  return settings as unknown as PieceSettings;
}

/** A maker's own fold is kept, but not cut, where the topline is raw: that is said. */
export function foldLeftOut(edge: ToplineEdge | undefined, { toplineFoldMm = 0 }: Partial<PieceSettings>): readonly Finding[] {
  return edge === "raw" && toplineFoldMm > 0 ? [finding("raw-edge-has-no-fold", { foldMm: toplineFoldMm })] : [];
}

function lastingRules(most: number, mostAtHeel: number) {
  return {
    lastingToeMm: mm("Lasting margin at the toe", 20, 12, most, 0.5,
      "The pincers need a full grip at the first pull over the toe. It is trimmed to 10 to 12 mm once it is stuck down.", handLasting),
    lastingToeSidesMm: mm("Lasting margin beside the toe", 18, 12, most, 0.5,
      "Here the pleats are made. Too much leather makes them thick, too little slips out of the pincers.", handLasting),
    lastingForepartMm: mm("Lasting margin to the joint", 18, 12, most, 0.5,
      "Enough for the pincers where the upper is pulled across the forepart.", handLasting),
    lastingOuterWaistMm: mm("Lasting margin, outer waist", 18, 12, most, 0.5,
      "The outer waist is nearly straight, so it asks for no more than the pincers do.", handLasting),
    lastingInnerWaistMm: mm("Lasting margin, inner waist", 20, 12, most, 0.5,
      "The inner waist is hollow: the leather has farther to go under the arch before it reaches the insole.", handLasting),
    lastingHeelMm: mm("Lasting margin at the heel", 18, 12, mostAtHeel, 0.5,
      "The heel is pleated round the seat over the stiffener, which takes up a little of the margin.", handLasting),
  } as const;
}

const upperRules = {
  toplineFoldMm: mm("Fold at the topline", 4.5, 3, 7, 0.5,
    "Turned over the tape and hammered flat. Thin kid wants less, heavy grain more; it must be skived first.", foldedEdge),
  backSeamMm: mm("Closed back seam", 1.5, 1, 3, 0.1,
    "Sewn grain to grain, rubbed down and taped. More would lie as a ridge on the heel.", practice),
  upperThicknessMm: mm("Thickness of the upper", 1.1, 0.5, 2, 0.1,
    "Measured on your leather. It lies under the sole's edge on both sides, so the sole grows with it.", practice),
} as const;

const rawEdge = {
  toplineFoldMm: mm("Fold at the topline", 0, 0, 0, 0.5, "A raw edge is cut net, then inked or sealed; nothing is turned over.", "trade notes on edge finishing"),
} as const;

const liningRules = {
  liningThicknessMm: mm("Thickness of the lining", 0.8, 0.4, 1.5, 0.1,
    "Measured on your leather. It lies inside the upper, so it must be cut smaller than the upper.", practice),
  liningTrimMm: mm("Lining left above the topline", 3, 0, 8, 0.5,
    "Stands above the edge while it is stitched and is trimmed off afterwards.", "trade notes on the trim allowance; 3 mm is common practice"),
  liningBackInTopMm: mm("Lining taken in at the back, topline", 2.5, 0, 6, 0.5,
    "The lining runs inside the upper and the stiffener, on a shorter way round the heel. A lining cut too big makes folds.", practice),
  liningBackInMiddleMm: mm("Lining taken in at the back, middle", 3.5, 0, 6, 0.5,
    "Half-way down the heel curve the stiffener is thickest and the way inside it shortest.", practice),
  liningBackInFeatherMm: mm("Lining taken in at the back, feather", 4.5, 0, 8, 0.5,
    "At the seat the heel is fullest, and the lining is drawn under as well.", practice),
  liningToeInMm: mm("Lining taken in at the toe", 2.5, 0, 5, 0.5,
    "The lining is lasted first and lies under the toe puff, so it needs less length than the upper.", practice),
  liningLastingShorterMm: mm("Lining's lasting margin shorter by", 4, 0, 8, 0.5,
    "The lining is lasted first and trimmed on the insole, so that the margins lie in steps and not in a ridge.", practice),
} as const;

const bottomRules = {
  insoleInMm: mm("Insole inside the feather line", 0.3, 0, 1, 0.1,
    "Leaves room for cement at the edge; a board that stands out shows through the upper.", practice),
  toePuffMm: mm("Thickness of the toe puff", 0.8, 0, 2, 0.1,
    "Lies between lining and upper at the toe, so the sole must reach that much farther there.", practice),
  soleFinishForepartMm: mm("Sole edge, forepart", 2, 0, 6, 0.5,
    "What is left to trim and finish the edge, and a little to be seen from above.", soleAtToe),
  soleFinishWaistMm: mm("Sole edge, waist", 0.5, 0, 4, 0.5,
    "The waist is kept close so that it looks slim.", soleAtToe),
  soleFinishHeelMm: mm("Sole edge, heel", 1.2, 0, 4, 0.1,
    "What is rasped away when the heel and the sole are levelled together.", soleAtToe),
  sockInMm: mm("Sock inside the insole", 0.7, -1, 3, 0.1,
    "The sock must lie flat inside the shoe; if it touches the upper, its edge curls.", practice),
} as const;

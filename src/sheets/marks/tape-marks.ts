import type { Last } from "#last/last.ts";
import { arcNearest } from "#last/surface-curve.ts";
import { featherHalf, type Half } from "#lines/feather.ts";
import type { HeightMark, Lines } from "#lines/lines.ts";

/** Where an accepted difference between the two shoes comes from. */
export type Ground = "factory rule" | "common practice";

/** One length to be taped on both lasts, mm. */
export interface TapeMark {
  readonly key: string;
  /** Short, for the strips. */
  readonly tick: string;
  readonly words: string;
  readonly lengthMm: number;
  /** Largest accepted difference between the finished shoes, if one is named. */
  readonly accepted?: { readonly mm: number; readonly ground: Ground };
}

/** All lengths of one pair, in the order in which they are marked. The same numbers serve both lasts. */
export interface TapeMarks {
  readonly throat: TapeMark;
  readonly back: TapeMark;
  readonly heights: Readonly<Record<Half, readonly TapeMark[]>>;
  /** From the seat point along the feather line: where the heights are taken, and the joint point. */
  readonly along: Readonly<Record<Half, readonly TapeMark[]>>;
}

export const sideWords: Readonly<Record<Half, string>> = { medial: "Inside", lateral: "Outside" };
/** Quarters of the way from the seat point to below the throat. */
export const quarterWords = ["1/4", "1/2", "3/4"] as const;

// Throat 1.0 to 1.5 mm and back height 1.0 mm for low-cut shoes: a factory's work instruction of 2014, as published. Of the
// throat the stricter end is taken. Side heights 1.5 mm: common practice, no source.
export const byRule = (mm: number) => ({ mm, ground: "factory rule" as const });
export const byPractice = (mm: number) => ({ mm, ground: "common practice" as const });

/** The tape lengths that make two lasts alike: throat, back, side heights and where they are taken, joints. */
export function tapeMarks(last: Last, lines: Lines): TapeMarks {
  const lowest = { medial: lines.lowestMedial, lateral: lines.lowestLateral };
  /** Quarters and the lowest place in the order in which the tape meets them. */
  const fromHeel = (half: Half, low: HeightMark) =>
    [...lines.quarterHeights[half].map((mark, i) => ({ key: `quarter-${i + 1}`, tick: quarterWords[i] ?? "", mark })), { key: "lowest", tick: "low", mark: low }].sort((a, b) => a.mark.alongFeatherMm - b.mark.alongFeatherMm);
  const heights = (half: Half): readonly TapeMark[] => {
    const at = (key: string, tick: string, words: string, m: HeightMark): TapeMark => ({ key: `${half}-${key}`, tick, words: `${sideWords[half]}, ${words}`, lengthMm: m.heightMm, accepted: byPractice(1.5) });
    return fromHeel(half, lowest[half]).map(({ key, tick, mark }) => at(key, tick, tick === "low" ? "height, lowest place" : `height at ${tick}`, mark));
  };
  const along = (half: Half): readonly TapeMark[] => {
    const at = (key: string, tick: string, lengthMm: number): TapeMark => ({ key: `${half}-along-${key}`, tick, words: `${sideWords[half]}, ${tick} point`, lengthMm });
    const joint = half === "medial" ? last.landmarks.jointMedial : last.landmarks.jointLateral;
    return [
      ...fromHeel(half, lowest[half]).map(({ key, tick, mark }) => at(key, tick, mark.alongFeatherMm)),
      at("joint", "joint", arcNearest(featherHalf(last.feather, half), joint)),
    ];
  };
  return {
    throat: { key: "throat", tick: "throat", words: "Throat depth, toe to throat", lengthMm: lines.settings.throatDepthMm, accepted: byRule(1) },
    back: { key: "back", tick: "back", words: "Back height, seat to back point", lengthMm: lines.settings.backHeightMm, accepted: byRule(1) },
    heights: { medial: heights("medial"), lateral: heights("lateral") },
    along: { medial: along("medial"), lateral: along("lateral") },
  };
}

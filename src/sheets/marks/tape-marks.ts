import { tolerances } from "#lasting/log-tolerances.ts";
import type { Half } from "#lines/feather.ts";

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

/** The largest accepted differences, as the log judges a pair; of a factory's throat the stricter end is taken. */
export const acceptedAt = {
  throat: { mm: tolerances.throatDepthMm.mm, ground: "factory rule" },
  back: { mm: tolerances.backHeightMm.mm, ground: "factory rule" },
  side: { mm: tolerances.innerHeightMm.mm, ground: "common practice" },
} as const satisfies Record<string, TapeMark["accepted"]>;

/** The largest accepted difference for a mark of a last, by its letter. */
export const acceptedOf = (letter: string): TapeMark["accepted"] => (letter === "A" ? acceptedAt.throat : letter === "B" ? acceptedAt.back : "CDEF".includes(letter) ? acceptedAt.side : undefined);
/** "1.0 a"; the letters are explained by {@link acceptedNotes}. */
export const acceptedWords = (accepted: TapeMark["accepted"]): string => (accepted ? `${accepted.mm.toFixed(1)} ${accepted.ground === "factory rule" ? "a" : "b"}` : "");
export const acceptedNotes =
  "Accepted difference between right and left when lasted. a: as in a factory's published work instruction for low-cut shoes (back height 1.0 mm, throat 1.0 to 1.5 mm). b: common practice, no source. Lengths are rounded to half a millimetre, the strips are exact.";

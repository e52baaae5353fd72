import type { Chosen } from "#pieces/choices.ts";

/** The numbers of the pieces in the order in which they are met at the bench. */
export const pieceGroups = ["lasting margin", "topline and seams", "lining", "stiffening", "bottom", "heel", "extras"] as const;
export type PieceGroup = (typeof pieceGroups)[number];

/** One sentence with numbers in it: a number stands as its key in braces, "It reaches {lastingToeMm} at the toe." */
export interface PieceWords {
  /** What the sentence is about, for those who hear the page. */
  readonly name: string;
  readonly group: PieceGroup;
  readonly words: string;
  /** Names of the pieces that follow from it. */
  readonly governs: RegExp;
  /** Where it says nothing, since the maker chose otherwise; without it, it always counts. */
  readonly when?: (chosen: Chosen) => boolean;
}

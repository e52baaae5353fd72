import type { Side } from "#last/last.ts";

/** Which of the named points of a taped pattern: the four corners of a half and its joint point, and the ends of a traced bottom. */
export type TapeMark = `${"toe" | "throat" | "back" | "seat" | "joint"}${"Medial" | "Lateral"}` | `bottom${"Toe" | "Seat" | "JointMedial" | "JointLateral"}`;

/** A place on the card's plane in one of the photographs, mm, x to the right and y up as seen from above. */
export interface TapePlace {
  readonly photo: string;
  readonly at: readonly [number, number];
}

/** At most this many pictures make one pattern. */
export const mostPhotos = 12;

/** What the maker says about the tape she took off her last. */
export interface TapeSaid {
  /** Names of the pictures that lie beside the job: both halves in one, or one each, and the bottom if it was traced. */
  readonly photos: readonly string[];
  /** The last that was taped. */
  readonly side: Side;
  /** The halves lie with the side that was on the last upward. */
  readonly faceDown?: boolean;
  /** What her own rule reads on the bar that is printed on the card, mm. */
  readonly barMm?: number;
  /** Points she placed herself, against those that were found. */
  readonly marks?: Partial<Record<TapeMark, TapePlace>>;
}

import type { Outline } from "#plane/outline.ts";
import type { Side } from "./last.ts";

/** Toe shapes in plain words, from the broadest to the sharpest. */
export const toeShapes = ["broad round", "round", "square", "narrow square", "almond", "pointed"] as const;
export type ToeShape = (typeof toeShapes)[number];

/** What a maker without a scanner measures on her last; mm. Definitions as in {@link Measures} of last.ts. */
export interface LastMeasurements {
  readonly side: Side;
  readonly toe: ToeShape;
  readonly stickLengthMm: number;
  readonly jointGirthMm: number;
  readonly waistGirthMm: number;
  readonly instepGirthMm: number;
  readonly heelGirthMm: number;
  readonly ballWidthMm: number;
  readonly seatWidthMm: number;
  readonly heelHeightMm: number;
  readonly toeSpringMm: number;
}

/**
 * The last drawn round on paper: closed outlines, mm, in any pose of their plane and of either hand (the paper may have been turned
 * over).
 */
export interface LastOutlines {
  /** Drawn round the last as it stands on the paper at its pitch (on its heel block): its silhouette from above. */
  readonly bottom?: Outline;
  /** Drawn round the last lying on its side, comb and bottom upright to the paper: its silhouette from the side. */
  readonly side?: Outline;
  /** Thickness of the pencil: the line runs half of it outside the last. Left out: told from the stick length, 0 to 9 mm. */
  readonly pencilMm?: number;
}

import type { Side } from "./last.ts";

/** Toe shapes in plain words. */
export type ToeShape = "round" | "almond" | "square" | "pointed";

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

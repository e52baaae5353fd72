import type { Finding } from "#base/findings.ts";
import type { Watch } from "#base/watch.ts";
import type { Outline } from "#plane/outline.ts";
import type { Picture } from "./picture.ts";
import type { Placing } from "./placing.ts";

/** What an outline is the edge of. */
export type OutlineKind = "cut piece" | "drawn line";

/** What the maker says about the printed card. */
export interface SaidOfCard {
  /** What her own rule reads on the upright bar (printed 200 mm long). */
  readonly barMm?: number;
  /** The same on the lying bar (printed 100 mm long), where she measured it too. */
  readonly barAcrossMm?: number;
}

/** How good the picture is, for showing. */
export interface PhotoCheck {
  /** Root mean square distance of the seen corners from where the fit puts them, px. */
  readonly rmsPx: number;
  /** How far the camera looked from straight down. */
  readonly tiltDeg: number;
  /** Lengths between corners that had no part in the fit: as printed, and as read from the picture. */
  readonly heldOut: readonly { readonly askedMm: number; readonly readMm: number }[];
  readonly pxPerMm: number;
}

export interface TracedPhoto {
  /** Closed, mm on the card's plane, x to the right and y up as seen from above, largest first. */
  readonly outlines: readonly Outline[];
  /** One per outline. */
  readonly kinds: readonly OutlineKind[];
  readonly check: PhotoCheck;
  /** Where the card's plane lies in the picture. */
  readonly card: Placing;
  /** The part of the plane in which outlines are looked for, mm. */
  readonly window: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
  readonly findings: readonly Finding[];
}

/**
 * Finds the card in a picture, takes lens and perspective out, and traces what lies in its window. `readyForPhotos()`
 * (image-library.ts) must have been awaited once before.
 * @throws Refusal with advice, where the picture cannot be as true as 0.3 mm + 0.1 %
 */
export declare function tracePhoto(picture: Picture, said: SaidOfCard, watch: Watch): TracedPhoto;

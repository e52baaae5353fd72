import type { Finding } from "#base/findings.ts";
import type { Outline } from "#plane/outline.ts";

/** A photograph with lens and perspective taken out, seen from straight above: every pixel is a place on the card's plane. */
export interface FlatPhoto {
  readonly width: number;
  readonly height: number;
  /** Rows from above, four bytes a pixel. */
  readonly rgba: Uint8ClampedArray<ArrayBuffer>;
  readonly pxPerMm: number;
  /** Upper left corner of the picture on the card's plane, mm, y up. */
  readonly minX: number;
  readonly maxY: number;
}

/** What was seen in a photograph. */
export interface SeenPhoto {
  readonly flat: FlatPhoto;
  /** Closed, on the card's plane, mm, y up; the largest first. */
  readonly outlines: readonly Outline[];
  readonly check: PhotoCheck;
  readonly findings: readonly Finding[];
}

/** How well the card was read. */
export interface PhotoCheck {
  /** Middle miss of the card's corners, px of the photograph. */
  readonly rmsPx: number;
  readonly tiltDeg: number;
  /** Lengths on the card that were not used to lay the picture flat, and how they read. */
  readonly heldOut: readonly { readonly askedMm: number; readonly readMm: number }[];
  /** How fine the photograph is on the card. */
  readonly pxPerMm: number;
}

export interface ToPhotoWorker {
  readonly id: number;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly barMm: number | undefined;
}

export type FromPhotoWorker =
  | { readonly say: "progress"; readonly id: number; readonly fraction: number }
  | { readonly say: "seen"; readonly id: number; readonly seen: SeenPhoto }
  | { readonly say: "refused"; readonly id: number; readonly finding: Finding }
  | { readonly say: "broke"; readonly id: number; readonly why: string };

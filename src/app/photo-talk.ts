import type { Finding } from "#base/findings.ts";
import type { OutlineKind, PhotoCheck, TracedPhoto } from "#photo/trace-photo.ts";
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
  readonly kinds: readonly OutlineKind[];
  readonly check: PhotoCheck;
  readonly findings: readonly Finding[];
}

export interface ToPhotoWorker {
  readonly id: number;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly barMm: number | undefined;
  /** What was traced in it, where that is known already. */
  readonly traced: TracedPhoto | undefined;
}

export type FromPhotoWorker =
  | { readonly say: "progress"; readonly id: number; readonly fraction: number }
  | { readonly say: "seen"; readonly id: number; readonly seen: SeenPhoto }
  | { readonly say: "refused"; readonly id: number; readonly finding: Finding }
  | { readonly say: "broke"; readonly id: number; readonly why: string };

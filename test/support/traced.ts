import type { TracedPhoto } from "#photo/trace-photo.ts";
import type { Outline } from "#plane/outline.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";

/** A traced picture with given outlines, as if it had been taken from straight above with a perfect camera. */
export function tracedPicture(photo: string, outlines: readonly Outline[]): TracedPicture {
  const traced: TracedPhoto = {
    outlines,
    kinds: outlines.map(() => "cut piece"),
    check: { rmsPx: 0, tiltDeg: 0, heldOut: [], pxPerMm: 8 },
    card: { homography: Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1), k1: 0, k2: 0, centrePx: [0, 0], radiusPx: 1 },
    window: { minX: -1000, minY: -1000, maxX: 1000, maxY: 1000 },
    findings: [],
  };
  return { photo, traced };
}

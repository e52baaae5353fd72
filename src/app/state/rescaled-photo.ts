import type { TracedPhoto } from "#photo/trace-photo.ts";
import type { SeenPhoto } from "../photo-talk.ts";

/**
 * A photograph that was laid flat, as it lies with another reading of the card's bar: the pixels are the same, only a millimetre is
 * another part of them. `traced` is what was traced in it with that reading.
 */
export function rescaledPhoto(seen: SeenPhoto, traced: TracedPhoto): SeenPhoto {
  const { flat } = seen;
  const { window, outlines, kinds, check, findings } = traced;
  // The window begins at the same printed place, which is not nought.
  const larger = window.minX / flat.minX;
  return { flat: { ...flat, pxPerMm: flat.pxPerMm / larger, minX: window.minX, maxY: window.maxY }, outlines, kinds, check, findings };
}

import { toPicture } from "./placing.ts";
import type { Picture } from "./picture.ts";
import type { TracedPhoto } from "./trace-photo.ts";

/**
 * The card's window as seen from straight above, for showing: lens and perspective out, `pxPerMm` pixels to a true millimetre.
 * The first pixel is the upper left corner of `traced.window`; y runs down as in every picture.
 */
export function flatView(picture: Picture, { card, window }: Pick<TracedPhoto, "card" | "window">, pxPerMm: number): Picture {
  const width = Math.max(1, Math.round((window.maxX - window.minX) * pxPerMm));
  const height = Math.max(1, Math.round((window.maxY - window.minY) * pxPerMm));
  const rgba = new Uint8Array(4 * width * height);
  const { width: wide, height: high, rgba: from } = picture;
  for (let j = 0, k = 0; j < height; j++) {
    for (let i = 0; i < width; i++, k += 4) {
      const [x, y] = toPicture(card, window.minX + (i + 0.5) / pxPerMm, window.maxY - (j + 0.5) / pxPerMm);
      const cx = Math.min(Math.max(x, 0), wide - 1.001), cy = Math.min(Math.max(y, 0), high - 1.001);
      const at = 4 * (Math.floor(cy) * wide + Math.floor(cx)), below = at + 4 * wide;
      const u = cx - Math.floor(cx), v = cy - Math.floor(cy);
      for (let c = 0; c < 3; c++) rgba[k + c] = (1 - v) * ((1 - u) * from[at + c]! + u * from[at + 4 + c]!) + v * ((1 - u) * from[below + c]! + u * from[below + 4 + c]!) + 0.5;
      rgba[k + 3] = 255;
    }
  }
  return { width, height, rgba };
}

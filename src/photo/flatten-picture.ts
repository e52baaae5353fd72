import type { Watch } from "#base/watch.ts";
import type { Box } from "./card.ts";
import { lightOfValue } from "./grey.ts";
import { fieldAt, type Field } from "./light.ts";
import type { Picture } from "./picture.ts";
import { toPicture, type Placing } from "./placing.ts";

/**
 * The window seen from straight above, lens, perspective and uneven light taken out. Cell (i, j) is the plane point
 * (minX + i · stepMm, minY + j · stepMm): row 0 at the bottom, y up. Three planes one after the other, red, green, blue;
 * linear light, 1 for white paper.
 */
export interface FlatPicture {
  readonly width: number;
  readonly height: number;
  readonly minX: number;
  readonly minY: number;
  readonly stepMm: number;
  readonly light: Float32Array;
}

export function flattenPicture(picture: Picture, placing: Placing, white: readonly [Field, Field, Field], box: Box, stepMm: number, watch: Watch): FlatPicture {
  const width = Math.floor((box.maxX - box.minX) / stepMm) + 1;
  const height = Math.floor((box.maxY - box.minY) / stepMm) + 1;
  const light = new Float32Array(3 * width * height);
  const of = lightOfValue();
  const size = width * height;
  for (let j = 0; j < height; j++) {
    if (j % 64 === 0) watch("flat", j / height);
    const y = box.minY + j * stepMm;
    for (let i = 0; i < width; i++) {
      const x = box.minX + i * stepMm;
      const [px, py] = toPicture(placing, x, y);
      const k = j * width + i;
      for (let c = 0; c < 3; c++) {
        const bright = Math.max(0.02, fieldAt(white[c]!, x, y));
        light[c * size + k] = colourAt(picture, of, px, py, c) / bright;
      }
    }
  }
  return { width, height, minX: box.minX, minY: box.minY, stepMm, light };
}

/** Linear light of one colour between pixels, bilinear; the nearest edge pixel outside. */
function colourAt({ width, height, rgba }: Picture, of: Float32Array, x: number, y: number, c: number): number {
  const cx = Math.min(Math.max(x, 0), width - 1.001);
  const cy = Math.min(Math.max(y, 0), height - 1.001);
  const i = Math.floor(cx), j = Math.floor(cy);
  const u = cx - i, v = cy - j;
  const k = 4 * (j * width + i) + c;
  const below = k + 4 * width;
  return (1 - v) * ((1 - u) * of[rgba[k]!]! + u * of[rgba[k + 4]!]!) + v * ((1 - u) * of[rgba[below]!]! + u * of[rgba[below + 4]!]!);
}

import type { Picture } from "./picture.ts";

/** Brightness of each pixel, 0 to 1, in linear light (what adds up when a pixel sees two things). Row 0 on top. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

/** Light of each of the 256 values of sRGB (IEC 61966-2-1). */
export function lightOfValue(): Float32Array {
  return Float32Array.from({ length: 256 }, (_, i) => {
    const v = i / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
}

/** Luminance (weights of ITU-R BT.709). */
export function greyOf({ width, height, rgba }: Picture): Grey {
  const of = lightOfValue();
  const light = new Float32Array(width * height);
  for (let i = 0, k = 0; i < light.length; i++, k += 4) light[i] = 0.2126 * of[rgba[k]!]! + 0.7152 * of[rgba[k + 1]!]! + 0.0722 * of[rgba[k + 2]!]!;
  return { width, height, light };
}

/** Light between pixels, bilinear; the nearest edge pixel outside. */
export function lightAt({ width, height, light }: Grey, x: number, y: number): number {
  const cx = Math.min(Math.max(x, 0), width - 1.001);
  const cy = Math.min(Math.max(y, 0), height - 1.001);
  const i = Math.floor(cx), j = Math.floor(cy);
  const u = cx - i, v = cy - j;
  const k = j * width + i;
  return (1 - v) * ((1 - u) * light[k]! + u * light[k + 1]!) + v * ((1 - u) * light[k + width]! + u * light[k + width + 1]!);
}

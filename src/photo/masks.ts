import { imageLibrary } from "./image-library.ts";

/** Cells that belong to something (1) or not (0), row by row. */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly on: Uint8Array;
}

/** A part whose cells touch one another, with the box that holds it (cells, ends included). */
export interface Part {
  readonly label: number;
  readonly cells: number;
  readonly minI: number;
  readonly minJ: number;
  readonly maxI: number;
  readonly maxJ: number;
}

/** 1 where a value is above the limit. */
export function above(values: Float32Array, limit: number): Uint8Array {
  const out = new Uint8Array(values.length);
  for (let k = 0; k < out.length; k++) out[k] = values[k]! > limit ? 1 : 0;
  return out;
}

/** 1 where a value is at most the limit. */
export function upTo(values: Float32Array, limit: number): Uint8Array {
  const out = new Uint8Array(values.length);
  for (let k = 0; k < out.length; k++) out[k] = values[k]! <= limit ? 1 : 0;
  return out;
}

/** Parts of a mask. `connect` 8: cells touch at corners too. `labels` holds each cell's part, 0 for none. */
export function partsOf({ width, height, on }: Mask, connect: 4 | 8): { readonly labels: Int32Array; readonly parts: readonly Part[] } {
  const cv = imageLibrary();
  const image = new cv.Mat(height, width, cv.CV_8UC1);
  const labels = new cv.Mat(), stats = new cv.Mat(), middles = new cv.Mat();
  try {
    (image.data as Uint8Array).set(on);
    cv.connectedComponentsWithStats(image, labels, stats, middles, connect, cv.CV_32S);
    const s = stats.data32S as Int32Array;
    const parts: Part[] = [];
    // Row 0 is what belongs to nothing. Columns: left, top, width, height, cells.
    for (let k = 1; k < stats.rows; k++) {
      const [i, j, wide, high, cells] = s.subarray(5 * k, 5 * k + 5) as unknown as [number, number, number, number, number];
      parts.push({ label: k, cells, minI: i, minJ: j, maxI: i + wide - 1, maxJ: j + high - 1 });
    }
    return { labels: (labels.data32S as Int32Array).slice(), parts };
  } finally {
    for (const mat of [image, labels, stats, middles]) mat.delete();
  }
}

/** Distance of each cell that is on from the nearest one that is not, in cells; nothing is on outside the mask. */
export function depthOf({ width, height, on }: Mask): Float32Array {
  const cv = imageLibrary();
  const image = cv.Mat.zeros(height + 2, width + 2, cv.CV_8UC1);
  const depth = new cv.Mat();
  try {
    const data = image.data as Uint8Array;
    for (let j = 0; j < height; j++) data.set(on.subarray(j * width, (j + 1) * width), (j + 1) * (width + 2) + 1);
    cv.distanceTransform(image, depth, cv.DIST_L2, cv.DIST_MASK_PRECISE);
    const all = depth.data32F as Float32Array;
    const out = new Float32Array(width * height);
    for (let j = 0; j < height; j++) out.set(all.subarray((j + 1) * (width + 2) + 1, (j + 1) * (width + 2) + 1 + width), j * width);
    return out;
  } finally {
    image.delete();
    depth.delete();
  }
}

/** Distance of each cell from the nearest one that is on, in cells. Cells far outside count as off. */
export function distanceFrom(mask: Mask): Float32Array {
  const { width, height } = mask;
  // What lies outside must not count as on: a rim as wide as anything asked for.
  const rim = 40;
  const off = new Uint8Array((width + 2 * rim) * (height + 2 * rim)).fill(1);
  for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) if (mask.on[j * width + i] !== 0) off[(j + rim) * (width + 2 * rim) + i + rim] = 0;
  const all = depthOf({ width: width + 2 * rim, height: height + 2 * rim, on: off });
  const out = new Float32Array(width * height);
  for (let j = 0; j < height; j++) out.set(all.subarray((j + rim) * (width + 2 * rim) + rim, (j + rim) * (width + 2 * rim) + rim + width), j * width);
  return out;
}

/** The mask with its holes filled. */
export function filled(mask: Mask): Mask {
  const { width, height } = mask;
  const off = new Uint8Array(mask.on.length);
  for (let k = 0; k < off.length; k++) off[k] = 1 - mask.on[k]!;
  const { labels, parts } = partsOf({ width, height, on: off }, 4);
  const holes = new Uint8Array(parts.length + 1);
  for (const p of parts) if (p.minI > 0 && p.minJ > 0 && p.maxI < width - 1 && p.maxJ < height - 1) holes[p.label] = 1;
  const whole = mask.on.slice();
  for (let k = 0; k < whole.length; k++) if (holes[labels[k]!] === 1) whole[k] = 1;
  return { width, height, on: whole };
}

/**
 * The mask with what it encloses, where gaps up to twice `cells` wide count as closed: grown, filled, and shrunk again.
 */
export function filledOverGaps(mask: Mask, cells: number): Mask {
  const { width, height } = mask;
  const whole = filled({ width, height, on: upTo(distanceFrom(mask), cells) });
  return { width, height, on: above(depthOf(whole), cells) };
}

/** What is narrower than twice `cells` is taken away, the rest keeps its size. */
export function opened(mask: Mask, cells: number): Mask {
  const { width, height } = mask;
  const shrunk = { width, height, on: above(depthOf(mask), cells) };
  return { width, height, on: upTo(distanceFrom(shrunk), cells) };
}

/** A part alone, cut out with `rim` cells around it that are off; `(fromI, fromJ)` is its first cell in the whole. May reach outside. */
export interface Cutting extends Mask {
  readonly fromI: number;
  readonly fromJ: number;
}

export function cutOut(labels: Int32Array, width: number, part: Part, rim: number): Cutting {
  const wide = part.maxI - part.minI + 1 + 2 * rim, high = part.maxJ - part.minJ + 1 + 2 * rim;
  const on = new Uint8Array(wide * high);
  for (let j = part.minJ; j <= part.maxJ; j++) for (let i = part.minI; i <= part.maxI; i++) {
    if (labels[j * width + i] === part.label) on[(j - part.minJ + rim) * wide + i - part.minI + rim] = 1;
  }
  return { width: wide, height: high, on, fromI: part.minI - rim, fromJ: part.minJ - rim };
}

import { fieldAt, fitField, type Field } from "./light.ts";
import type { FlatPicture } from "./flatten-picture.ts";

/** What the pieces lie on: its colour as a smooth field, and how much single cells differ from it. */
export interface Ground {
  readonly colour: readonly [Field, Field, Field];
  /** Standard deviation of a cell, per colour. */
  readonly grain: readonly [number, number, number];
}

/** No colour is known better than this: steps of an 8-bit picture and what its packing leaves. */
const leastGrain = 0.006;
/** Width of the strip along the window's edge that shows the ground, mm: nothing should lie there. */
const stripMm = 8;
/** Cells of this size are averaged for the field, mm. */
const cellMm = 2;

/**
 * The ground as seen along the window's edge and, from there, wherever the picture is like it.
 */
export function groundOf(flat: FlatPicture): Ground {
  const { width, height, stepMm, light } = flat;
  const size = width * height;
  const cell = Math.max(1, Math.round(cellMm / stepMm));
  const [wide, high] = [Math.floor(width / cell), Math.floor(height / cell)];
  const strip = Math.ceil(stripMm / cellMm);
  const xy: number[] = [];
  const means: [number[], number[], number[]] = [[], [], []];
  const spreads: [number[], number[], number[]] = [[], [], []];
  const edge: number[] = [];
  for (let j = 0; j < high; j++) {
    for (let i = 0; i < wide; i++) {
      if (i < strip || j < strip || i >= wide - strip || j >= high - strip) edge.push(xy.length / 2);
      xy.push(flat.minX + (i + 0.5) * cell * stepMm, flat.minY + (j + 0.5) * cell * stepMm);
      for (const c of [0, 1, 2] as const) {
        let sum = 0, square = 0;
        for (let v = 0; v < cell; v++) for (let u = 0; u < cell; u++) {
          const value = light[c * size + (j * cell + v) * width + i * cell + u]!;
          sum += value;
          square += value * value;
        }
        const mean = sum / (cell * cell);
        means[c].push(mean);
        spreads[c].push(Math.sqrt(Math.max(0, square / (cell * cell) - mean * mean)));
      }
    }
  }
  const median = (list: readonly number[], of: readonly number[]): number => Float64Array.from(of, (k) => list[k]!).sort()[of.length >> 1]!;
  const grain = ([0, 1, 2] as const).map((c) => Math.max(leastGrain, median(spreads[c], edge))) as unknown as [number, number, number];
  let colour = ([0, 1, 2] as const).map((c) => Float64Array.of(median(means[c], edge), 0, 0, 0, 0, 0)) as unknown as [Field, Field, Field];
  // The second round reaches all of the window that is like the ground, so that a slow change of light is followed.
  for (const near of [6, 4, 4]) {
    const like = means[0].flatMap((_, k) => {
      let far = 0;
      for (const c of [0, 1, 2] as const) far += ((means[c][k]! - fieldAt(colour[c], xy[2 * k]!, xy[2 * k + 1]!)) / grain[c]) ** 2;
      return far < 3 * near * near ? [k] : [];
    });
    if (like.length < 50) break;
    const places = like.flatMap((k) => [xy[2 * k]!, xy[2 * k + 1]!]);
    colour = ([0, 1, 2] as const).map((c) => fitField(places, like.map((k) => means[c][k]!))) as unknown as [Field, Field, Field];
  }
  return { colour, grain };
}

/** How far each cell's colour is from the ground, in standard deviations of a cell, after a mean over 3 × 3 cells. */
export function farFromGround(flat: FlatPicture, { colour, grain }: Ground): Float32Array {
  const { width, height, stepMm, light } = flat;
  const size = width * height;
  const out = new Float32Array(size);
  const off = new Float32Array(size);
  const rows = new Float32Array(size);
  for (let c = 0; c < 3; c++) {
    for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) {
      const k = j * width + i;
      off[k] = (light[c * size + k]! - fieldAt(colour[c]!, flat.minX + i * stepMm, flat.minY + j * stepMm)) / grain[c]!;
    }
    for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) {
      const k = j * width + i;
      rows[k] = (off[i > 0 ? k - 1 : k]! + off[k]! + off[i + 1 < width ? k + 1 : k]!) / 3;
    }
    for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const mean = (rows[j > 0 ? k - width : k]! + rows[k]! + rows[j + 1 < height ? k + width : k]!) / 3;
      out[k] = out[k]! + mean * mean;
    }
  }
  for (let k = 0; k < size; k++) out[k] = Math.sqrt(out[k]!);
  return out;
}

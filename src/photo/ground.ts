import type { FlatPicture } from "./flatten-picture.ts";

/**
 * What the pieces lie on: its colour on a coarse grid over the flat picture, red, green and blue one after the other, and how
 * much single cells of the picture differ from it. Light may change slowly over it, as a soft shadow does.
 */
export interface Ground {
  /** Cells of the flat picture to one of the grid, and the grid's size. */
  readonly every: number;
  readonly wide: number;
  readonly high: number;
  readonly colour: Float32Array;
  /** Standard deviation of a cell of the flat picture, per colour. */
  readonly grain: readonly [number, number, number];
}

/** No colour is known better than this: steps of an 8-bit picture and what its packing leaves. */
const leastGrain = 0.006;
/** Width of a cell of the grid, and of the strip along the window's edge that shows the ground because nothing should lie there, mm. */
const gridMm = 2;
const stripMm = 8;
/** From one cell of the grid to the next the ground may change by this part of itself; an edge changes faster. */
const slowly = 0.03;
/** A cell of the grid whose own cells differ by more than this many times the grain has an edge in it. */
const plainWithin = 1.8;

/** The ground, followed from the window's edge to wherever it goes on without an edge; under the pieces it is bridged smoothly. */
export function groundOf(flat: FlatPicture): Ground {
  const { means, spreads, wide, high, every } = gridOf(flat);
  const size = wide * high;
  const strip = Math.ceil(stripMm / gridMm);
  const edge: number[] = [];
  for (let j = 0; j < high; j++) for (let i = 0; i < wide; i++) if (i < strip || j < strip || i >= wide - strip || j >= high - strip) edge.push(j * wide + i);
  const medianAt = (list: Float32Array, c: number): number => Float64Array.from(edge, (k) => list[c * size + k]!).sort()[edge.length >> 1]!;
  const grain = [0, 1, 2].map((c) => Math.max(leastGrain, medianAt(spreads, c))) as unknown as readonly [number, number, number];
  const usual = [0, 1, 2].map((c) => medianAt(means, c));
  const plain = (k: number): boolean => [0, 1, 2].every((c) => spreads[c * size + k]! < plainWithin * grain[c]! + 0.01 * usual[c]!);
  // It begins where the strip has its usual colour, but for its brightness.
  const open = edge.filter((k) => plain(k) && likeBut(means, size, k, usual, grain));
  const isGround = new Uint8Array(size);
  for (const k of open) isGround[k] = 1;
  while (open.length > 0) {
    const k = open.pop()!;
    const i = k % wide;
    for (const n of [i > 0 ? k - 1 : -1, i + 1 < wide ? k + 1 : -1, k - wide, k + wide]) {
      if (n < 0 || n >= size || isGround[n] === 1 || !plain(n)) continue;
      const near = [0, 1, 2].every((c) => Math.abs(means[c * size + n]! - means[c * size + k]!) < slowly * means[c * size + k]! + 0.6 * grain[c]!);
      if (!near) continue;
      isGround[n] = 1;
      open.push(n);
    }
  }
  const colour = new Float32Array(3 * size);
  for (let c = 0; c < 3; c++) bridgedInto(colour.subarray(c * size, (c + 1) * size), means.subarray(c * size, (c + 1) * size), isGround, wide, high, usual[c]!);
  return { every, wide, high, colour, grain };
}

/** Of one colour in all lights between half and one and a quarter as bright. */
function likeBut(means: Float32Array, size: number, k: number, usual: readonly number[], grain: readonly number[]): boolean {
  let dot = 0, own = 0;
  for (let c = 0; c < 3; c++) {
    dot += means[c * size + k]! * usual[c]!;
    own += usual[c]! * usual[c]!;
  }
  const bright = dot / Math.max(1e-9, own);
  return bright > 0.5 && bright < 1.25 && [0, 1, 2].every((c) => Math.abs(means[c * size + k]! - bright * usual[c]!) < 0.06 * usual[c]! + 2 * grain[c]!);
}

/** Mean and standard deviation of each colour in each cell of the grid. */
function gridOf({ width, height, stepMm, light }: FlatPicture) {
  const every = Math.max(2, Math.round(gridMm / stepMm));
  const [wide, high] = [Math.floor(width / every), Math.floor(height / every)];
  const means = new Float32Array(3 * wide * high), spreads = new Float32Array(3 * wide * high);
  for (let c = 0; c < 3; c++) for (let j = 0; j < high; j++) for (let i = 0; i < wide; i++) {
    let sum = 0, square = 0;
    for (let v = 0; v < every; v++) for (let u = 0; u < every; u++) {
      const value = light[c * width * height + (j * every + v) * width + i * every + u]!;
      sum += value;
      square += value * value;
    }
    const mean = sum / (every * every);
    means[c * wide * high + j * wide + i] = mean;
    spreads[c * wide * high + j * wide + i] = Math.sqrt(Math.max(0, square / (every * every) - mean * mean));
  }
  return { means, spreads, wide, high, every };
}

/** Values where they are known, elsewhere the mean of the four neighbours (Laplace's equation), coarse cells first. */
function bridgedInto(out: Float32Array, values: Float32Array, known: Uint8Array, wide: number, high: number, otherwise: number): void {
  let mean = 0, count = 0;
  for (let k = 0; k < values.length; k++) if (known[k] === 1) {
    mean += values[k]!;
    count++;
  }
  for (let k = 0; k < values.length; k++) out[k] = known[k] === 1 ? values[k]! : count > 0 ? mean / count : otherwise;
  // Over-relaxation; what is left after these rounds is far below the grain.
  for (let round = 0; round < 240; round++) for (let j = 0; j < high; j++) for (let i = 0; i < wide; i++) {
    const k = j * wide + i;
    if (known[k] === 1) continue;
    const mean4 = (out[i > 0 ? k - 1 : k + 1]! + out[i + 1 < wide ? k + 1 : k - 1]! + out[j > 0 ? k - wide : k + wide]! + out[j + 1 < high ? k + wide : k - wide]!) / 4;
    out[k] = out[k]! + 1.85 * (mean4 - out[k]!);
  }
}

/** The ground's colour `c` at a cell of the flat picture, bilinear. */
export function groundAt({ every, wide, high, colour }: Ground, c: number, i: number, j: number): number {
  const x = Math.min(Math.max((i - (every - 1) / 2) / every, 0), wide - 1.001);
  const y = Math.min(Math.max((j - (every - 1) / 2) / every, 0), high - 1.001);
  const a = Math.floor(x), b = Math.floor(y), u = x - a, v = y - b;
  const k = c * wide * high + b * wide + a;
  return (1 - v) * ((1 - u) * colour[k]! + u * colour[k + 1]!) + v * ((1 - u) * colour[k + wide]! + u * colour[k + wide + 1]!);
}

/** How far each cell's colour is from the ground, in standard deviations of a cell, after a mean over 3 × 3 cells. */
export function farFromGround(flat: FlatPicture, ground: Ground): Float32Array {
  const { width, height, light } = flat;
  const size = width * height;
  const out = new Float32Array(size);
  const off = new Float32Array(size);
  const rows = new Float32Array(size);
  for (let c = 0; c < 3; c++) {
    for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) {
      const k = j * width + i;
      off[k] = (light[c * size + k]! - groundAt(ground, c, i, j)) / ground.grain[c]!;
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

import type { Outline } from "#plane/outline.ts";

/** Places a profile is kept at; closer toward both ends, where an outline turns round. */
const places = 320;

/**
 * An outline read as two heights over x, lower and upper: for silhouettes, which upright lines cross twice. Between the places
 * kept, which are nearer to each other toward the ends, heights are linear.
 */
export class Profile {
  readonly from: number;
  readonly to: number;
  readonly #x = new Float64Array(places + 1);
  readonly #low = new Float64Array(places + 1);
  readonly #high = new Float64Array(places + 1);

  constructor({ xy }: Outline) {
    [this.from, this.to] = extent(xy, 0);
    for (let i = 0; i <= places; i++) {
      const u = i / places;
      this.#x[i] = this.from + (this.to - this.from) * u * u * (3 - 2 * u);
      const [low, high] = i === 0 || i === places ? endHeights(xy, this.#x[i]!) : crossings(xy, 0, this.#x[i]!);
      this.#low[i] = low;
      this.#high[i] = high;
    }
  }

  lowAt(x: number): number {
    return this.#read(this.#low, x);
  }

  highAt(x: number): number {
    return this.#read(this.#high, x);
  }

  #read(heights: Float64Array, x: number): number {
    const xs = this.#x;
    let [a, b] = [0, places];
    while (b - a > 1) {
      const middle = (a + b) >> 1;
      if (xs[middle]! <= x) a = middle;
      else b = middle;
    }
    const t = Math.max(0, Math.min(1, (x - xs[a]!) / (xs[b]! - xs[a]!)));
    return heights[a]! + t * (heights[b]! - heights[a]!);
  }
}

/** Least and greatest x (axis 0) or y (axis 1). */
export function extent(xy: Float64Array, axis: 0 | 1): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = axis; i < xy.length; i += 2) {
    low = Math.min(low, xy[i]!);
    high = Math.max(high, xy[i]!);
  }
  return [low, high];
}

/** Least and greatest of the other coordinate where the outline crosses the line `axis` = at; infinite where it does not. */
export function crossings(xy: Float64Array, axis: 0 | 1, at: number): readonly [number, number] {
  const n = xy.length / 2;
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < n; i++) {
    const j = i + 1 < n ? i + 1 : 0;
    const a = xy[2 * i + axis]!;
    const b = xy[2 * j + axis]!;
    if (a < at === b < at) continue;
    const p = xy[2 * i + 1 - axis]!;
    const across = p + ((at - a) / (b - a)) * (xy[2 * j + 1 - axis]! - p);
    low = Math.min(low, across);
    high = Math.max(high, across);
  }
  return [low, high];
}

/** Heights of the points that lie on the very end. */
function endHeights(xy: Float64Array, x: number): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < xy.length; i += 2) {
    if (Math.abs(xy[i]! - x) > 1e-9) continue;
    low = Math.min(low, xy[i + 1]!);
    high = Math.max(high, xy[i + 1]!);
  }
  return [low, high];
}

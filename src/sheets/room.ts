import type { Bounds } from "#plane/measure.ts";

/** Upright box on the sheet, mm. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Where there is still blank paper, on squares of 1 mm: asked by everything that wants to be written on a piece, so that words
 * never lie on lines or on each other. Squares outside the outline count apart.
 */
export class Room {
  readonly #x0: number;
  readonly #y0: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #inked: Uint8Array;
  readonly #outside: Uint8Array;
  #inkSum: Uint32Array | undefined;
  readonly #outsideSum: Uint32Array;
  readonly #words: Box[] = [];

  /** `outline` closed, x0 y0 …, mm; `edge` mm of paper are kept in view round it. */
  constructor(outline: Float64Array, b: Bounds, edge: number) {
    // Whole squares within the edge: beyond it the page may end.
    this.#x0 = Math.ceil(b.minX - edge);
    this.#y0 = Math.ceil(b.minY - edge);
    this.#columns = Math.floor(b.maxX + edge) - this.#x0;
    this.#rows = Math.floor(b.maxY + edge) - this.#y0;
    this.#inked = new Uint8Array(this.#columns * this.#rows);
    this.#outside = new Uint8Array(this.#columns * this.#rows).fill(1);
    this.#fillInside(outline);
    this.#outsideSum = this.#sumsOf(this.#outside);
  }

  /** Takes the paper under a stroke and `reach` mm on both sides of it. */
  takeStroke(xy: Float64Array, reach: number): void {
    for (let i = 0; i + 3 < xy.length; i += 2) {
      const dx = xy[i + 2]! - xy[i]!, dy = xy[i + 3]! - xy[i + 1]!;
      const parts = Math.max(1, Math.ceil(2 * Math.max(Math.abs(dx), Math.abs(dy))));
      for (let k = 0; k <= parts; k++) {
        const x = xy[i]! + (dx * k) / parts, y = xy[i + 1]! + (dy * k) / parts;
        this.takeBox({ x: x - reach, y: y - reach, width: 2 * reach, height: 2 * reach });
      }
    }
  }

  takeBox(box: Box): void {
    this.#inkSum = undefined;
    const [c0, r0, c1, r1] = this.#squares(box);
    for (let r = Math.max(0, r0); r <= Math.min(this.#rows - 1, r1); r++) {
      for (let c = Math.max(0, c0); c <= Math.min(this.#columns - 1, c1); c++) this.#inked[r * this.#columns + c] = 1;
    }
  }

  /** Takes a box for words, and remembers it as such. */
  takeWords(box: Box): void {
    this.takeBox(box);
    this.#words.push(box);
  }

  /** Whether a straight line runs through words. */
  crossesWords(x0: number, y0: number, x1: number, y1: number): boolean {
    const parts = Math.max(1, Math.ceil(2 * Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0))));
    for (let k = 0; k <= parts; k++) {
      const x = x0 + ((x1 - x0) * k) / parts, y = y0 + ((y1 - y0) * k) / parts;
      if (this.#words.some((b) => x > b.x && x < b.x + b.width && y > b.y && y < b.y + b.height)) return true;
    }
    return false;
  }

  /** Whether a box is blank; `within` asks also that it lies inside the outline. Boxes over the edge of view are not. */
  isFree({ x, y, width, height }: Box, within: boolean): boolean {
    const c0 = Math.floor(x - this.#x0), r0 = Math.floor(y - this.#y0);
    const c1 = Math.ceil(x + width - this.#x0) - 1, r1 = Math.ceil(y + height - this.#y0) - 1;
    if (c0 < 0 || r0 < 0 || c1 >= this.#columns || r1 >= this.#rows) return false;
    if (within && this.#count(this.#outsideSum, c0, r0, c1, r1) > 0) return false;
    // Small boxes are looked at square by square: cheaper than new sums after every word placed.
    if (!this.#inkSum && (c1 - c0) * (r1 - r0) < 600) return this.#isBlank(c0, r0, c1, r1);
    return this.#count(this.#inkSums(), c0, r0, c1, r1) === 0;
  }

  /** The blank box of a size inside the outline that lies nearest to a point, or none. `allowed` may refuse places. */
  nearestFree(size: { readonly width: number; readonly height: number }, to: readonly [number, number], allowed: (box: Box) => boolean): Box | undefined {
    // Boxes begin on squares, so that each covers the same number of them.
    const wide = Math.ceil(size.width), high = Math.ceil(size.height);
    const ink = this.#inkSums(), outside = this.#outsideSum;
    const step = this.#columns + 1;
    let best: Box | undefined;
    let least = Infinity;
    for (let r = 0; r + high <= this.#rows; r += 2) {
      const dy = this.#y0 + r + size.height / 2 - to[1];
      if (dy * dy >= least) continue;
      const low = r * step, top = (r + high) * step;
      for (let c = 0; c + wide <= this.#columns; c += 2) {
        const dx = this.#x0 + c + size.width / 2 - to[0];
        const far = dx * dx + dy * dy;
        if (far >= least) continue;
        const a = low + c, b = top + c;
        if (outside[b + wide]! - outside[a + wide]! - outside[b]! + outside[a]! > 0) continue;
        if (ink[b + wide]! - ink[a + wide]! - ink[b]! + ink[a]! > 0) continue;
        const box = { x: this.#x0 + c, y: this.#y0 + r, ...size };
        if (!allowed(box)) continue;
        least = far;
        best = box;
      }
    }
    return best;
  }

  #inkSums(): Uint32Array {
    this.#inkSum ??= this.#sumsOf(this.#inked);
    return this.#inkSum;
  }

  #isBlank(c0: number, r0: number, c1: number, r1: number): boolean {
    for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) if (this.#inked[r * this.#columns + c]) return false;
    return true;
  }

  #squares({ x, y, width, height }: Box): readonly [number, number, number, number] {
    return [Math.floor(x - this.#x0), Math.floor(y - this.#y0), Math.ceil(x + width - this.#x0) - 1, Math.ceil(y + height - this.#y0) - 1];
  }

  /** Even-odd filling by the middles of the squares. */
  #fillInside(xy: Float64Array): void {
    const n = xy.length;
    for (let r = 0; r < this.#rows; r++) {
      const y = this.#y0 + r + 0.5;
      const cuts: number[] = [];
      for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
        const a = xy[j + 1]!, b = xy[i + 1]!;
        if (a > y !== b > y) cuts.push(xy[j]! + ((y - a) / (b - a)) * (xy[i]! - xy[j]!));
      }
      cuts.sort((p, q) => p - q);
      for (let k = 0; k + 1 < cuts.length; k += 2) {
        const from = Math.max(0, Math.ceil(cuts[k]! - this.#x0 - 0.5)), to = Math.min(this.#columns - 1, Math.floor(cuts[k + 1]! - this.#x0 - 0.5));
        for (let c = from; c <= to; c++) this.#outside[r * this.#columns + c] = 0;
      }
    }
  }

  #sumsOf(squares: Uint8Array): Uint32Array {
    const wide = this.#columns + 1;
    const sum = new Uint32Array(wide * (this.#rows + 1));
    for (let r = 0; r < this.#rows; r++) {
      let row = 0;
      for (let c = 0; c < this.#columns; c++) {
        row += squares[r * this.#columns + c]!;
        sum[(r + 1) * wide + c + 1] = sum[r * wide + c + 1]! + row;
      }
    }
    return sum;
  }

  #count(sum: Uint32Array, c0: number, r0: number, c1: number, r1: number): number {
    const wide = this.#columns + 1;
    return sum[(r1 + 1) * wide + c1 + 1]! - sum[r0 * wide + c1 + 1]! - sum[(r1 + 1) * wide + c0]! + sum[r0 * wide + c0]!;
  }
}

import type { BorderedBand } from "./bordered-band.ts";

/** Coefficients a row has room for: what a bordered band takes. */
const wide = 4;

/** A matrix each of whose rows touches four columns in a row, or round the ring of all columns. */
export class ShortRows {
  readonly columns: number;
  #count = 0;
  #at = new Uint32Array(64);
  #coef = new Float64Array(wide * 64);

  /** `columns`, at least four. */
  constructor(columns: number) {
    this.columns = columns;
  }

  get count(): number {
    return this.#count;
  }

  /** A row with coefficients for the columns from `at` on; `at` may lie one lap off. */
  push(at: number, a: number, b: number, c = 0, d = 0): void {
    const n = this.columns;
    const k = this.#count++;
    if (k === this.#at.length) this.#makeRoom(2 * k);
    this.#at[k] = at < 0 ? at + n : at >= n ? at - n : at;
    const coef = this.#coef;
    const o = wide * k;
    coef[o] = a;
    coef[o + 1] = b;
    coef[o + 2] = c;
    coef[o + 3] = d;
  }

  /** The same rows once more, for others to be added to them. */
  copy(): ShortRows {
    const out = new ShortRows(this.columns);
    out.#count = this.#count;
    out.#at = this.#at.slice();
    out.#coef = this.#coef.slice();
    return out;
  }

  #makeRoom(rows: number): void {
    const at = new Uint32Array(rows);
    at.set(this.#at);
    this.#at = at;
    const coef = new Float64Array(wide * rows);
    coef.set(this.#coef);
    this.#coef = coef;
  }

  /** Writes A x. */
  times(x: Float64Array, out: Float64Array): void {
    const n = this.columns;
    const places = this.#at;
    const coef = this.#coef;
    for (let k = 0; k < this.#count; k++) {
      const o = wide * k;
      const i = places[k]!;
      const whole = i + wide <= n;
      const j = whole || i + 1 < n ? i + 1 : 0;
      const l = whole || j + 1 < n ? j + 1 : 0;
      const r = whole || l + 1 < n ? l + 1 : 0;
      out[k] = coef[o]! * x[i]! + coef[o + 1]! * x[j]! + coef[o + 2]! * x[l]! + coef[o + 3]! * x[r]!;
    }
  }

  /** Adds Aᵀ y to `out`. */
  addTransposed(y: Float64Array, out: Float64Array): void {
    const n = this.columns;
    const places = this.#at;
    const coef = this.#coef;
    for (let k = 0; k < this.#count; k++) {
      const o = wide * k;
      const v = y[k]!;
      const i = places[k]!;
      const whole = i + wide <= n;
      const j = whole || i + 1 < n ? i + 1 : 0;
      const l = whole || j + 1 < n ? j + 1 : 0;
      const r = whole || l + 1 < n ? l + 1 : 0;
      out[i]! += coef[o]! * v;
      out[j]! += coef[o + 1]! * v;
      out[l]! += coef[o + 2]! * v;
      out[r]! += coef[o + 3]! * v;
    }
  }

  /** Adds Aᵀ W A, W diagonal, to a system. */
  addSquares(weights: Float64Array, system: BorderedBand): void {
    const coef = this.#coef;
    for (let k = 0; k < this.#count; k++) {
      const o = wide * k;
      system.addSquare(this.#at[k]!, weights[k]!, coef[o]!, coef[o + 1]!, coef[o + 2]!, coef[o + 3]!);
    }
  }
}

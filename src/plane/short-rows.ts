import type { BorderedBand } from "./bordered-band.ts";

/** Coefficients a row has room for: what a bordered band takes. */
const wide = 4;

/** A matrix each of whose rows touches four columns in a row, or round the ring of all columns. */
export class ShortRows {
  readonly columns: number;
  readonly #at: number[] = [];
  readonly #coef: number[] = [];

  constructor(columns: number) {
    this.columns = columns;
  }

  get count(): number {
    return this.#at.length;
  }

  /** A row with coefficients for the columns from `at` on; `at` may lie one lap off. */
  push(at: number, a: number, b: number, c = 0, d = 0): void {
    const n = this.columns;
    this.#at.push(at < 0 ? at + n : at >= n ? at - n : at);
    this.#coef.push(a, b, c, d);
  }

  /** Writes A x. */
  times(x: Float64Array, out: Float64Array): void {
    const n = this.columns;
    const places = this.#at;
    const coef = this.#coef;
    for (let k = 0; k < places.length; k++) {
      let j = places[k]!;
      let sum = 0;
      for (let c = wide * k; c < wide * k + wide; c++) {
        sum += coef[c]! * x[j]!;
        if (++j === n) j = 0;
      }
      out[k] = sum;
    }
  }

  /** Adds Aᵀ y to `out`. */
  addTransposed(y: Float64Array, out: Float64Array): void {
    const n = this.columns;
    const places = this.#at;
    const coef = this.#coef;
    for (let k = 0; k < places.length; k++) {
      let j = places[k]!;
      const v = y[k]!;
      for (let c = wide * k; c < wide * k + wide; c++) {
        out[j]! += coef[c]! * v;
        if (++j === n) j = 0;
      }
    }
  }

  /** Adds Aᵀ W A, W diagonal, to a system. */
  addSquares(weights: Float64Array, system: BorderedBand): void {
    const n = this.columns;
    const places = this.#at;
    const coef = this.#coef;
    for (let k = 0; k < places.length; k++) {
      const at = places[k]!;
      for (let p = 0; p < wide; p++) {
        const v = weights[k]! * coef[wide * k + p]!;
        if (v === 0) continue;
        const i = at + p < n ? at + p : at + p - n;
        for (let q = p; q < wide; q++) {
          const c = coef[wide * k + q]!;
          if (c !== 0) system.add(i, at + q < n ? at + q : at + q - n, v * c);
        }
      }
    }
  }
}

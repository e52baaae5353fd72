import { factorTriangle, negativeOuterInto, solveColumns } from "./dense.ts";
import type { BlockPattern } from "./block-pattern.ts";
import { FRONT, type FrontPlan } from "./front-plan.ts";

/**
 * Multifrontal Cholesky factorisation A = L Lᵀ of symmetric positive definite matrices that share one pattern. Keep one for
 * as long as the pattern lasts: the heap is made once and used by every factorisation. Residual of a solve: about 1e-15 of
 * the size of the terms. Method: docs/method/flatten.md.
 */
export class Cholesky {
  readonly plan: FrontPlan;
  readonly #block: number;
  readonly #heap: Float64Array;
  readonly #work: Float64Array;

  constructor(pattern: BlockPattern, plan: FrontPlan) {
    this.plan = plan;
    this.#block = pattern.block;
    this.#heap = new Float64Array(plan.heapEntries);
    this.#work = new Float64Array(plan.unknowns + plan.fronts.reduce((most, _, k, all) => (k % FRONT.stride === FRONT.below ? Math.max(most, all[k]!) : most), 0));
  }

  /**
   * Factorises the matrix with these values (layout: {@link BlockPattern}).
   * @returns -1, or the unknown at which a pivot was not positive; the factor is then of no use
   */
  factor(values: Float64Array): number {
    const { fronts, count, unknownAt } = this.plan;
    const h = this.#heap;
    for (let s = 0; s < count; s++) {
      const f = s * FRONT.stride;
      const width = fronts[f + FRONT.width]!;
      const below = fronts[f + FRONT.below]!;
      const panel = fronts[f + FRONT.panel]!;
      const update = fronts[f + FRONT.update]!;
      const tall = width + below;
      h.fill(0, panel, panel + tall * width);
      this.#load(values, s, tall);
      for (let c = fronts[f + FRONT.child]!; c >= 0; c = fronts[c * FRONT.stride + FRONT.sibling]!) this.#addToPanel(c, panel, tall);
      const failed = factorTriangle(h, panel, tall, width);
      if (failed >= 0) return unknownAt[fronts[f + FRONT.first]! + failed]!;
      if (below === 0) continue;
      solveColumns(h, panel, tall, width, tall, 0, width);
      // The update begins as −P Pᵀ, so that it need not be cleared first; what the children owe it comes after.
      negativeOuterInto(h, panel + width, tall, width, below, update);
      for (let c = fronts[f + FRONT.child]!; c >= 0; c = fronts[c * FRONT.stride + FRONT.sibling]!) this.#addToUpdate(c, width, update, below);
    }
    return -1;
  }

  /** Puts the matrix's own entries into the panel of front `s`. */
  #load(values: Float64Array, s: number, tall: number): void {
    const h = this.#heap;
    const { blocks, fronts, count } = this.plan;
    const from = 3 * fronts[s * FRONT.stride + FRONT.blocks]!;
    const to = s + 1 < count ? 3 * fronts[(s + 1) * FRONT.stride + FRONT.blocks]! : blocks.length;
    for (let k = from; k < to; k += 3) {
      const v = blocks[k]!;
      const t = blocks[k + 1]!;
      h[t] = values[v]!;
      if (this.#block === 1) continue;
      const turned = blocks[k + 2]!;
      h[t + tall] = values[v + 1 + turned]!;
      h[t + 1] = values[v + 2 - turned]!;
      h[t + tall + 1] = values[v + 3]!;
    }
  }

  /** Adds the columns of child `c`'s update that the parent eliminates into the parent's panel. */
  #addToPanel(c: number, panel: number, tall: number): void {
    const { fronts, relative } = this.plan;
    const f = c * FRONT.stride;
    const rows = fronts[f + FRONT.below]!;
    const start = fronts[f + FRONT.rows]!;
    const inPanel = fronts[f + FRONT.inPanel]!;
    let from = fronts[f + FRONT.update]!;
    for (let j = 0; j < inPanel; j++, from = (from + rows) | 0) this.#addRun((panel + relative[start + j]! * tall) | 0, from, start, j, rows);
  }

  /** Adds the rest of child `c`'s update into the parent's own update. */
  #addToUpdate(c: number, width: number, update: number, below: number): void {
    const { fronts, relative } = this.plan;
    const f = c * FRONT.stride;
    const rows = fronts[f + FRONT.below]!;
    const start = fronts[f + FRONT.rows]!;
    const inPanel = fronts[f + FRONT.inPanel]!;
    let from = (fronts[f + FRONT.update]! + inPanel * rows) | 0;
    for (let j = inPanel; j < rows; j++, from = (from + rows) | 0) this.#addRun((update + (relative[start + j]! - width) * below - width) | 0, from, start, j, rows);
  }

  /**
   * Adds entries `first … last - 1` of the column at `from` to the column at `to`, each at its relative place. Blocks of two are
   * added whole; at the diagonal this reaches one entry into the upper triangle, which nobody reads.
   */
  #addRun(to: number, from: number, start: number, first: number, last: number): void {
    const h = this.#heap;
    const { relative } = this.plan;
    if (this.#block === 1) {
      for (let i = first; i < last; i++) h[(to + relative[(start + i) | 0]!) | 0]! += h[(from + i) | 0]!;
      return;
    }
    for (let i = first & -2; i < last; i += 2) {
      const row = (to + relative[(start + i) | 0]!) | 0;
      const at = (from + i) | 0;
      h[row]! += h[at]!;
      h[(row + 1) | 0]! += h[(at + 1) | 0]!;
    }
  }

  /** x with A x = b, by the last factor. `x` may be `b`. */
  solveInto(x: Float64Array, b: Float64Array): Float64Array {
    const { unknowns, unknownAt } = this.plan;
    const y = this.#work;
    for (let k = 0; k < unknowns; k++) y[k] = b[unknownAt[k]!]!;
    this.#forward(y);
    this.#backward(y);
    for (let k = 0; k < unknowns; k++) x[unknownAt[k]!] = y[k]!;
    return x;
  }

  /** y ← L⁻¹ y. What a front owes the rows below it is gathered behind the unknowns first, so that each column is one run. */
  #forward(y: Float64Array): void {
    const h = this.#heap;
    const { fronts, rows, count, unknowns } = this.plan;
    for (let s = 0; s < count; s++) {
      const f = s * FRONT.stride;
      const first = fronts[f + FRONT.first]!;
      const width = fronts[f + FRONT.width]!;
      const below = fronts[f + FRONT.below]!;
      const start = fronts[f + FRONT.rows]!;
      let column = fronts[f + FRONT.panel]!;
      const tall = (width + below) | 0;
      y.fill(0, unknowns, unknowns + below);
      for (let j = 0; j < width; j++, column = (column + tall) | 0) {
        const v = y[first + j]! * h[(column + j) | 0]!;
        y[first + j] = v;
        for (let i = j + 1; i < width; i++) y[(first + i) | 0]! -= h[(column + i) | 0]! * v;
        const at = (column + width) | 0;
        for (let i = 0; i < below; i++) y[(unknowns + i) | 0]! += h[(at + i) | 0]! * v;
      }
      for (let i = 0; i < below; i++) y[rows[(start + i) | 0]!]! -= y[(unknowns + i) | 0]!;
    }
  }

  /** y ← L⁻ᵀ y. The unknowns below a front are gathered first, so that each column is one product of two runs, even and odd apart. */
  #backward(y: Float64Array): void {
    const h = this.#heap;
    const { fronts, rows, count, unknowns } = this.plan;
    for (let s = count - 1; s >= 0; s--) {
      const f = s * FRONT.stride;
      const first = fronts[f + FRONT.first]!;
      const width = fronts[f + FRONT.width]!;
      const below = fronts[f + FRONT.below]!;
      const start = fronts[f + FRONT.rows]!;
      const panel = fronts[f + FRONT.panel]!;
      const tall = (width + below) | 0;
      const even = below & -2;
      for (let i = 0; i < below; i++) y[(unknowns + i) | 0] = y[rows[(start + i) | 0]!]!;
      for (let j = width - 1; j >= 0; j--) {
        const column = (panel + j * tall) | 0;
        const at = (column + width) | 0;
        let a = 0;
        let b = 0;
        for (let i = 0; i < even; i += 2) {
          a += h[(at + i) | 0]! * y[(unknowns + i) | 0]!;
          b += h[(at + i + 1) | 0]! * y[(unknowns + i + 1) | 0]!;
        }
        if (even < below) a += h[(at + even) | 0]! * y[(unknowns + even) | 0]!;
        let sum = a + b;
        for (let i = j + 1; i < width; i++) sum += h[(column + i) | 0]! * y[(first + i) | 0]!;
        y[first + j] = (y[first + j]! - sum) * h[(column + j) | 0]!;
      }
    }
  }
}

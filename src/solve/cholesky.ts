import { factorTriangle, negativeOuterInto, solveRows } from "./dense.ts";
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
      h.fill(0, panel, panel + (width + below) * width);
      this.#load(values, s, width);
      for (let c = fronts[f + FRONT.child]!; c >= 0; c = fronts[c * FRONT.stride + FRONT.sibling]!) this.#addToPanel(c, panel, width);
      const failed = factorTriangle(h, panel, width);
      if (failed >= 0) return unknownAt[fronts[f + FRONT.first]! + failed]!;
      if (below === 0) continue;
      solveRows(h, panel, width, width, width + below, 0, width);
      // The update begins as −P Pᵀ, so that it need not be cleared first; what the children owe it comes after.
      negativeOuterInto(h, panel + width * width, width, below, update);
      for (let c = fronts[f + FRONT.child]!; c >= 0; c = fronts[c * FRONT.stride + FRONT.sibling]!) this.#addToUpdate(c, width, update, below);
    }
    return -1;
  }

  /** Puts the matrix's own entries into the panel of front `s`. */
  #load(values: Float64Array, s: number, width: number): void {
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
      h[t + 1] = values[v + 1 + turned]!;
      h[t + width] = values[v + 2 - turned]!;
      h[t + width + 1] = values[v + 3]!;
    }
  }

  /** Adds the columns of child `c`'s update that the parent eliminates into the parent's panel. */
  #addToPanel(c: number, panel: number, width: number): void {
    const { fronts, relative } = this.plan;
    const f = c * FRONT.stride;
    const rows = fronts[f + FRONT.below]!;
    const start = fronts[f + FRONT.rows]!;
    const inPanel = fronts[f + FRONT.inPanel]!;
    let from = fronts[f + FRONT.update]!;
    for (let i = 0; i < rows; i++, from = (from + rows) | 0) {
      const row = (panel + relative[start + i]! * width) | 0;
      const end = i < inPanel ? i + 1 : inPanel;
      this.#addRun(row, from, start, 0, end);
    }
  }

  /** Adds the rest of child `c`'s update into the parent's own update. */
  #addToUpdate(c: number, width: number, update: number, below: number): void {
    const { fronts, relative } = this.plan;
    const f = c * FRONT.stride;
    const rows = fronts[f + FRONT.below]!;
    const start = fronts[f + FRONT.rows]!;
    const inPanel = fronts[f + FRONT.inPanel]!;
    let from = (fronts[f + FRONT.update]! + inPanel * rows) | 0;
    for (let i = inPanel; i < rows; i++, from = (from + rows) | 0) {
      const row = (update + (relative[start + i]! - width) * below - width) | 0;
      this.#addRun(row, from, start, inPanel, i + 1);
    }
  }

  /**
   * Adds entries `first … last - 1` of the row at `from` to the row at `row`, each at its relative place. Blocks of two are
   * added whole; at the diagonal this reaches one entry into the upper triangle, which nobody reads.
   */
  #addRun(row: number, from: number, start: number, first: number, last: number): void {
    const h = this.#heap;
    const { relative } = this.plan;
    if (this.#block === 1) {
      for (let j = first; j < last; j++) h[(row + relative[(start + j) | 0]!) | 0]! += h[(from + j) | 0]!;
      return;
    }
    for (let j = first; j < last; j += 2) {
      const to = (row + relative[(start + j) | 0]!) | 0;
      const at = (from + j) | 0;
      h[to]! += h[at]!;
      h[(to + 1) | 0]! += h[(at + 1) | 0]!;
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

  /** y ← L⁻¹ y. */
  #forward(y: Float64Array): void {
    const h = this.#heap;
    const { fronts, rows, count } = this.plan;
    for (let s = 0; s < count; s++) {
      const f = s * FRONT.stride;
      const first = fronts[f + FRONT.first]!;
      const width = fronts[f + FRONT.width]!;
      const start = fronts[f + FRONT.rows]!;
      const end = start + fronts[f + FRONT.below]!;
      let row = fronts[f + FRONT.panel]!;
      for (let j = 0; j < width; j++, row = (row + width) | 0) {
        let sum = y[first + j]!;
        for (let k = 0; k < j; k++) sum -= h[(row + k) | 0]! * y[(first + k) | 0]!;
        y[first + j] = sum * h[(row + j) | 0]!;
      }
      for (let r = start; r < end; r++, row = (row + width) | 0) {
        let sum = 0;
        for (let k = 0; k < width; k++) sum += h[(row + k) | 0]! * y[(first + k) | 0]!;
        y[rows[r]!]! -= sum;
      }
    }
  }

  /** y ← L⁻ᵀ y. */
  #backward(y: Float64Array): void {
    const h = this.#heap;
    const { fronts, rows, count } = this.plan;
    for (let s = count - 1; s >= 0; s--) {
      const f = s * FRONT.stride;
      const first = fronts[f + FRONT.first]!;
      const width = fronts[f + FRONT.width]!;
      const start = fronts[f + FRONT.rows]!;
      const end = start + fronts[f + FRONT.below]!;
      const panel = fronts[f + FRONT.panel]!;
      let row = (panel + width * width) | 0;
      for (let r = start; r < end; r++, row = (row + width) | 0) {
        const v = y[rows[r]!]!;
        for (let k = 0; k < width; k++) y[(first + k) | 0]! -= h[(row + k) | 0]! * v;
      }
      for (let j = width - 1; j >= 0; j--) {
        row = (panel + j * width) | 0;
        const v = y[first + j]! * h[(row + j) | 0]!;
        y[first + j] = v;
        for (let k = 0; k < j; k++) y[(first + k) | 0]! -= h[(row + k) | 0]! * v;
      }
    }
  }
}

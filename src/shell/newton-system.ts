import type { BlockPattern } from "#solve/block-pattern.ts";
import { Cholesky } from "#solve/cholesky.ts";
import { planFronts } from "#solve/front-plan.ts";

/** Unknowns that are held: 2 · vertex for u, 2 · vertex + 1 for v. */
export type Held = readonly number[];

/**
 * The linear system of one step, H · step = −gradient with some unknowns held, over a pattern that stays: gradient and Hessian
 * are summed into its arrays, the factorisation's plan and memory are kept.
 */
export class NewtonSystem {
  readonly pattern: BlockPattern;
  readonly gradient: Float64Array;
  readonly values: Float64Array;
  readonly step: Float64Array;
  readonly #cholesky: Cholesky;

  /** The pattern must be complete: no block may be added later. */
  constructor(pattern: BlockPattern) {
    this.pattern = pattern;
    this.#cholesky = new Cholesky(pattern, planFronts(pattern));
    this.gradient = new Float64Array(2 * pattern.size);
    this.step = new Float64Array(2 * pattern.size);
    this.values = new Float64Array(pattern.valueCount);
  }

  clear(): void {
    this.gradient.fill(0);
    this.values.fill(0);
  }

  /** Solves for `step`. @returns false when the Hessian is not positive definite; `step` is then of no use */
  solve(held: Held): boolean {
    this.#hold(held);
    if (this.#cholesky.factor(this.values) >= 0) return false;
    const { step, gradient } = this;
    for (let i = 0; i < step.length; i++) step[i] = -gradient[i]!;
    this.#cholesky.solveInto(step, step);
    return true;
  }

  /** Replaces the held unknowns' rows and columns by those of the identity (scaled like their neighbours). */
  #hold(held: Held): void {
    const { values, pattern, gradient } = this;
    const { low, high, size } = pattern;
    const isHeld = new Map<number, [boolean, boolean]>();
    for (const d of held) {
      const both = isHeld.get(d >> 1) ?? [false, false];
      both[d & 1] = true;
      isHeld.set(d >> 1, both);
      gradient[d] = 0;
    }
    for (const [vertex, [u, v]] of isHeld) {
      const at = 4 * vertex;
      const scale = values[at]! + values[at + 3]!;
      if (u) values[at] = scale;
      if (v) values[at + 3] = scale;
      values[at + 1] = values[at + 2] = 0;
    }
    for (let k = 0; k < low.length; k++) {
      const row = isHeld.get(low[k]!);
      const column = isHeld.get(high[k]!);
      if (!row && !column) continue;
      const at = 4 * (size + k);
      for (let i = 0; i < 2; i++) for (let j = 0; j < 2; j++) if (row?.[i] || column?.[j]) values[at + 2 * i + j] = 0;
    }
  }
}

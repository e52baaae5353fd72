import type { BlockPattern } from "#solve/block-pattern.ts";
import { factorisationOf, type Factorisation } from "#solve/factorisation.ts";
import { planFronts } from "#solve/front-plan.ts";

/**
 * The linear system of one step, H · step = −gradient with some unknowns held, over a pattern that stays: gradient and Hessian
 * are summed into its arrays, the factorisation's plan and memory are kept.
 */
export class NewtonSystem {
  readonly pattern: BlockPattern;
  readonly gradient: Float64Array;
  readonly values: Float64Array;
  readonly step: Float64Array;
  readonly #cholesky: Factorisation;
  /** Unknowns held, 2 · vertex for u and 2 · vertex + 1 for v; and the entries of other blocks in their rows and columns. */
  #held: readonly number[] = [];
  #crossings: number[] = [];

  /** The pattern must be complete: no block may be added later. */
  constructor(pattern: BlockPattern) {
    this.pattern = pattern;
    this.#cholesky = factorisationOf(pattern, planFronts(pattern));
    this.gradient = new Float64Array(2 * pattern.size);
    this.step = new Float64Array(2 * pattern.size);
    this.values = new Float64Array(pattern.valueCount);
  }

  clear(): void {
    this.gradient.fill(0);
    this.values.fill(0);
  }

  /** Chooses the unknowns that the next solves hold. */
  hold(held: readonly number[]): void {
    const { low, high, size } = this.pattern;
    this.#held = held;
    this.#crossings = [];
    const isHeld = new Uint8Array(2 * size);
    for (const d of held) isHeld[d] = 1;
    for (let k = 0; k < low.length; k++) {
      const row = 2 * low[k]!;
      const column = 2 * high[k]!;
      for (let i = 0; i < 2; i++) for (let j = 0; j < 2; j++) if (isHeld[row + i]! + isHeld[column + j]! > 0) this.#crossings.push(4 * (size + k) + 2 * i + j);
    }
  }

  /** Factorises the Hessian and solves for `step`. @returns false when it is not positive definite; `step` is then of no use */
  solve(): boolean {
    const { values } = this;
    // Rows and columns of held unknowns become those of the identity, scaled like their neighbours.
    for (const d of this.#held) {
      const at = 4 * (d >> 1);
      values[at + 1] = values[at + 2] = 0;
      values[at + 3 * (d & 1)] = values[at]! + values[at + 3]!;
    }
    for (const at of this.#crossings) values[at] = 0;
    if (this.#cholesky.factor(values) >= 0) return false;
    this.solveKept();
    return true;
  }

  /** Solves for `step` with the factor that the last successful {@link solve} left. */
  solveKept(): void {
    const { step, gradient } = this;
    for (const d of this.#held) gradient[d] = 0;
    for (let i = 0; i < step.length; i++) step[i] = -gradient[i]!;
    this.#cholesky.solveInto(step, step);
  }
}

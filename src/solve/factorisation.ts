import type { BlockPattern } from "./block-pattern.ts";
import { Cholesky } from "./cholesky.ts";
import { CompiledCholesky, compiledRuns } from "./compiled-cholesky.ts";
import type { FrontPlan } from "./front-plan.ts";

/** A Cholesky factorisation of matrices that share one pattern, made again whenever the values change. */
export interface Factorisation {
  readonly plan: FrontPlan;
  /** @returns -1, or the unknown at which a pivot was not positive; the factor is then of no use */
  factor(values: Float64Array): number;
  /** x with A x = b, by the last factor. `x` may be `b`. */
  solveInto(x: Float64Array, b: Float64Array): Float64Array;
}

/** The compiled kernels where the engine can run them, else those in TypeScript: the same bits, at a third of the speed. */
export function factorisationOf(pattern: BlockPattern, plan: FrontPlan): Factorisation {
  return compiledRuns() ? new CompiledCholesky(pattern, plan) : new Cholesky(pattern, plan);
}

import type { Watch } from "#base/watch.ts";

/** When a sheet counts as being at rest, and how long it may take. */
export interface SettleOptions {
  /** Largest way of a point in the last whole step, mm. */
  readonly toleranceMm?: number;
  /** Largest force on a point that nothing answers, N. */
  readonly residualN?: number;
  readonly mostSteps?: number;
  /** A point that goes farther than this from where it was when the settle began will not come back, mm; left out, it may go anywhere. */
  readonly farthestMm?: number;
  /** Called once a step with the steps' share of `mostSteps`; may throw to cancel, the sheet then stays where it is. */
  readonly watch?: Watch;
}

/** Why a sheet did not come to rest. */
export type Unsettled =
  /** A triangle is stretched beyond what it bears. */
  | { readonly what: "torn"; readonly triangle: number; readonly stretch: number }
  /** Nothing holds it: it has gone farther than it may. */
  | { readonly what: "away"; readonly vertex: number; readonly byMm: number }
  /** No part of a step leads on. */
  | { readonly what: "stuck" }
  /** The steps allowed are used up. */
  | { readonly what: "slow" };

export interface Settled {
  readonly settled: boolean;
  readonly why?: Unsettled;
  readonly steps: number;
  /** Largest way of a point in the last step, mm. */
  readonly moveMm: number;
  /** Largest force on a point that nothing answers, N, with planes and normal forces taken anew where it ended. */
  readonly residualN: number;
}

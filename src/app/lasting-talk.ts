import type { Job } from "#job/job.ts";
import type { Banding } from "#lasting/band.ts";
import type { Compensated } from "#lasting/compensate.ts";
import type { Lasted } from "#lasting/lasted.ts";
import type { DraftEffects } from "#lasting/log-effects.ts";
import type { ThroatForetold } from "#lasting/log.ts";
import type { Honest } from "#lasting/remedies.ts";
import type { Swapped } from "#lasting/swap.ts";
import type { Turned } from "#lasting/turn.ts";
import type { KnownLeather } from "#leather/leather.ts";

/** What of lasting can be worked out: the pull-over, its bands, a pattern that ends where it is asked, the pieces laid turned, what each draft does, another leather on the same pattern. */
export type LastingAsked =
  | { readonly what: "pull" }
  | { readonly what: "band" }
  | { readonly what: "correct" }
  | { readonly what: "turn" }
  | { readonly what: "drafts" }
  | { readonly what: "swap"; readonly other: KnownLeather };

/** What the page wishes of the bench for lasting. */
export type LastingWish = { readonly for: "lasting"; readonly job: Job } & LastingAsked;

/** A pattern that ends where it is asked: what it takes, how near it comes, and what else helps; without the pull-overs that led there. */
export type CorrectedFor = Pick<Compensated, "shift" | "aimed" | "uncorrected" | "rounds" | "reached" | "findings"> & { readonly advice: Honest };

/** What was found, as far as it was asked for. */
export interface LastingFound {
  readonly lasted?: Lasted;
  /** What the throats of its shoes are held against. */
  readonly throat?: ThroatForetold;
  readonly banding?: Banding;
  readonly corrected?: CorrectedFor;
  readonly turned?: Turned;
  /** What one more newton at each draft does. */
  readonly effects?: DraftEffects;
  readonly swapped?: Swapped;
  /** The other leather that {@link swapped} tells of. */
  readonly other?: KnownLeather;
}

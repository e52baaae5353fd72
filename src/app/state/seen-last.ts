import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { LastPair } from "#job/pair.ts";
import type { Last } from "#last/last.ts";

/** A last as it is shown at the first station: of the pair, or of a scan that no pair can be made of yet. */
export interface SeenLast {
  /** What it was found for; the work may be ahead of it. */
  readonly job: Job;
  readonly last: Last;
  readonly findings: readonly Finding[];
  readonly other?: LastPair["other"];
}

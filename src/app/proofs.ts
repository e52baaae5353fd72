import type { Files } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import type { Proof } from "#job/proof.ts";
import { Bench, type ProofWish } from "./bench.ts";
import { Heard } from "./heard.ts";
import { tell } from "./state/spots.ts";
import { provenShare } from "./state/stage-words.ts";

/** How a pattern does when it is tried out, for the job it was worked out from. */
export interface Proven {
  readonly job: Job | undefined;
  readonly proof: Proof | undefined;
  /** What is being tried out and how far. */
  readonly busy: { readonly job: Job; readonly stage: string; readonly fraction: number } | undefined;
  /** Why the last one asked for could not be tried out. */
  readonly trouble: string | undefined;
}

/** Tries patterns out on a bench of its own, so that the work at hand never waits for it. */
export class Proofs extends Heard<Proven> {
  readonly #bench: Bench<ProofWish>;
  #wanted: Job | undefined;

  constructor(files: Files) {
    super({ job: undefined, proof: undefined, busy: undefined, trouble: undefined });
    this.#bench = new Bench(files, {
      began: ({ job }) => this.show({ busy: { job, stage: "", fraction: 0 }, trouble: undefined }),
      progress: (stage, fraction) => this.now.busy && this.show({ busy: { ...this.now.busy, stage, fraction: Math.max(this.now.busy.fraction, provenShare(stage, fraction)) } }),
      // What was asked for before the last change, and came after it, counts no more.
      proof: (proof, { job }) => job === this.#wanted && this.show({ job, proof }),
      refused: (finding) => this.show({ trouble: tell(finding) }),
      broke: (why) => this.show({ trouble: `The pattern could not be tried out: ${why}. That is our fault, not yours.` }),
      idle: () => this.show({ busy: undefined }),
      pair: () => {},
      sheets: () => {},
    });
  }

  /** Tries a job's pattern out, unless that was done or is being done. */
  ask(job: Job): void {
    this.#wanted = job;
    if (job !== this.now.job && job !== this.now.busy?.job) this.#bench.ask({ for: "proof", job });
  }
  stop(): void {
    this.#bench.stop();
  }
}

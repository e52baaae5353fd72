import type { Files } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import type { Foretold } from "#lasting/foretold.ts";
import { Bench } from "./bench.ts";
import { Heard } from "./heard.ts";
import type { LastingAsked, LastingFound, LastingWish } from "./lasting-talk.ts";
import { isCutSo, uncorrected } from "./state/lasting-edits.ts";
import { holdsFor, sameForLasting } from "./state/same-for-lasting.ts";
import { tell } from "./state/spots.ts";

/** What was found of lasting, for the job it was worked out from. */
export interface LastingNow extends LastingFound {
  readonly job: Job | undefined;
  /** What is being worked out and how far. */
  readonly busy: { readonly wish: LastingWish; readonly stage: string; readonly fraction: number } | undefined;
  /** Why the last thing asked for could not be worked out. */
  readonly trouble: string | undefined;
  /** What was worked out last, or that the maker ended it. */
  readonly done?: LastingAsked["what"] | "stopped" | undefined;
}

const nothing: LastingNow = { job: undefined, busy: undefined, trouble: undefined };

/** Pulls uppers over on a bench of its own, so that the work at hand never waits for it. */
export class Lastings extends Heard<LastingNow> {
  readonly #bench: Bench<LastingWish>;

  constructor(files: Files) {
    super(nothing);
    this.#bench = new Bench(files, {
      began: (wish) => this.show({ busy: { wish, stage: "", fraction: 0 }, trouble: undefined, done: undefined }),
      progress: (stage, fraction) => this.now.busy && this.show({ busy: { ...this.now.busy, stage, fraction: Math.max(this.now.busy.fraction, fraction) } }),
      lasting: (found, { job, what }) => this.#found(found, job, what),
      refused: (finding) => this.show({ trouble: tell(finding) }),
      broke: (why) => this.show({ trouble: `The upper could not be pulled over: ${why}. That is our fault, not yours.` }),
      idle: () => this.show({ busy: undefined }),
      pair: () => {},
      sheets: () => {},
    });
  }

  /** What was foretold for a job; nothing where it was not, or before the last change. */
  foretold(job: Job): Foretold | undefined {
    const { job: known, lasted, banding } = this.now;
    if (!lasted || !holdsFor(known, job)) return undefined;
    return { lasted: { ...lasted, frames: [] }, ...(banding && { banded: banding.banded }) };
  }

  /** What drafts do is asked to put right the pair that was pulled over: what its own shoes taught counts from the next one on. */
  ask(wish: LastingWish): void {
    const { job: known } = this.now;
    const ofPair = wish.what === "drafts" && known !== undefined && holdsFor(known, wish.job);
    this.#bench.ask(ofPair ? { ...wish, job: { ...wish.job, log: known.log } } : wish);
  }
  stop(): void {
    this.#bench.stop();
    this.show({ done: "stopped" });
  }

  /** What was found for another work is let go with its first result; for the same one it is added to. What a correction came to stays when the pattern is cut so. */
  #found(found: LastingFound, job: Job, done: LastingAsked["what"]): void {
    const { job: before, busy, corrected } = this.now;
    const cutSo = before && corrected && isCutSo(job, corrected.shift) && sameForLasting(uncorrected(job), uncorrected(before));
    const kept = sameForLasting(job, before) ? this.now : { ...nothing, busy, ...(cutSo && { corrected }) };
    this.now = kept;
    this.show({ ...found, job, done });
  }
}

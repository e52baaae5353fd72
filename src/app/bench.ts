import type { Finding } from "#base/findings.ts";
import { filesOf } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";
import type { Proof } from "#job/proof.ts";
import type { Foretold } from "#lasting/foretold.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import type { LastingFound, LastingWish } from "./lasting-talk.ts";
import { answered, ask, noTurns, stopped, type Turns } from "./state/turns.ts";
import { unpack, type FromWorker, type MadeSheets, type ReadLast, type ToWorker } from "./worker-talk.ts";

/**
 * What the page wants worked out: the pair of a job, or the sheets of the pair that was made last. A trial becomes the work only
 * when it succeeds, as the change that `what` tells; `opened` says that it is a saved job, and `says` what was found in its file.
 */
export type Wish =
  | { readonly for: "pair"; readonly job: Job; readonly trial: false; readonly draft: boolean }
  | { readonly for: "pair"; readonly job: Job; readonly trial: true; readonly draft: false; readonly what: string; readonly opened: boolean; readonly says?: readonly Finding[] }
  | { readonly for: "sheets"; readonly job: Job; readonly foretold?: Foretold };
/** How the pattern of a job does when it is tried out. */
export interface ProofWish {
  readonly for: "proof";
  readonly job: Job;
}

type AnyWish = Wish | ProofWish | LastingWish;

/** What the worker has to say about a wish. */
export interface Ear<W extends AnyWish> {
  began(wish: W): void;
  progress(stage: string, fraction: number): void;
  pair(pair: Pair, wish: W): void;
  sheets(made: MadeSheets, wish: W): void;
  /** Nothing where there is no last to try the pattern on. */
  proof?(proof: Proof | undefined, wish: W): void;
  lasting?(found: LastingFound, wish: W): void;
  /** `rules` are those of the last, `last` is that itself and `traced` the pictures, as far as the job got. */
  refused(finding: Finding, wish: W, rules: Rules | undefined, last: ReadLast | undefined, traced: readonly TracedPicture[]): void;
  broke(why: string, wish: W): void;
  /** Nothing runs and nothing waits. */
  idle(): void;
}

/** The page's side of the worker: one wish at a time, the newest next, answers that came too late dropped. */
export class Bench<W extends AnyWish = Wish> {
  #worker: Worker | undefined;
  #turns: Turns<W> = noTurns;
  #sent = new Map<string, Uint8Array>();
  #pair: Pair | undefined;
  readonly #files: ReadonlyMap<string, Uint8Array>;
  readonly #ear: Ear<W>;

  constructor(files: ReadonlyMap<string, Uint8Array>, ear: Ear<W>) {
    this.#files = files;
    this.#ear = ear;
  }

  ask(wish: W): void {
    const { turns, start } = ask(this.#turns, wish);
    this.#turns = turns;
    if (start) this.#start(start.id, start.wish);
  }

  /** Names of the files of what runs or waits. */
  wanted(): readonly string[] {
    const { running, waiting } = this.#turns;
    return [running?.wish, waiting].flatMap((wish) => (wish ? filesOf(wish.job) : []));
  }

  /** Ends whatever runs at once. What was made last stays with the page; the next wish starts a fresh worker. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#sent.clear();
    this.#turns = stopped(this.#turns);
    this.#ear.idle();
  }

  #start(id: number, wish: W): void {
    const worker = (this.#worker ??= this.#spawn());
    const post = (message: ToWorker): void => worker.postMessage(message);
    for (const file of this.#sent.keys()) {
      if (this.#files.has(file)) continue;
      this.#sent.delete(file);
      post({ say: "forget", name: file });
    }
    for (const file of filesOf(wish.job)) {
      const bytes = this.#files.get(file);
      if (bytes && this.#sent.get(file) !== bytes) {
        this.#sent.set(file, bytes);
        post({ say: "file", name: file, bytes });
      }
    }
    post(messageFor(wish, id));
    this.#ear.began(wish);
  }

  #spawn(): Worker {
    const worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "bench" });
    this.#pair = undefined;
    worker.addEventListener("message", (event: MessageEvent<FromWorker>) => {
      if (worker === this.#worker) this.#hear(event.data);
    });
    worker.addEventListener("error", (event) => {
      const running = this.#turns.running;
      if (worker !== this.#worker || !running) return;
      this.stop();
      this.#ear.broke(event.message || "the worker could not be started", running.wish);
    });
    return worker;
  }

  #hear(message: FromWorker): void {
    // A parcel may leave out what an earlier one brought, so each is opened, also one that no longer counts.
    if (message.say === "pair") this.#pair = unpack(message.parcel, this.#pair);
    if (message.say === "progress") {
      if (this.#turns.running?.id === message.id) this.#ear.progress(message.stage, message.fraction);
      return;
    }
    const wish = this.#turns.running?.wish;
    const { turns, counts, start } = answered(this.#turns, message.id);
    this.#turns = turns;
    if (!counts || !wish) return;
    if (start) this.#start(start.id, start.wish);
    if (message.say === "pair") this.#ear.pair(this.#pair!, wish);
    else if (message.say === "sheets") this.#ear.sheets(message.made, wish);
    else if (message.say === "proof") this.#ear.proof?.(message.proof, wish);
    else if (message.say === "lasting") this.#ear.lasting?.(message.found, wish);
    else if (message.say === "refused") this.#ear.refused(message.finding, wish, message.rules, message.last, message.traced);
    else this.#ear.broke(message.why, wish);
    if (!start) this.#ear.idle();
  }
}

/** What is posted for a wish; its files have been sent before. */
function messageFor(wish: AnyWish, id: number): ToWorker {
  const { job } = wish;
  if (wish.for === "pair") return { say: "run", id, job, draft: wish.draft };
  if (wish.for === "lasting") return { say: "last", id, job, asked: wish.what === "swap" ? { what: wish.what, other: wish.other } : { what: wish.what } };
  if (wish.for === "sheets") return { say: "sheets", id, job, ...(wish.foretold && { foretold: wish.foretold }) };
  return { say: "prove", id, job };
}

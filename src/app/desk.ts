import { explain, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import { isJobFile, readJobFile, writeJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import { Bench, type Wish } from "./bench.ts";
import { fetchDemo } from "./demo/fetch-demo.ts";
import { bytesOf } from "./read-file.ts";
import { ElsewhereChanged, Keep } from "./keep/keep.ts";
import { freeName, onScan } from "./state/edits.ts";
import { redo, run, settle, startHistory, undo, type History } from "./state/history.ts";

export type Saved = "saving" | "saved" | "elsewhere" | "not saved";
export interface Busy {
  readonly on: Wish["for"];
  readonly trial: boolean;
  readonly stage: string;
  readonly fraction: number;
}
/** What stands wrong, in a sentence; `kind` says whether the maker's input or our own program is at fault. */
export interface Trouble {
  readonly kind: "refused" | "broke";
  readonly sentence: string;
}
export interface Desktop {
  readonly history: History;
  readonly pair: Pair | undefined;
  readonly busy: Busy | undefined;
  readonly trouble: Trouble | undefined;
  readonly saved: Saved;
  /** Files made from `sheetsOf`; they count only while that is still the pair. */
  readonly sheets: readonly SheetFile[] | undefined;
  readonly sheetsOf: Pair | undefined;
  /** The pair shown was worked out coarsely, while something moves. */
  readonly draft: boolean;
}

/** All that the page shows and does, apart from how: one immutable picture of the work, replaced at each change. */
export class Desk {
  #now: Desktop;
  readonly #ears = new Set<() => void>();
  readonly #files = new Map<string, Uint8Array>();
  readonly #bench: Bench;
  readonly #keep = new Keep();
  #writing: Promise<void> = Promise.resolve();
  #writesAhead = 0;

  constructor() {
    const history = startHistory(defaultJob(), "the example last");
    this.#now = { history, pair: undefined, busy: undefined, trouble: undefined, saved: "saving", sheets: undefined, sheetsOf: undefined, draft: false };
    this.#bench = new Bench(this.#files, {
      began: (wish) => this.#show({ busy: { on: wish.for, trial: wish.for === "pair" && wish.trial, stage: "", fraction: 0 } }),
      progress: (stage, fraction) => this.#now.busy && this.#show({ busy: { ...this.#now.busy, stage, fraction } }),
      pair: (pair, wish) => this.#madePair(pair, wish),
      sheets: (sheets) => this.#show({ sheets, sheetsOf: this.#now.pair, trouble: undefined }),
      refused: (finding, wish) => this.#refused(finding, wish),
      broke: (why, wish) => this.#broke(why, wish),
      idle: () => this.#show({ busy: undefined }),
    });
  }

  /** Finds the kept work, or begins with the demonstration; in either case the pair is worked out. */
  async open(): Promise<void> {
    try {
      const kept = await this.#keep.read();
      if (kept) {
        for (const [name, bytes] of kept.files) this.#files.set(name, bytes);
        this.#show({ history: settle(kept.history), saved: "saved" });
      } else this.#write();
    } catch {
      this.#show({ saved: "not saved" });
    }
    this.#bench.ask({ for: "pair", job: this.job, trial: false, draft: false });
    const { job } = this;
    if (JSON.stringify(job) !== JSON.stringify(defaultJob())) return;
    const demo = await fetchDemo(job);
    if (demo && !this.#now.pair && this.job === job) this.#show({ pair: demo });
  }

  get now(): Desktop {
    return this.#now;
  }
  get job(): Job {
    return this.#now.history.now.job;
  }
  readonly listen = (ear: () => void): (() => void) => {
    this.#ears.add(ear);
    return () => this.#ears.delete(ear);
  };
  readonly look = (): Desktop => this.#now;

  /** Changes the job; one gesture (a drag, a run of arrow keys) is one step of the history. */
  change(job: Job, what: string, gesture?: string): void {
    this.#become(run(this.#now.history, job, what, gesture));
  }
  /** The drag or the typing is over: the next change is a step of its own, and the pair is worked out in full. */
  settle(): void {
    const history = settle(this.#now.history);
    if (history === this.#now.history) return;
    this.#show({ history });
    this.#write();
    this.#bench.ask({ for: "pair", job: this.job, trial: false, draft: false });
  }
  undo(): void {
    this.#become(undo(this.#now.history));
  }
  redo(): void {
    this.#become(redo(this.#now.history));
  }
  stop(): void {
    this.#bench.stop();
  }
  makeSheets(): void {
    this.#bench.ask({ for: "sheets", job: this.job });
  }
  dismiss(): void {
    this.#show({ trouble: undefined });
  }
  startAfresh(): void {
    this.change(defaultJob(), "starting from the example last");
  }
  /** Begins without the steps before, for it may be they that the page breaks down over. */
  startOver(): void {
    this.#become(startHistory(defaultJob(), "the example last"));
  }

  /** Opens a scan or a job file. It becomes the work only when a pair could be made of it. */
  async openFile(file: File): Promise<void> {
    try {
      const bytes = await bytesOf(file);
      if (isJobFile(file.name, bytes)) this.#openJob(file.name, bytes);
      else {
        const name = freeName(file.name, (n) => this.#files.has(n) && !sameBytes(this.#files.get(n)!, bytes));
        this.#files.set(name, this.#files.get(name) ?? bytes);
        this.#bench.ask({ for: "pair", job: onScan(this.job, name), trial: true, draft: false });
      }
    } catch (error) {
      this.#trouble(error, "opening the file");
    }
  }

  /** Says why something cannot be done; the work stays as it is. */
  refuse(finding: Finding): void {
    this.#show({ trouble: { kind: "refused", sentence: explain(finding) } });
  }

  #openJob(name: string, bytes: Uint8Array): void {
    const opened = readJobFile(name, bytes);
    let { job } = opened;
    for (const [file, content] of opened.files) {
      const free = freeName(file, (n) => this.#files.has(n) && !sameBytes(this.#files.get(n)!, content));
      this.#files.set(free, this.#files.get(free) ?? content);
      if (job.last.from === "scan" && job.last.file === file) job = { ...job, last: { ...job.last, file: free } };
    }
    this.#bench.ask({ for: "pair", job, trial: true, draft: false });
  }

  /** The job with its scan as one file for the maker to keep; undefined, and said why, when it cannot be written. */
  jobFile(): Uint8Array | undefined {
    try {
      return writeJobFile(this.job, this.#files);
    } catch (error) {
      this.#trouble(error, "saving to a file");
      return undefined;
    }
  }

  #madePair(pair: Pair, wish: Wish): void {
    if (wish.for === "pair" && wish.trial) {
      const what = `opening ${wish.job.last.from === "scan" ? wish.job.last.file : wish.job.title}`;
      this.#show({ pair, draft: false, trouble: undefined, history: run(this.#now.history, wish.job, what) });
      this.#write();
    } else this.#show({ pair, trouble: undefined, draft: wish.for === "pair" && wish.draft });
  }

  #refused(finding: Finding, wish: Wish): void {
    const kept = wish.for === "pair" && wish.trial ? " What you had before is still here." : "";
    this.#show({ trouble: { kind: "refused", sentence: explain(finding) + kept } });
  }

  #broke(why: string, wish: Wish): void {
    const doing = wish.for === "sheets" ? "making the sheets" : wish.trial ? "reading the file" : "working this out";
    this.#show({ trouble: { kind: "broke", sentence: brokeWords(doing, why) } });
  }

  #trouble(error: unknown, doing: string): void {
    if (error instanceof Refusal) this.refuse(error.finding);
    else this.#show({ trouble: { kind: "broke", sentence: brokeWords(doing, error instanceof Error ? error.message : String(error)) } });
  }

  #become(history: History): void {
    if (history === this.#now.history) return;
    const changed = history.now.job !== this.job;
    this.#show({ history });
    if (!changed) return;
    this.#write();
    this.#bench.ask({ for: "pair", job: this.job, trial: false, draft: history.gesture !== undefined });
  }

  /** Writes the newest state; while one write runs, further changes are gathered into the next. */
  #write(): void {
    this.#show({ saved: "saving" });
    this.#writesAhead++;
    this.#writing = this.#writing.then(async () => {
      if (--this.#writesAhead > 0) return;
      try {
        await this.#keep.write(this.#now.history, this.#files);
        if (this.#writesAhead === 0) this.#show({ saved: "saved" });
      } catch (error) {
        this.#show({ saved: error instanceof ElsewhereChanged ? "elsewhere" : "not saved" });
      }
    });
  }

  #show(part: Partial<Desktop>): void {
    this.#now = { ...this.#now, ...part };
    for (const ear of this.#ears) ear();
  }
}

const brokeWords = (doing: string, why: string): string =>
  `Something went wrong in the program itself while ${doing} (${why}). Your work is safe; take the last change back, or reload the page and try again.`;

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((v, i) => v === b[i]);
}

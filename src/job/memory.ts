import type { Watch } from "#base/watch.ts";

/** A stage's result and the key it is remembered under, for the stages that follow from it. */
export interface Made<T> {
  readonly value: T;
  readonly key: string;
}

interface Kept {
  readonly key: string;
  readonly value: unknown;
  readonly ms: number;
}

/** So many results of a stage are remembered: the last one, and the one before it for a change taken back, or for a coarser twin of it. */
const remembered = 2;

/** Remembers the last results of each stage under what they were made from. */
export class Memory {
  readonly #kept = new Map<string, readonly Kept[]>();

  start(watch: Watch, now: () => number): Run {
    return new Run(this.#kept, watch, now);
  }
}

/** One run of the pipeline over what is remembered. */
export class Run {
  readonly timesMs: Record<string, number> = {};
  readonly #kept: Map<string, readonly Kept[]>;
  readonly #watch: Watch;
  readonly #now: () => number;
  constructor(kept: Map<string, readonly Kept[]>, watch: Watch, now: () => number) {
    this.#kept = kept;
    this.#watch = watch;
    this.#now = now;
  }

  /** What the stage gave last, whatever it was made from. */
  former<T>(stage: string): T | undefined {
    return this.#kept.get(stage)?.[0]?.value as T | undefined;
  }

  /** The stage's result, made anew only if what it is made from has changed. */
  make<T>(stage: string, from: readonly unknown[], how: () => T): Made<T> {
    const key = `${stage}(${from.map((part) => (typeof part === "string" ? part : JSON.stringify(part))).join("; ")})`;
    const known = this.#kept.get(stage) ?? [];
    let kept = known.find((result) => result.key === key);
    if (!kept) {
      this.#watch(stage, 0);
      const start = this.#now();
      const value = how();
      kept = { key, value, ms: this.#now() - start };
      this.#watch(stage, 1);
    }
    this.#kept.set(stage, [kept, ...known.filter((result) => result !== kept)].slice(0, remembered));
    this.timesMs[stage] = kept.ms;
    return { value: kept.value as T, key };
  }
}

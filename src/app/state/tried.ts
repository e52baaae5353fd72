import type { Job } from "#job/job.ts";
import type { History, Step } from "./history.ts";
import { putBeside } from "./unused.ts";
import type { MeasureKey } from "./spot.ts";

/**
 * What is known of the jobs in the history: of some a pair was made, some were refused, and of the rest nobody knows yet. A refused
 * job stays neither in the history nor in what is kept.
 */
export class Tried {
  readonly #good = new WeakSet<Job>();
  readonly #refused = new WeakSet<Job>();
  readonly isGood = (job: Job): boolean => this.#good.has(job);
  readonly isRefused = (job: Job): boolean => this.#refused.has(job);

  good(job: Job): void {
    this.#good.add(job);
    this.#refused.delete(job);
  }
  refuse(job: Job): void {
    this.#good.delete(job);
    this.#refused.add(job);
  }

  /** The newest work that a pair can be made of, which alone goes into a file; where there is none, the work as it stands. */
  lastGood({ now, past }: History): Job {
    return ([...past, now].findLast((step) => this.isGood(step.job)) ?? now).job;
  }
}

/** The history without the steps before and after the present that `drop` names. */
export function without(h: History, drop: (job: Job) => boolean): History {
  const kept = (steps: readonly Step[]): readonly Step[] => (steps.some((s) => drop(s.job)) ? steps.filter((s) => !drop(s.job)) : steps);
  const [past, future] = [kept(h.past), kept(h.future)];
  return past === h.past && future === h.future ? h : { ...h, past, future };
}

/** True when some step of the history is this very job. */
export function speaksOf(h: History, job: Job): boolean {
  return [h.now, ...h.past, ...h.future].some((s) => s.job === job);
}

/**
 * The history as if the refused job had never been: back at the last good state, with only those changes on top of it that were
 * made since. `held` is the last good state of a gesture that still goes on. Nothing when there is no good state to go back to.
 */
export function takeOut(h: History, refused: Job, tried: Pick<Tried, "isGood" | "isRefused">, held?: Step): History | undefined {
  const last = h.past.findLastIndex((s) => tried.isGood(s.job));
  const base = held ?? h.past[last];
  if (!base) return undefined;
  const past = (held ? h.past : h.past.slice(0, last)).filter((s) => !tried.isRefused(s.job));
  const future = h.future.filter((s) => s.job !== refused && !tried.isRefused(s.job));
  const gesture = held && h.gesture !== undefined ? { gesture: h.gesture } : {};
  const job = h.now.job === refused ? base.job : (carryOver(h.now.job, refused, base.job) as Job);
  // What waits beside the work has nothing to do with it.
  const { waiting, unused = base.unused } = h.now;
  const beside = { ...(waiting ? { waiting } : {}), ...(unused ? { unused } : {}) };
  // Nor has it to do with whose prices they are.
  const nowOf = ({ what, brought }: Step, of: Job): Step => ({ job: of, what, ...beside, ...(brought && { brought }) });
  if (JSON.stringify(job) === JSON.stringify(base.job)) return { past, now: nowOf(base, base.job), future, ...gesture };
  return { past: held ? past : [...past, base], now: nowOf(h.now, job), future: [], ...gesture };
}

/**
 * The history with the measures of the refused job set beside the last good state in place of it, each step staying a step. What came
 * after it is left to be tried for itself. Nothing where it is not for a measure that the job departs from the good one.
 */
export function setBeside(h: History, refused: Job, tried: Pick<Tried, "isGood">, why: string, named: MeasureKey | undefined, typed: MeasureKey | undefined, lastFits: boolean, held?: Step): History | undefined {
  const steps = [...h.past, h.now];
  const at = steps.findIndex((s) => s.job === refused);
  const good = (refused === h.now.job ? held?.job : undefined) ?? steps.slice(0, Math.max(0, at)).findLast((s) => tried.isGood(s.job))?.job;
  const beside = at >= 0 && good && putBeside(refused, good, why, named, typed, lastFits);
  if (!beside) return undefined;
  const mended = steps.map((s) => (s.job === refused ? { ...s, ...beside } : s));
  return { ...h, past: mended.slice(0, -1), now: mended.at(-1)! };
}

type Tree = { readonly [key: string]: unknown };
/** A list is changed as a whole: its places mean nothing by themselves. */
const isTree = (v: unknown): v is Tree => typeof v === "object" && v !== null && !Array.isArray(v);

/** What was changed from `from` to `value`, made on `onto`. */
function carryOver(value: unknown, from: unknown, onto: unknown): unknown {
  if (value === from) return onto;
  if (!isTree(value) || !isTree(from) || !isTree(onto)) return value;
  const out: Record<string, unknown> = {};
  for (const key of new Set([...Object.keys(value), ...Object.keys(onto)])) {
    // A setting that was given up stays away, one that the refused job alone lacked comes back.
    const next = key in value || key in from ? carryOver(value[key], from[key], onto[key]) : onto[key];
    if (next !== undefined) out[key] = next;
  }
  return out;
}

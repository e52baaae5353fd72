import { Refusal } from "#base/refusal.ts";
import { filesOf as filesOfJob } from "#job/files.ts";
import type { Job } from "#job/job.ts";

/** One state of the work and the words for the change that led to it. */
export interface Step {
  readonly job: Job;
  readonly what: string;
}

/** All that can be taken back and done again. `gesture` names the drag or the typing that is still going on. */
export interface History {
  readonly past: readonly Step[];
  readonly now: Step;
  /** Nearest first. */
  readonly future: readonly Step[];
  readonly gesture?: string;
}

/** More steps back than a maker remembers; older ones are let go. */
export const longestPast = 300;

export function startHistory(job: Job, what: string): History {
  return { past: [], now: { job, what }, future: [] };
}

/**
 * Makes `job` the present. Changes of one and the same `gesture`, one after the other, count as one step, so that a drag or a
 * run of arrow keys is taken back at once.
 */
export function run(h: History, job: Job, what: string, gesture?: string): History {
  const goesOn = gesture !== undefined && gesture === h.gesture;
  const past = goesOn ? h.past : [...h.past, h.now].slice(-longestPast);
  const next = { past, now: { job, what }, future: [] };
  return gesture === undefined ? next : { ...next, gesture };
}

/** Ends the gesture: the next change is a step of its own. */
export function settle(h: History): History {
  if (h.gesture === undefined) return h;
  return { past: h.past, now: h.now, future: h.future };
}

export function undo(h: History): History {
  const before = h.past.at(-1);
  return before ? { past: h.past.slice(0, -1), now: before, future: [h.now, ...h.future] } : settle(h);
}

export function redo(h: History): History {
  const after = h.future[0];
  return after ? { past: [...h.past, h.now], now: after, future: h.future.slice(1) } : settle(h);
}

/** Words for what `undo` would take back, or nothing. */
export function undoable(h: History): string | undefined {
  return h.past.length > 0 ? h.now.what : undefined;
}

export function redoable(h: History): string | undefined {
  return h.future[0]?.what;
}

/** Names of the scans that some step of the history still needs. */
export function filesOf(h: History): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { job } of [...h.past, h.now, ...h.future]) for (const name of filesOfJob(job)) names.add(name);
  return names;
}

/**
 * Work as an older or another program may have kept it: each state is read anew, those that cannot be are left out, and the
 * newest that can be is the present. Nothing when there is none.
 */
export function revived(kept: History, read: (job: unknown) => Job): History | undefined {
  const readable = (step: Step): readonly Step[] => {
    try {
      return [{ job: read(step.job), what: step.what }];
    } catch (error) {
      if (error instanceof Refusal) return [];
      throw error;
    }
  };
  const past = [...kept.past, kept.now].flatMap(readable);
  const now = past.at(-1);
  return now && { past: past.slice(0, -1), now, future: kept.future.flatMap(readable) };
}

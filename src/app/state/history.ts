import { Refusal } from "#base/refusal.ts";
import { filesOf as filesOfJob } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import { readUnused, type Unused } from "./unused.ts";

/** One state of the work and the words for the change that led to it. */
export interface Step {
  readonly job: Job;
  readonly what: string;
  /** What the maker brought in and no pattern can be made of yet; it waits beside the work until it is put right or let go. */
  readonly waiting?: Job;
  /** Measures that were typed and do not go with the others yet; they stay beside the work until they do, or are let go. */
  readonly unused?: Unused;
  /** What it says of the workshop was not written at this pair: it came with an opened file, or is the maker's own. */
  readonly brought?: true;
}

/** All that can be taken back and done again. `gesture` names the drag or the typing that is still going on. */
export interface History {
  readonly past: readonly Step[];
  readonly now: Step;
  /** Nearest first. */
  readonly future: readonly Step[];
  readonly gesture?: string;
  /** What could be done again before the gesture began; it can be once more when the gesture is given up. */
  readonly formerFuture?: readonly Step[];
}

/** More steps back than a maker remembers; older ones are let go. */
export const longestPast = 300;

export function startHistory(job: Job, what: string): History {
  return { past: [], now: { job, what }, future: [] };
}

/**
 * Makes `job` the present; what waits beside it goes on waiting, and so do unused numbers unless others are given. Changes of one and the same `gesture`, one after the other, count as one step, so that a drag or a
 * run of arrow keys is taken back at once.
 */
export function run(h: History, job: Job, what: string, gesture?: string, unused: Unused | "none" | undefined = h.now.unused): History {
  return step(h, { job, what, ...besides(h.now.waiting), ...still(unused) }, gesture);
}

/** {@link run} with a job whose workshop comes from elsewhere: out of a file, or the maker's own. Numbers that wait for one last have no say in another. */
export function runBrought(h: History, job: Job, what: string): History {
  return step(h, { job, what, ...besides(h.now.waiting), ...still(job.last === h.now.job.last ? h.now.unused : "none"), brought: true }, undefined);
}

/** Lets `waiting` wait beside the work, or nothing any more; a step like any other. */
export function setWaiting(h: History, waiting: Job | undefined, what: string, gesture?: string): History {
  return step(h, { job: h.now.job, what, ...besides(waiting), ...still(h.now.unused) }, gesture);
}

/** What was brought in becomes the work. Where it waited, the step that let it wait gives way: to take that back would only try it again. */
export function takenIn(h: History, job: Job, what: string, unused?: Unused): History {
  return { past: h.now.waiting === job ? h.past : pastWith(h), now: { job, what, ...(unused ? { unused } : {}), brought: true }, future: [] };
}

/** The present as if `waiting`, from before, had gone on waiting in place of what waits now. */
export function waitsAsBefore(h: History, waiting: Job): History {
  const before = h.past.at(-1);
  if (before?.waiting === waiting && before.job === h.now.job) return { past: h.past.slice(0, -1), now: before, future: [] };
  return { ...settle(h), now: { ...h.now, waiting } };
}

function step(h: History, now: Step, gesture: string | undefined): History {
  const goesOn = gesture !== undefined && gesture === h.gesture;
  const next = { past: goesOn ? h.past : pastWith(h), now, future: [] };
  if (gesture === undefined) return next;
  const formerFuture = goesOn ? h.formerFuture : h.future;
  return { ...next, gesture, ...(formerFuture && { formerFuture }) };
}

const pastWith = (h: History): readonly Step[] => [...h.past, h.now].slice(-longestPast);
const besides = (waiting: Job | undefined): Pick<Step, "waiting"> => (waiting ? { waiting } : {});
const still = (unused: Unused | "none" | undefined): Pick<Step, "unused"> => (unused && unused !== "none" ? { unused } : {});

/** Ends the gesture: the next change is a step of its own. */
export function settle(h: History): History {
  if (h.gesture === undefined) return h;
  return { past: h.past, now: h.now, future: h.future };
}

/** The work as if `gesture` had never begun, while it goes on. */
export function giveUp(h: History, gesture: string): History {
  const before = h.past.at(-1);
  return h.gesture === gesture && before ? { past: h.past.slice(0, -1), now: before, future: h.formerFuture ?? [] } : h;
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

/** Every state that can be gone to, the oldest first. */
export const stepsOf = (h: History): readonly Step[] => [...h.past, h.now, ...h.future];

/** Names of the files that some step of the history still needs. */
export function filesOf(h: History): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { job, waiting } of stepsOf(h)) {
    for (const name of [...filesOfJob(job), ...(waiting ? filesOfJob(waiting) : [])]) names.add(name);
  }
  return names;
}

/**
 * Work as an older or another program may have kept it: each state is read anew, those that cannot be are left out, and the
 * newest that can be is the present. Nothing when there is none.
 */
export function revived(kept: History, read: (job: unknown) => Job): History | undefined {
  const readOr = (job: unknown): Job | undefined => {
    try {
      return read(job);
    } catch (error) {
      if (error instanceof Refusal) return undefined;
      throw error;
    }
  };
  const readable = (kept: Step): readonly Step[] => {
    const job = readOr(kept.job);
    return job ? [{ job, what: kept.what, ...besides(kept.waiting && readOr(kept.waiting)), ...still(readUnused(kept.unused)), ...(kept.brought === true && { brought: true }) }] : [];
  };
  const past = [...kept.past, kept.now].flatMap(readable);
  const now = past.at(-1);
  return now && { past: past.slice(0, -1), now, future: kept.future.flatMap(readable) };
}

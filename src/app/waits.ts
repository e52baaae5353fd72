import type { Job } from "#job/job.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import type { Desktop } from "./desktop.ts";
import { setWaiting, waitsAsBefore } from "./state/history.ts";
import type { ReadLast } from "./worker-talk.ts";

/**
 * What a maker brings and can still put right waits: pictures of a tape, and a scan on which the last was found. Nothing where it is a
 * scan on which none was.
 */
export function toWait({ history }: Desktop, job: Job, what: string, read: ReadLast | undefined, traced: readonly TracedPicture[]): Partial<Desktop> | undefined {
  if (job.last.from === "measures") return {};
  const taped = job.last.from === "tape";
  if (!taped && !read) return undefined;
  const seen = taped ? { waitingTraced: { job, pictures: traced }, waitingLast: undefined } : { waitingLast: read && { job, ...read } };
  return { history: history.now.waiting === job ? history : setWaiting(history, job, what), brought: job, ...seen };
}

/** A scan that waits as it was last seen, after something was asked of it that cannot be. */
export function stillWaiting({ waiting, waitingLast, history }: Desktop): Partial<Desktop> {
  if (!waiting || !waitingLast || waiting === waitingLast.job) return {};
  return { history: waitsAsBefore(history, waitingLast.job) };
}

import type { Job } from "#job/job.ts";
import type { ShoeEntry } from "#lasting/log.ts";

/** All of a job that a pull-over depends on; a title or a paper changes nothing of it. */
const parts = ["last", "lines", "shell", "pieces", "parts", "leather", "lasting"] as const;

/** Whether what was pulled over for one job holds for the other as well. */
export function sameForLasting(a: Job | undefined, b: Job | undefined): boolean {
  if (a === b) return true;
  return a !== undefined && b !== undefined && parts.every((part) => alike(a[part], b[part])) && (a.log === b.log || alike(teaching(a.log), teaching(b.log)));
}

/**
 * Whether what was pulled over for one job still tells of the pair that the other one makes: what was written down of the newest pair
 * counts from the next one on.
 */
export function holdsFor(pulled: Job | undefined, now: Job | undefined): boolean {
  if (pulled === undefined || now === undefined || sameForLasting(pulled, now)) return sameForLasting(pulled, now);
  const newest = Math.max(...now.log.map(({ pair }) => pair));
  const before = (job: Job): Job => ({ ...job, log: job.log.filter(({ pair }) => pair !== newest) });
  return sameForLasting(before(pulled), before(now));
}

const alike = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** What the log teaches about the leather: throats of shoes, once some of them had been foretold. */
function teaching(log: readonly ShoeEntry[]): unknown {
  const told = log.filter((e) => e.measured.throatDepthMm !== undefined);
  return told.some((e) => e.foretold) ? told.map(({ pair, side, last, leather, measured, foretold, overMm }) => [pair, side, last, leather, measured.throatDepthMm, foretold, overMm?.throatDepthMm]) : [];
}

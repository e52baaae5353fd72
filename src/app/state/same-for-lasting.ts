import type { Job } from "#job/job.ts";

/** All of a job that a pull-over depends on; a title, a paper or a shoe written down changes nothing of it. */
const parts = ["last", "lines", "shell", "pieces", "parts", "leather", "lasting"] as const;

/** Whether what was pulled over for one job holds for the other as well. */
export function sameForLasting(a: Job | undefined, b: Job | undefined): boolean {
  if (a === b) return true;
  return a !== undefined && b !== undefined && parts.every((part) => a[part] === b[part] || JSON.stringify(a[part]) === JSON.stringify(b[part]));
}

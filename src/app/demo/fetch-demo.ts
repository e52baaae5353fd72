import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import { valueFromBytes } from "./value-bytes.ts";

/** The pair that was worked out when the app was built, if it is that of this job. */
export async function fetchDemo(job: Job): Promise<Pair | undefined> {
  try {
    const answer = await fetch("./demo-pair.bin");
    if (!answer.ok) return undefined;
    const pair = valueFromBytes(new Uint8Array(await answer.arrayBuffer())) as Pair;
    return JSON.stringify(pair.job) === JSON.stringify(job) ? { ...pair, job } : undefined;
  } catch {
    // Only a head start is lost: the worker makes the same pair.
    return undefined;
  }
}

import type { Job } from "#job/job.ts";
import type { Desk } from "../desk.ts";
import type { SeenLast } from "./seen-last.ts";

/** What the first station works on: the work itself, or a scan that waits to become it. */
export interface ScanWork {
  readonly job: Job;
  readonly waiting: boolean;
  readonly change: (job: Job, what: string) => void;
  /** For the number fields. */
  readonly fields: Pick<Desk, "change" | "settle" | "forgetRefused">;
}

/** A scan that waits goes before the work: the maker is putting it right. */
export function scanWork(desk: Desk): ScanWork {
  const { waiting } = desk.now;
  if (waiting?.last.from !== "scan") return { job: desk.job, waiting: false, change: (job, what) => desk.change(job, what), fields: desk };
  const change = (job: Job): void => desk.changeWaiting(job);
  return { job: waiting, waiting: true, change, fields: { change, settle: () => {}, forgetRefused: () => {} } };
}

/** The last to be shown at the first station, if there is one. */
export function seenLast({ now: { waiting, waitingLast, pair } }: Desk): SeenLast | undefined {
  if (waiting?.last.from === "scan" && waitingLast) return waitingLast;
  return pair?.from === "last" ? pair : undefined;
}

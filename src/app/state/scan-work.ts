import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { LastPair } from "#job/pair.ts";
import type { Last } from "#last/last.ts";
import type { Desk } from "../desk.ts";

/** A last as it is shown at the first station: of the pair, or of a scan that no pair can be made of yet. */
export interface SeenLast {
  /** What it was found for; the work may be ahead of it. */
  readonly job: Job;
  readonly last: Last;
  readonly findings: readonly Finding[];
  readonly other?: LastPair["other"];
}

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

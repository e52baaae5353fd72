import type { Job } from "#job/job.ts";
import type { Desk } from "../desk.ts";

/** What a number field needs of the desk. */
export type FieldDesk = Pick<Desk, "change" | "settle" | "forgetRefused" | "standAt">;

/** What the first station works on: the work itself, or what waits to become it. */
export interface WorkInHand {
  readonly job: Job;
  readonly waiting: boolean;
  readonly change: (job: Job, what: string) => void;
  /** For the number fields. */
  readonly fields: FieldDesk;
}

/** What waits, where something does, goes before the work: the maker is putting it right. */
export function workInHand(desk: Desk, waiting: Job | undefined): WorkInHand {
  if (!waiting) return { job: desk.job, waiting: false, change: (job, what) => desk.change(job, what), fields: desk };
  const change: FieldDesk["change"] = (job, what, gesture) => desk.changeWaiting(job, what, gesture);
  return { job: waiting, waiting: true, change, fields: { change, settle: () => desk.settle(), forgetRefused: () => {}, standAt: () => {} } };
}

import type { Job } from "#job/job.ts";
import type { TapeSaid } from "#tape/said.ts";
import type { Desk } from "../desk.ts";
import type { Desktop } from "../desktop.ts";
import { tapeOf } from "../state/tape-edits.ts";
import type { FieldDesk } from "./number-field.tsx";

/** The taped pattern that the column speaks of: the work, or photographs that still wait to become one. */
export interface TapeWork {
  readonly job: Job;
  readonly said: TapeSaid;
  readonly waiting: boolean;
  readonly change: (job: Job, what: string) => void;
  /** For the number fields. */
  readonly fields: FieldDesk;
}

export function tapeWork(desk: Desk, { waiting }: Pick<Desktop, "waiting">): TapeWork | undefined {
  const job = waiting ?? desk.job;
  const said = tapeOf(job);
  if (!said) return undefined;
  if (!waiting) return { job, said, waiting: false, change: (next, what) => desk.change(next, what), fields: desk };
  const change = (next: Job): void => desk.changeWaiting(next);
  return { job, said, waiting: true, change, fields: { change, settle: () => {}, forgetRefused: () => {} } };
}

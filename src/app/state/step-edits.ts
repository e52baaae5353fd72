import type { Job } from "#job/job.ts";
import { momentText, type Moment } from "#making/calendar/dates.ts";
import type { Shoe } from "#making/calendar/progress.ts";
import type { StepDone } from "#making/said.ts";
import { setMaking } from "./making-edits.ts";

/** Ticks a step off on the named shoes, at a moment of the maker's clock, or takes the ticks out again. A shoe that was ticked before keeps its time unless that is what is changed. */
export function setTick(job: Job, step: string, shoes: readonly Shoe[], at: Moment | undefined): Job {
  const { [step]: before, ...others } = job.making.done ?? {};
  const marks: StepDone = Object.fromEntries([
    ...Object.entries(before ?? {}).filter(([shoe]) => !shoes.includes(shoe as Shoe)),
    ...(at === undefined ? [] : shoes.map((shoe) => [shoe, momentText(at)])),
  ]);
  const done = Object.keys(marks).length === 0 ? others : { ...others, [step]: marks };
  return setMaking(job, { done: Object.keys(done).length === 0 ? undefined : done });
}

/** Where no step is ticked. */
export const noTicks: Readonly<Record<string, StepDone>> = {};

/** Takes all ticks out, for the next pair of the same pattern. */
export const clearTicks = (job: Job): Job => setMaking(job, { done: undefined });

import type { Job } from "#job/job.ts";
import type { LastingChoices } from "#lasting/settings.ts";
import type { ToplineShift } from "#lasting/shift.ts";

export function setLasting(job: Job, lasting: Partial<LastingChoices>): Job {
  return { ...job, lasting: { ...job.lasting, ...lasting } };
}

/** As the rule says again. */
export function followLastingRule(job: Job, key: keyof LastingChoices): Job {
  const { [key]: _, ...rest } = job.lasting;
  return { ...job, lasting: rest };
}

/** Whether the pieces of the job are cut from the corrected pattern with these shifts, to a hundredth of a millimetre. */
export function isCutSo({ lasting }: Job, shift: ToplineShift): boolean {
  return lasting.correct === true && Object.entries(shift).every(([key, mm]) => Math.abs((lasting[key as keyof ToplineShift] ?? 0) - (mm as number)) < 0.01);
}

const corrects = ["correct", "throatShiftMm", "backShiftMm", "innerShiftMm", "outerShiftMm"] as const;
/** The job as it was before a pattern was corrected for it. */
export const uncorrected = (job: Job): Job => corrects.reduce<Job>(followLastingRule, job);

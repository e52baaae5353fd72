import type { Job } from "#job/job.ts";
import type { LastingChoices } from "#lasting/settings.ts";

export function setLasting(job: Job, lasting: Partial<LastingChoices>): Job {
  return { ...job, lasting: { ...job.lasting, ...lasting } };
}

/** As the rule says again. */
export function followLastingRule(job: Job, key: keyof LastingChoices): Job {
  const { [key]: _, ...rest } = job.lasting;
  return { ...job, lasting: rest };
}

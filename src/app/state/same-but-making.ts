import type { Job } from "#job/job.ts";

/** Whether two jobs are one but for what is said of making. */
export const sameButMaking = (a: Job, b: Job | undefined): boolean => b !== undefined && (Object.keys({ ...a, ...b }) as (keyof Job)[]).every((key) => key === "making" || a[key] === b[key] || JSON.stringify(a[key]) === JSON.stringify(b[key]));

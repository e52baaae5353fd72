/** A saved job as it was read, before it is known to be one. */
export type Saved = { readonly [field: string]: unknown };

/** The version this program writes. */
export const newest = 3;

/** Each step takes a job of the version it is named after to the next one. */
const steps: Readonly<Record<number, (job: Saved) => Saved>> = {
  // What the maker says about a scan came to lie together.
  1: (job) => {
    const last = job["last"] as Saved | undefined;
    if (last?.["from"] !== "scan" || last["side"] === undefined) return job;
    const { side, ...rest } = last;
    return { ...job, last: { ...rest, said: { side } } };
  },
  // The spring came to stand beside what else is decided about the shell. 0 was only what nobody had said.
  2: ({ springMm, ...job }) => ({ ...job, shell: springMm === undefined || springMm === 0 ? {} : { springMm } }),
};

/** A saved job in today's shape, step by step; what is not a job of an older version comes back as it is. */
export function renewed(job: Saved): Saved {
  let now = job;
  for (let version = Number(job["version"]); version < newest && steps[version]; version++) now = { ...steps[version]!(now), version: version + 1 };
  return now;
}

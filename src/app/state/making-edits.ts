import type { Job } from "#job/job.ts";
import type { MakingSaid } from "#making/said.ts";

/** Says something about making; what is undefined is no longer said. Each edit gives a new job and leaves the old one alone. */
export function setMaking(job: Job, part: { readonly [K in keyof MakingSaid]?: MakingSaid[K] | undefined }): Job {
  return { ...job, making: kept({ ...job.making, ...part }) };
}

/** What is written at one good or phase: nothing written is nothing said, and where nothing is left the whole is gone. */
export function setMakingAt(job: Job, of: "shelf" | "skins" | "minutes", key: string, text: string): Job {
  return setMaking(job, { [of]: filled({ ...job.making[of], [key]: text === "" ? undefined : text }) });
}

/** A price, or the amount that it is for. */
export function setPrice(job: Job, good: string, part: { readonly price?: string; readonly for?: string }): Job {
  const { price = "", for: amount } = { ...job.making.prices?.[good], ...part };
  const said = price === "" && (amount ?? "") === "" ? undefined : { price, ...(amount ? { for: amount } : {}) };
  return setMaking(job, { prices: filled({ ...job.making.prices, [good]: said }) });
}

/** Without what is undefined. */
function kept<T extends object>(of: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(of).filter(([, v]) => v !== undefined)) as { [K in keyof T]: Exclude<T[K], undefined> };
}

function filled<T>(of: Readonly<Record<string, T | undefined>>): Readonly<Record<string, T>> | undefined {
  const rest = kept(of) as Record<string, T>;
  return Object.keys(rest).length === 0 ? undefined : rest;
}

import { listed } from "#base/listed.ts";
import type { Job } from "#job/job.ts";
import type { MakingSaid } from "#making/said.ts";
import { alike, isTree, type Tree } from "./alike.ts";
import { setMaking } from "./making-edits.ts";

/** What the maker says of her workshop, whatever pair is on the bench. How many pairs and lasts, from when, what is asked and what is ticked off belong to a pair. */
const parts = ["currency", "prices", "shelf", "skins", "minutes", "rate", "overhead", "sessions", "cement"] as const;
type Part = (typeof parts)[number];
export type WorkshopSaid = Pick<MakingSaid, Part>;

export const workshopOf = ({ making }: Pick<Job, "making">): WorkshopSaid => Object.fromEntries(parts.flatMap((part) => (making[part] === undefined ? [] : [[part, making[part]]])));

/** The job with another workshop; what belongs to the pair stays. */
export const withWorkshop = (job: Job, own: WorkshopSaid | undefined): Job => (own ? setMaking(job, Object.fromEntries(parts.map((part) => [part, own[part]]))) : job);

const words: Readonly<Record<Part, (n: number) => string>> = {
  prices: (n) => (n === 1 ? "one price" : `${n} prices`),
  shelf: (n) => `what lies on the shelf of ${n === 1 ? "one thing" : `${n} things`}`,
  skins: (n) => `the size of ${n === 1 ? "one skin" : `${n} skins`}`,
  minutes: (n) => `your minutes for ${n === 1 ? "one stretch" : `${n} stretches`} of the work`,
  currency: () => "the currency",
  rate: () => "the hour’s pay",
  overhead: () => "the overhead",
  sessions: () => "when you work",
  cement: () => "the cement",
};

/** In what a pair departs from her own workshop, in words; nothing where it does not. */
export function departs(pair: WorkshopSaid, own: WorkshopSaid): string | undefined {
  const told = parts.filter((part) => !alike(pair[part] ?? {}, own[part] ?? {})).map((part) => {
    const [a, b] = [pair[part], own[part]];
    const keys = isTree(a) || isTree(b) ? new Set([...Object.keys(a ?? {}), ...Object.keys(b ?? {})]) : new Set<string>();
    return words[part]([...keys].filter((key) => !alike((a as Tree | undefined)?.[key], (b as Tree | undefined)?.[key])).length);
  });
  return told.length === 0 ? undefined : listed(told);
}

/** Words for the step in which a pair takes the maker's own workshop. */
export const takingOwn = "taking your own prices and shelf";

import { checkedJob } from "#job/job-file.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import type { MakingSaid } from "#making/said.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { History } from "./history.ts";
import { listed } from "#base/listed.ts";
import { setMaking } from "./making-edits.ts";

/** What the maker says of her workshop, whatever pair is on the bench. How many pairs and lasts, from when, what is asked and what is ticked off belong to a pair. */
const parts = ["currency", "prices", "shelf", "skins", "minutes", "rate", "overhead", "sessions", "cement"] as const;
type Part = (typeof parts)[number];
export type WorkshopSaid = Pick<MakingSaid, Part>;

export const workshopOf = ({ making }: Pick<Job, "making">): WorkshopSaid => Object.fromEntries(parts.flatMap((part) => (making[part] === undefined ? [] : [[part, making[part]]])));

/** The job with another workshop; what belongs to the pair stays. */
export const withWorkshop = (job: Job, own: WorkshopSaid | undefined): Job => (own ? setMaking(job, Object.fromEntries(parts.map((part) => [part, own[part]]))) : job);

type Tree = Readonly<Record<string, unknown>>;
const isTree = (v: unknown): v is Tree => typeof v === "object" && v !== null;
const alike = (a: unknown, b: unknown): boolean => {
  if (!isTree(a) || !isTree(b)) return a === b;
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) => alike(a[key], b[key]));
};

/** Her own workshop after one change of a pair: only what was changed there changes here, for the pair may hold prices from elsewhere. */
export function followed(own: WorkshopSaid | undefined, before: WorkshopSaid, after: WorkshopSaid): WorkshopSaid {
  return own === undefined ? after : (carried(own, before, after) as WorkshopSaid);
}

function carried(own: Tree, before: Tree, after: Tree): Tree {
  const keys = new Set([...Object.keys(own), ...Object.keys(after)]);
  const entries = [...keys].flatMap((key): readonly [string, unknown][] => {
    const [was, is, mine] = [before[key], after[key], own[key]];
    if (alike(was, is)) return mine === undefined ? [] : [[key, mine]];
    // A price goes as a whole, with the amount it is for.
    const whole = !isTree(is) || "price" in is;
    const next = whole ? is : carried(isTree(mine) ? mine : {}, isTree(was) ? was : {}, is);
    return next === undefined ? [] : [[key, next]];
  });
  return Object.fromEntries(entries);
}

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

/** Whether two jobs are one but for what is said of making. */
export const sameButMaking = (a: Job, b: Job | undefined): boolean => b !== undefined && (Object.keys({ ...a, ...b }) as (keyof Job)[]).every((key) => key === "making" || a[key] === b[key] || JSON.stringify(a[key]) === JSON.stringify(b[key]));

/** Words for the step in which a pair takes the maker's own workshop. */
export const takingOwn = "taking your own prices and shelf";

/**
 * The workshop before and after, where a step of the work (made, taken back or done again) was a word about the workshop. An opened file
 * brings its own and changes nothing of hers; nor does it when a pair takes hers, or gives them back.
 */
export function workshopStep(before: History, after: History): { readonly before: WorkshopSaid; readonly after: WorkshopSaid } | undefined {
  const [from, to] = [before.now.job, after.now.job];
  if (from.making === to.making || !sameButMaking(from, to)) return undefined;
  const takenBack = after.future[0] === before.now;
  if ((takenBack ? before.now : after.now).brought) return undefined;
  const [was, is] = [workshopOf(from), workshopOf(to)];
  return alike(was, is) ? undefined : { before: was, after: is };
}

const format = "lastwise workshop";
const version = 1;

export const writeWorkshop = (own: WorkshopSaid): string => `${JSON.stringify({ format, version, making: own })}\n`;

/**
 * Reads what the browser keeps of the workshop, checked as a job is.
 * @throws Refusal that names what is wrong
 */
export function readWorkshop(file: string, text: string): WorkshopSaid {
  const none = new Refusal(finding("job-unreadable", { file, why: "it holds no prices saved by Lastwise" }));
  let raw: { readonly format?: unknown; readonly version?: unknown; readonly making?: unknown };
  try {
    raw = JSON.parse(text) as typeof raw;
  } catch {
    throw none;
  }
  if (raw?.format !== format) throw none;
  if (typeof raw.version === "number" && raw.version > version) throw new Refusal(finding("job-newer", { file, version: raw.version }));
  return workshopOf(checkedJob(file, { ...defaultJob(), making: raw.making ?? {} }));
}

import type { Job } from "#job/job.ts";
import { measureKeys } from "#last/measures-by-size.ts";
import { setMeasure } from "./edits.ts";
import { measureFields } from "./measure-words.ts";
import type { MeasureKey, Spot } from "./spot.ts";

/** Measures that were typed and make no last together with the others yet. They wait in their fields and are tried again with each further number. */
export interface Unused {
  readonly numbers: Readonly<Partial<Record<MeasureKey, number>>>;
  /** The number beside which the reason stands, and the reason as it was told. */
  readonly at: MeasureKey;
  readonly why: string;
  /** The last itself can be made; it is its lines or pieces that do not go with it. */
  readonly lastFits?: boolean;
}

/** The job of a step, and what stands beside it. */
interface WithUnused {
  readonly job: Job;
  readonly unused?: Unused;
}

/** Which measure a spot is, if it is one of a last made from measures. */
export function measureAt(spot: Spot | undefined): MeasureKey | undefined {
  return spot?.startsWith("last ") ? (spot.slice(5) as MeasureKey) : undefined;
}

export const unusedKeys = (unused: Unused | undefined): readonly MeasureKey[] => (unused ? measureKeys.filter((key) => unused.numbers[key] !== undefined) : []);

/** The job with other numbers for some of its measures. */
export function withNumbers(job: Job, numbers: Unused["numbers"]): Job {
  return measureKeys.reduce((now, key) => (numbers[key] === undefined ? now : setMeasure(now, key, numbers[key])), job);
}

/** `job`, in which the maker changed something of the last, with those numbers tried again that she did not replace by it. `typed` is the measure that she typed. */
export function triedAgain(job: Job, before: WithUnused, typed: MeasureKey | undefined): Job {
  const { unused } = before;
  const was = before.job.last;
  if (!unused || job.last.from !== "measures" || was.from !== "measures") return job;
  const { measures } = job.last;
  const left = unusedKeys(unused).filter((key) => key !== typed && measures[key] === was.measures[key]);
  return withNumbers(job, Object.fromEntries(left.map((key) => [key, unused.numbers[key]])));
}

/** The measures in which the refused `job` departs from the good one; nothing where there are none, or it is another last. */
function departing(job: Job, good: Job): Unused["numbers"] | undefined {
  if (job.last.from !== "measures" || good.last.from !== "measures") return undefined;
  const [now, was] = [job.last.measures, good.last.measures];
  const keys = measureKeys.filter((key) => now[key] !== was[key]);
  return keys.length === 0 ? undefined : Object.fromEntries(keys.map((key) => [key, now[key]]));
}

/**
 * The refused job with its measures beside it, in place of which it has those of the good one; undefined where it is no
 * measure that was refused. `named` is the measure that the refusal names, `typed` the one that was typed last.
 */
export function putBeside(refused: Job, good: Job, why: string, named: MeasureKey | undefined, typed: MeasureKey | undefined, lastFits: boolean): Required<WithUnused> | undefined {
  const numbers = departing(refused, good);
  if (!numbers || good.last.from !== "measures") return undefined;
  const { measures } = good.last;
  const back = withNumbers(refused, Object.fromEntries(unusedKeys({ numbers, at: "stickLengthMm", why }).map((key) => [key, measures[key]])));
  const job = JSON.stringify(back) === JSON.stringify(good) ? good : back;
  const of = (key: MeasureKey | undefined): MeasureKey | undefined => (key !== undefined && numbers[key] !== undefined ? key : undefined);
  const at = of(named) ?? of(typed) ?? measureKeys.find((key) => numbers[key] !== undefined)!;
  const told = at === named ? why : `With a ${measureFields[at].name} of ${numbers[at]}\u00a0mm your numbers do not go together yet. ${why}`;
  return { job, unused: { numbers, at, why: told, ...(lastFits ? { lastFits } : {}) } };
}

/** What stands beside a number that is not used, in its field. */
export function unusedWords(unused: Unused, key: MeasureKey): string {
  const more = "It is kept, and tried again with each further number.";
  return key === unused.at ? `${unused.why} ${more}` : `Not used yet: it does not go with the other numbers. ${more}`;
}

/** Unused numbers as another version may have kept them; nothing where they are none. */
export function readUnused(kept: unknown): Unused | undefined {
  const { numbers, at, why, lastFits } = (kept ?? {}) as { readonly [key: string]: unknown };
  if (typeof numbers !== "object" || numbers === null || typeof why !== "string") return undefined;
  const read = Object.fromEntries(measureKeys.flatMap((key) => {
    const n = (numbers as { readonly [key: string]: unknown })[key];
    return typeof n === "number" && Number.isFinite(n) ? [[key, n]] : [];
  })) as Unused["numbers"];
  const first = measureKeys.find((key) => key === at && read[key] !== undefined) ?? measureKeys.find((key) => read[key] !== undefined);
  return first && { numbers: read, at: first, why, ...(lastFits === true ? { lastFits } : {}) };
}

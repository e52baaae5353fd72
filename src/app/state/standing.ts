import type { Job } from "#job/job.ts";
import { leatherNumberAt } from "./leather-edits.ts";
import { shoeNumberAt } from "./log-edits.ts";
import type { Spot } from "./spot.ts";

/** A number that could not be used and still stands in its field. */
export interface Standing {
  readonly spot: Spot;
  readonly sentence: string;
  readonly text: string;
  /** What the work holds in its place; once that is another, what was typed is done with. */
  readonly over: number | undefined;
}

/** A number of the work itself, that is held whatever is brought in beside it. */
export const isOwnNumber = (spot: Spot): boolean => /^(last|lines|shell|leather|strip|lasting|shoe|pieces|sheets) /.test(spot);

/** What the work holds at a spot, where it is one of its own numbers. */
export function numberAt(job: Job, spot: Spot): number | undefined {
  const [part, key] = spot.split(" ") as [string, string];
  if (part === "leather" || part === "strip") return leatherNumberAt(job, spot);
  if (part === "shoe") return shoeNumberAt(job, spot);
  const held = part === "last" ? (job.last.from === "measures" ? job.last.measures : undefined) : job[part as keyof Job];
  const value = typeof held === "object" && held !== null ? (held as unknown as Readonly<Record<string, unknown>>)[key] : undefined;
  return typeof value === "number" ? value : undefined;
}

/** Those that still stand beside this work, one a spot: the newest. */
export function stillStanding(standing: readonly Standing[], job: Job): readonly Standing[] {
  return standing.filter((s, i) => numberAt(job, s.spot) === s.over && standing.findLastIndex((t) => t.spot === s.spot) === i);
}

const key = "lastwise numbers not used";

/** Keeps them in this tab, for when the page is loaded again. */
export function keepStanding(standing: readonly Standing[]): void {
  try {
    if (standing.length === 0) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, JSON.stringify(standing));
  } catch {
    // Where the browser keeps nothing, they stand until then.
  }
}

export function keptStanding(): readonly Standing[] {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? "[]");
    return Array.isArray(kept) ? kept.filter(isStanding) : [];
  } catch {
    return [];
  }
}

function isStanding(v: unknown): v is Standing {
  const { spot, sentence, text, over } = (v ?? {}) as { readonly [key: string]: unknown };
  return typeof spot === "string" && typeof sentence === "string" && typeof text === "string" && (over === undefined || typeof over === "number");
}

import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import { workshopOf, type WorkshopSaid } from "./workshop.ts";

/** What is kept of the maker's workshop beside the work. */
export interface WorkshopKept {
  /** Nothing where she has said nothing yet. */
  readonly own: WorkshopSaid | undefined;
  /** What was hers before she kept those of a pair, the newest first, until she lets it go. */
  readonly former: readonly WorkshopSaid[];
}

export const nothingKept: WorkshopKept = { own: undefined, former: [] };

const format = "lastwise workshop";
const version = 1;

export const writeWorkshop = ({ own = {}, former }: WorkshopKept): string => `${JSON.stringify({ format, version, making: own, ...(former.length > 0 && { former }) })}\n`;

/**
 * Reads what the browser keeps of the workshop, checked as a job is.
 * @throws Refusal that names what is wrong
 */
export function readWorkshop(file: string, text: string): WorkshopKept {
  const none = new Refusal(finding("job-unreadable", { file, why: "it holds no prices saved by Lastwise" }));
  let raw: { readonly format?: unknown; readonly version?: unknown; readonly making?: unknown; readonly former?: unknown };
  try {
    raw = JSON.parse(text) as typeof raw;
  } catch {
    throw none;
  }
  if (raw?.format !== format) throw none;
  if (typeof raw.version === "number" && raw.version > version) throw new Refusal(finding("job-newer", { file, version: raw.version }));
  const said = (making: unknown): WorkshopSaid => workshopOf(checkedJob(file, { ...defaultJob(), making }));
  const { making = {}, former = [] } = raw;
  if (!Array.isArray(former)) throw none;
  return { own: said(making), former: former.map(said) };
}

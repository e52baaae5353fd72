import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import { workshopOf, type WorkshopSaid } from "./workshop.ts";

/** What is kept of the maker's workshop beside the work. */
export interface WorkshopKept {
  /** Nothing where she has said nothing yet. */
  readonly own: WorkshopSaid | undefined;
  /** What was hers before she kept those of a pair, until she lets it go. */
  readonly former?: WorkshopSaid;
}

const format = "lastwise workshop";
const version = 1;

export const writeWorkshop = ({ own = {}, former }: WorkshopKept): string => `${JSON.stringify({ format, version, making: own, ...(former && { former }) })}\n`;

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
  return { own: said(raw.making ?? {}), ...(raw.former !== undefined && { former: said(raw.former) }) };
}

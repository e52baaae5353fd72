import { z } from "zod";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { checkedJob } from "#job/job-file.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { shellForNext } from "./edits.ts";

/** The maker's own numbers and words, with which her next pair begins; nothing of a last or of its lines. */
export type Usual = Pick<Job, "shell" | "pieces" | "parts" | "sheets">;

/** Where the maker's usual numbers are kept. */
export interface OwnNumbers {
  /** Nothing where she keeps none. */
  readonly usual: Usual | undefined;
  /** Takes them out of a file of theirs; throws a Refusal. */
  take(name: string, bytes: Uint8Array): Promise<void>;
}

const format = "lastwise usual numbers";
const parts = ["shell", "pieces", "parts", "sheets"] as const;

/** What of a job is the maker's habit. */
export function usualOf(job: Job): Usual {
  return { shell: shellForNext(job), pieces: job.pieces, parts: job.parts, sheets: job.sheets };
}

/** The job as it begins with her usual numbers. */
export const withUsual = (job: Job, usual: Usual | undefined): Job => (usual ? { ...job, ...usual } : job);

/** Whether a job holds just these already. */
export const holdsUsual = (job: Job, usual: Usual): boolean => JSON.stringify(inOrder(usualOf(job))) === JSON.stringify(inOrder(usual));

const inOrder = (usual: Usual): unknown => parts.map((part) => Object.entries(usual[part]).sort(([a], [b]) => (a < b ? -1 : 1)));

/** As a file of our own, to be read again here or by hand. */
export function writeUsual(usual: Usual): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify({ format, version: 1, ...Object.fromEntries(parts.map((part) => [part, usual[part]])) }, null, 2)}\n`);
}

const outside = z.strictObject({ format: z.literal(format), version: z.literal(1), ...Object.fromEntries(parts.map((part) => [part, z.unknown().optional()])) });

/** Whether a text is such a file, whatever else is wrong with it. */
export const isUsualFile = (bytes: Uint8Array): boolean => bytes[0] === 0x7b && new TextDecoder().decode(bytes.subarray(0, 200)).includes(`"${format}"`);

/**
 * Reads usual numbers out of a file or the browser's database, checked field by field as a job is.
 * @throws Refusal that names what is wrong
 */
export function readUsual(name: string, raw: unknown): Usual {
  const saved = typeof raw === "object" && raw !== null ? (raw as { readonly format?: unknown; readonly version?: unknown }) : {};
  if (saved.format !== format) throw new Refusal(finding("job-unreadable", { file: name, why: "it holds no usual numbers saved by Lastwise" }));
  if (typeof saved.version === "number" && saved.version > 1) throw new Refusal(finding("job-newer", { file: name, version: saved.version }));
  const read = outside.safeParse(raw);
  if (!read.success) {
    const issue = read.error.issues[0]!;
    throw new Refusal(finding("job-field-wrong", { file: name, field: issue.path.join(" → ") || ("keys" in issue ? issue.keys.join(", ") : "as a whole"), why: "is not what belongs there" }));
  }
  const held = raw as Record<string, unknown>;
  const filled = Object.fromEntries(parts.map((part) => [part, held[part] ?? {}]));
  return usualOf(checkedJob(name, { ...defaultJob(), ...filled }));
}

/** The same from a file's bytes. */
export function usualFromFile(name: string, bytes: Uint8Array): Usual {
  let raw: unknown;
  try {
    raw = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw new Refusal(finding("job-unreadable", { file: name, why: "it holds no usual numbers saved by Lastwise" }));
  }
  return readUsual(name, raw);
}

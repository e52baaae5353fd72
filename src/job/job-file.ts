import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { filesOf, mostBytes, type Files } from "./files.ts";
import type { Job } from "./job.ts";
import { changedSince, newest, renewed, type Saved } from "./migrate.ts";
import { jobSchema } from "./schema.ts";

/** A saved job (`*.lastwise`) is a zip that holds this and the scans and pictures it speaks of. */
const inside = "job.json";

export interface OpenedJob {
  readonly job: Job;
  readonly files: Files;
  /** What comes out otherwise than when the job was saved; to be told once. */
  readonly findings?: readonly Finding[];
}

/** True when the bytes or the name look like a saved job rather than a scan. */
export function isJobFile(name: string, bytes: Uint8Array): boolean {
  return (bytes[0] === 0x50 && bytes[1] === 0x4b && !/\.3mf$/i.test(name)) || /\.(lastwise|json)$/i.test(name);
}

/**
 * Opens a saved job: recognise, refuse the newer, validate. A plain `.json` holds the job alone; its scan lies beside it and is to
 * be added by the caller. Throws Refusal that names the field which is wrong.
 */
export function readJobFile(name: string, bytes: Uint8Array): OpenedJob {
  if (bytes.length === 0) throw new Refusal(finding("job-unreadable", { file: name, why: "it is empty" }));
  const files = new Map<string, Uint8Array>();
  let text: string;
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    for (const [entry, content] of Object.entries(unpack(name, bytes))) files.set(entry, content);
    const job = files.get(inside);
    if (!job) throw new Refusal(finding("job-unreadable", { file: name, why: `it holds no ${inside}` }));
    files.delete(inside);
    text = strFromU8(job);
  } else text = strFromU8(bytes);
  const saved = parse(name, text);
  return { job: checkedJob(name, saved), files, findings: changedSince(saved as Saved) };
}

function unpack(name: string, bytes: Uint8Array): Record<string, Uint8Array> {
  let total = 0;
  try {
    return unzipSync(bytes, {
      filter: (entry) => {
        total += entry.originalSize;
        // Refused before it is unpacked.
        if (total > mostBytes) throw new Refusal(finding("job-unreadable", { file: name, why: "what it holds is larger than 1 GB" }));
        return !entry.name.endsWith("/");
      },
    });
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(finding("job-unreadable", { file: name, why: "the file is damaged or was not saved whole" }));
  }
}

function parse(name: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal(finding("job-unreadable", { file: name, why: "it is not a job saved by Lastwise" }));
  }
}

/** A job out of what was kept, of this version or an older one. Throws Refusal that names the field which is wrong; `name` says whose it is. */
export function checkedJob(name: string, raw: unknown): Job {
  const head = raw as { format?: unknown; version?: unknown };
  if (typeof raw !== "object" || raw === null || head.format !== "lastwise job") throw new Refusal(finding("job-unreadable", { file: name, why: "it is not a job saved by Lastwise" }));
  if (typeof head.version === "number" && head.version > newest) throw new Refusal(finding("job-newer", { file: name, version: head.version }));
  const saved = renewed(raw as Saved);
  const checked = jobSchema.safeParse(saved, { error: plainly });
  if (!checked.success) {
    const issue = checked.error.issues[0]!;
    throw new Refusal(finding("job-field-wrong", { file: name, field: placeOf(issue.path), why: issue.message }));
  }
  const passedOver = holderOf(saved);
  if (passedOver) throw new Refusal(finding("job-field-wrong", { file: name, field: placeOf(passedOver), why: plainly({ code: "unrecognized_keys", keys: [protoKey] }) }));
  return checked.data as Job;
}

const placeOf = (path: readonly PropertyKey[]): string => path.map(String).join(" → ") || "job";

/** A name like any other in a file, but the one that validation leaves out without a word: what stood under it would be lost. */
const protoKey = "__proto__";

/** The way to the first field that holds something of that name. Only for what was found valid: that is nowhere deep. */
function holderOf(value: unknown): readonly string[] | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  if (Object.hasOwn(value, protoKey)) return [];
  for (const [key, inner] of Object.entries(value)) {
    const way = holderOf(inner);
    if (way) return [key, ...way];
  }
  return undefined;
}

/** What is wrong with a field, where the schema says nothing of its own. */
function plainly({ code, input, keys }: { readonly code?: string | undefined; readonly input?: unknown; readonly keys?: readonly string[] }): string {
  if (code === "unrecognized_keys" && keys) return `holds ${keys.join(", ")}, which is not known here`;
  return input === undefined ? "is missing" : "is not what belongs there";
}

/** The job as one file; the same job gives the same bytes. */
export function writeJobFile(job: Job, files: Files): Uint8Array {
  const entries: Record<string, Uint8Array> = { [inside]: strToU8(`${JSON.stringify(job, null, 2)}\n`) };
  for (const file of filesOf(job)) {
    const content = files.get(file);
    if (!content) throw new Refusal(finding("job-file-missing", { file }));
    entries[file] = content;
  }
  // A fixed date keeps the bytes the same from one saving to the next.
  return zipSync(entries, { mtime: "1980-01-02T12:00:00" });
}

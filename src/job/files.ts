import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";

/** Beyond this no scan of a last goes, and no saved job with its scan; it would only fill the memory. */
export const mostBytes = 1e9;

/** The files that lie beside a job, by the name under which the job speaks of them. */
export type Files = ReadonlyMap<string, Uint8Array>;

/** The bytes of a named file; refuses when it is missing. */
export function fileOf(name: string, files: Files): Uint8Array {
  const bytes = files.get(name);
  if (!bytes) throw new Refusal(finding("job-file-missing", { file: name }));
  return bytes;
}

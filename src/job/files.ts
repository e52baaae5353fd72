import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";

/** The files that lie beside a job, by the name under which the job speaks of them. */
export type Files = ReadonlyMap<string, Uint8Array>;

/** The bytes of a named file; refuses when it is missing. */
export function fileOf(name: string, files: Files): Uint8Array {
  const bytes = files.get(name);
  if (!bytes) throw new Refusal(finding("job-file-missing", { file: name }));
  return bytes;
}

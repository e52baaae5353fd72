import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { mostBytes } from "#job/files.ts";

/** The bytes of a file that the maker handed over. Throws a Refusal when it is too large or the browser is not let at it. */
export async function bytesOf(file: File): Promise<Uint8Array> {
  if (file.size > mostBytes) throw new Refusal(finding("file-too-large", { file: file.name, megabytes: Math.round(file.size / 1e6), mostMegabytes: mostBytes / 1e6 }));
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    throw new Refusal(finding("file-unreadable", { file: file.name, why: "it was moved, changed or locked" }));
  }
}

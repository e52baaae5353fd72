// Reading what the maker names, with a sentence for everything that can be wrong with it.
import { readFileSync, statSync } from "node:fs";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { mostBytes } from "#job/files.ts";

/** The bytes of a file. Throws a Refusal for anything that is not a readable, ordinary, non-empty file of bearable size; a table may be empty. */
export function readInput(path: string, { mayBeEmpty = false } = {}): Uint8Array {
  const state = asking(path, () => statSync(path));
  if (state.isDirectory()) throw new Refusal(finding("file-is-folder", { file: path }));
  // A pipe or a device could keep us waiting for ever.
  if (!state.isFile()) throw new Refusal(finding("file-not-plain", { file: path }));
  if (state.size === 0 && !mayBeEmpty) throw new Refusal(finding("file-empty", { file: path }));
  if (state.size > mostBytes) {
    throw new Refusal(finding("file-too-large", { file: path, megabytes: Math.round(state.size / 1e6), mostMegabytes: mostBytes / 1e6 }));
  }
  return asking(path, () => readFileSync(path));
}

function asking<T>(path: string, ask: () => T): T {
  try {
    return ask();
  } catch (error) {
    const code = codeOf(error);
    if (code === "ENOENT" || code === "ENOTDIR") throw new Refusal(finding("file-missing", { file: path }));
    if (code === "EACCES" || code === "EPERM") throw new Refusal(finding("file-no-permission", { file: path }));
    if (code) throw new Refusal(finding("file-unreadable", { file: path, why: code }));
    throw error;
  }
}

/** The system's short code of an error (`ENOENT`), where it has one. */
export function codeOf(error: unknown): string | undefined {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  return typeof code === "string" && /^E[A-Z0-9]+$/.test(code) ? code : undefined;
}

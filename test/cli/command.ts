// Runs the built command as a maker would, as a process of its own.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  /** Standard error without the lines that tell how far the work is. */
  readonly err: string;
}

/** Only a guard against hanging for ever; speed is measured in bench/. A pull-over with its band is work for tens of seconds, longer beside other tests. */
const hangMs = 60_000, longMs = 280_000;

/** The command with work that takes long. */
export const longWork = (...args: readonly string[]): Ended => run(args, longMs);

export const lastwise = (...args: readonly string[]): Ended => run(args, hangMs);

function run(args: readonly string[], timeout: number): Ended {
  const done = spawnSync(process.execPath, ["bin/lastwise.mjs", ...args], { encoding: "utf8", timeout, maxBuffer: 64e6 });
  const err = done.stderr.split("\n").filter((line) => !line.endsWith(" …")).join("\n");
  return { code: done.status, out: done.stdout, err };
}

/** A folder that is removed after the tests of the file. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "lastwise-test-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Everything in a folder, hidden or not. */
export const contents = (folder: string): readonly string[] => readdirSync(folder).sort();

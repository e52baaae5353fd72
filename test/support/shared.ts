import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { join } from "node:path";

const root = fileURLToPath(new URL("../../../shared/data/", import.meta.url));

/** Whether the folder of outside data lies beside the project. */
export const hasShared = existsSync(root);
if (!hasShared) console.warn("skipped: tests on outside data, because ../shared/data is absent");

/** Path of a file of the outside data, or undefined where it is absent. */
export function sharedData(...path: string[]): string | undefined {
  const file = join(root, ...path);
  return existsSync(file) ? file : undefined;
}

/** Bytes of a file of the outside data; for tests that are skipped where it is absent. */
export function sharedBytes(...path: string[]): Uint8Array {
  return new Uint8Array(readFileSync(join(root, ...path)));
}

/** The truth beside a synthetic last, as it lies in the file. */
export function sharedJson(...path: string[]): unknown {
  return JSON.parse(readFileSync(join(root, ...path), "utf8"));
}

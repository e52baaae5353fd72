import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Mesh } from "#mesh/mesh.ts";

/** More triangles than any scan of a last needs, and as many as fit into a browser's memory with the work to come. */
export const MOST_TRIANGLES = 5_000_000;

/** What one reader hands to the dispatcher: a mesh in file units, corners in range, nothing else promised. */
export interface RawScan {
  readonly mesh: Mesh;
  readonly format: string;
}

/** Refuses a file that would fill the memory; called before anything of that size is made. */
export function refuseTooMany(file: string, triangles: number): void {
  if (triangles > MOST_TRIANGLES) throw new Refusal(finding("mesh-too-large", { file, triangles, most: MOST_TRIANGLES }));
}

export function damaged(file: string, where: string, why: string): Refusal {
  return new Refusal(finding("file-damaged", { file, where, why }));
}

export function truncated(file: string, promised: number, held: number, what: string): Refusal {
  return new Refusal(finding("file-truncated", { file, promised, held, what }));
}

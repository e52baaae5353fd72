import { finding, type Finding } from "#base/findings.ts";
import { readFigure } from "../amounts/read-figure.ts";
import type { MakingSaid } from "../said.ts";

/** How many pairs of lasts of this size there are, no more than there are pairs to make; one where nothing is said, or nothing that can be read. */
export function readLasts({ lasts }: Pick<MakingSaid, "lasts">, pairs: number): { readonly lasts: number; readonly findings: readonly Finding[] } {
  const text = String(lasts ?? "").trim();
  if (text === "") return { lasts: 1, findings: [] };
  const read = readFigure(text.replace(/\s*pairs?(\s+of\s+lasts?)?$/i, ""), "whole");
  // More lasts than anybody owns are still enough for every pair.
  if (read.wrong === "huge") return { lasts: pairs, findings: [] };
  if (read.wrong !== undefined || read.value < 1 || !Number.isInteger(read.value)) return { lasts: 1, findings: [finding("lasts-unread", { text })] };
  return { lasts: Math.min(read.value, pairs), findings: [] };
}

/** {@link readLasts} where what cannot be read is told elsewhere. */
export const lastsOf = (said: Pick<MakingSaid, "lasts">, pairs: number): number => readLasts(said, pairs).lasts;

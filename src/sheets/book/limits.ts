import type { Limit } from "#making/care/caution.ts";
import type { Block } from "./block.ts";
import { capital, listed } from "#base/listed.ts";
import { columnsFor, tableBlocks } from "./table.ts";
import { fine, heading, lines, small, smallStrong } from "./words.ts";

const told = "Mean over eight hours, of NIOSH over a shift of up to ten; ppm and mg/m³ are two ways to say the same. Limits are made for workshops that measure their air. They are no promise that less does not harm.";

/** Limits for the air at work, a block a substance: who set each, when, and how much. */
export function limitBlocks(limits: readonly Limit[], width: number): readonly Block[] {
  const substances = [...new Set(limits.map((l) => l.substance))];
  return [
    { cells: [{ x: 0, lines: [...lines("Limits for the air at work", width, heading), ...lines(`${told} ${kindWords(limits)}`, width, small)] }], keep: true, gapMm: 3 },
    ...substances.flatMap((substance) => substanceBlocks(substance, limits.filter((l) => l.substance === substance), width)),
  ];
}

/** How far each binds: "Law: USA, OSHA and France. Recommendation: …". */
function kindWords(limits: readonly Limit[]): string {
  const kinds = [...new Set(limits.map((l) => l.kind))];
  return kinds.map((kind) => `${capital(kind)}: ${[...new Set(limits.filter((l) => l.kind === kind).map((l) => l.jurisdiction))].join("; ")}.`).join(" ");
}

function substanceBlocks(substance: string, limits: readonly Limit[], width: number): readonly Block[] {
  const columns = columnsFor(width, [
    { head: capital(substance), mm: 27, letters: small },
    { head: limits.some((l) => l.skin) ? "Set when (it goes through the skin too)" : "Set when", letters: fine },
    { head: "ppm", mm: 12, letters: smallStrong },
    { head: "mg/m³", mm: 14, letters: smallStrong },
    { head: "15 minutes; never over", mm: 40, letters: small },
  ]);
  const rows = limits.map((l) => [l.jurisdiction, l.date, String(l.ppm), String(l.mgPerM3), shortWords(l)]);
  const read: Block = { cells: [{ x: 0, lines: lines(`Read in: ${sourcesOf(limits)}.`, width, fine) }] };
  return [...tableBlocks(columns, rows, { gapMm: 1.5, whole: true, close: true }).map((b) => ({ ...b, keep: true })), read];
}

const shortWords = ({ short, ceilingPpm }: Limit): string =>
  [...(short ? [`${short.ppm} ppm${short.mgPerM3 === undefined ? "" : ` (${short.mgPerM3} mg/m³)`}`] : []), ...(ceilingPpm === undefined ? [] : [`never over ${ceilingPpm} ppm`])].join("; ");

/** Each source once, with whose limits were read there. */
function sourcesOf(limits: readonly Limit[]): string {
  const read = new Map<string, string[]>();
  for (const l of limits) {
    const source = `${l.source}${l.fromMemory && !l.source.includes("memory") ? "; from memory" : ""}`;
    read.set(source, [...(read.get(source) ?? []), l.jurisdiction]);
  }
  return [...read].map(([source, whose]) => `${listed(whose)}: ${source}`).join("; ");
}

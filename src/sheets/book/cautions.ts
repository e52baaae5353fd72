import type { Caution } from "#making/care/caution.ts";
import { limitFigures, limitOrigin } from "#making/care/limits.ts";
import type { Block } from "./block.ts";
import { cautionAnchor, type Book } from "./book.ts";
import { listed } from "./choice-words.ts";
import type { Chapter } from "./flow.ts";
import { upperFirst } from "./numbers.ts";
import { columnsFor, tableBlocks } from "./table.ts";
import { blank, body, hanging, heading, labelled, lines, small, smallStrong, strong } from "./words.ts";

/** What can hurt and the usual care, in full, in the order in which the steps meet it. */
export function cautionsChapter(book: Book): Chapter | undefined {
  const { cautions } = book.input.making;
  if (cautions.length === 0) return undefined;
  return { title: "Take care", blocks: cautions.flatMap((c, i) => cautionBlocks(book, c, i > 0)) };
}

function cautionBlocks({ input: { making: { steps } }, room: { width } }: Book, caution: Caution, gap: boolean): readonly Block[] {
  const { hazard, title, what, care, law = [], limits = [], room = [], first, source, steps: ids } = caution;
  const numbers = ids.map((id) => steps.findIndex((s) => s.id === id) + 1).filter((n) => n > 0);
  const block = (told: Block["cells"][number]["lines"], more: Partial<Block> = {}): Block => ({ cells: [{ x: 0, lines: told }], parts: true, ...more });
  const inSmall = (told: readonly string[]): readonly Block[] => (told.length === 0 ? [] : [block([blank(1), ...told.flatMap((t) => hanging("–", t, width, small))])]);
  return [
    block([...lines(upperFirst(title), width, heading), ...lines(`${numbers.length === 1 ? "Step" : "Steps"} ${listed(numbers.map(String))}`, width, small)], { ruleMm: 0.35, gapMm: gap ? 5 : 0, keep: true, anchor: cautionAnchor(hazard) }),
    block([...lines(what, width, body), blank(1)]),
    block(care.flatMap((told, i) => hanging(String(i + 1), told, width, body, 5))),
    ...inSmall(room),
    ...inSmall(law),
    ...(limits.length > 0 ? limitBlocks(caution, width) : []),
    block([blank(1), ...lines(first, width, strong), ...labelled("Source:", source, width, small)]),
  ];
}

/** Limits of the air at work, each with who set it and when; below the head that none is a promise. */
function limitBlocks({ limits = [] }: Caution, width: number): readonly Block[] {
  const columns = columnsFor(width, [{ head: "In the air at work", mm: 24, letters: smallStrong }, { head: "Who set it, and when", letters: small }, { head: "Limit", mm: 50, letters: small }, { head: "Where it was read", mm: 44, letters: small }]);
  const rows = limits.map((l) => [l.substance, `${limitOrigin(l)} (${l.kind})`, `${limitFigures(l)}${l.skin ? "; goes through the skin too" : ""}`, `${l.source}${l.fromMemory && !l.source.includes("memory") ? "; from memory" : ""}`]);
  const told = "Limits are made for workshops that measure their air. They are no promise that less does not harm.";
  return [{ cells: [{ x: 0, lines: lines(told, width, small) }], keep: true, gapMm: 3 }, ...tableBlocks(columns, rows)];
}

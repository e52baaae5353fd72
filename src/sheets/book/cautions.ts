import type { Caution } from "#making/care/caution.ts";
import type { Block, Line } from "./block.ts";
import { cautionAnchor, type Book } from "./book.ts";
import { capital, listed } from "#base/listed.ts";
import type { Chapter } from "./flow.ts";
import { limitBlocks } from "./limits.ts";
import { blank, fine, hanging, heading, labelled, lines, reading, small, smallStrong, together } from "./words.ts";

/** What can hurt and the usual care, in full, in the order in which the steps meet it; first of all whose word comes before ours. */
export function cautionsChapter(book: Book): Chapter | undefined {
  const { cautions } = book.input.making, { width } = book.room;
  if (cautions.length === 0) return undefined;
  const first = [...new Set(cautions.map((c) => c.first))];
  return { title: "Take care", blocks: [{ cells: [{ x: 0, lines: first.flatMap((told) => hanging("–", told, width, smallStrong)) }] }, ...cautions.flatMap((c) => cautionBlocks(book, c))] };
}

function cautionBlocks({ input: { making: { steps } }, room: { width } }: Book, caution: Caution): readonly Block[] {
  const { hazard, title, what, care, law = [], limits = [], room = [], source, steps: ids } = caution;
  const numbers = ids.map((id) => steps.findIndex((s) => s.id === id) + 1).filter((n) => n > 0);
  const block = (told: readonly Line[], more: Partial<Block> = {}): Block => ({ cells: [{ x: 0, lines: told }], parts: true, ...more });
  const points = (label: string, told: readonly string[]): readonly Block[] => (told.length === 0 ? [] : [block([blank(1), ...told.flatMap((t, i) => (i === 0 ? labelled(label, t, width, small) : hanging("–", t, width, small)))])]);
  return [
    block([...lines(capital(title), width, heading), ...lines(`${numbers.length === 1 ? "Step" : "Steps"} ${listed(numbers.map(String))}`, width, small)], { ruleMm: 0.35, gapMm: 3.5, keep: true, anchor: cautionAnchor(hazard) }),
    block([...lines(what, width, reading), blank(0.8), ...care.map((told, i) => together(hanging(String(i + 1), told, width, reading, 5)))]),
    ...points("In your room:", room),
    ...points("The law:", law),
    ...(limits.length > 0 ? limitBlocks(limits, width) : []),
    block([blank(0.6), ...labelled("Source:", source, width, fine)]),
  ];
}

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { blockHigh, partedBlock, type Block, type Line } from "#sheets/book/block.ts";
import { restMin } from "#sheets/book/days.ts";
import { bookPages, type BookPage } from "#sheets/book/flow.ts";
import { brokenAt, printedWidth } from "#sheets/book/measure.ts";
import { tableBlocks } from "#sheets/book/table.ts";
import { capitalShare } from "#sheets/lettering.ts";

const room = { left: 20, top: 280, low: 20, barlessLow: 20, width: 170, columns: 1, step: 180 };
const lineOf = (highMm: number): Line => ({ highMm, ink: () => undefined });

/** Blocks of the kinds that a book is made of: headings, paragraphs that may be parted, pictures that may not. */
const blocks = fc.array(
  fc.record({ lines: fc.integer({ min: 1, max: 60 }), highMm: fc.integer({ min: 2, max: 6 }), kind: fc.constantFrom("heading", "paragraph", "picture"), gapMm: fc.integer({ min: 0, max: 6 }) }),
  { minLength: 1, maxLength: 40 },
).map((all) =>
  all.map(({ lines, highMm, kind, gapMm }): Block => ({ cells: [{ x: 0, lines: Array.from({ length: kind === "heading" ? 1 : Math.min(lines, kind === "picture" ? 40 : 60) }, () => lineOf(highMm)) }], gapMm, ...(kind === "heading" && { keep: true }), ...(kind === "paragraph" && { parts: true }) })),
);

const linesOn = (pages: readonly BookPage[]): readonly Line[] => pages.flatMap((p) => p.placed.flatMap(({ block }) => block.cells[0]!.lines));

describe("blocks on pages", () => {
  test("every line is there once and in its order, inside the room, nothing on anything else", () => {
    fc.assert(
      fc.property(blocks, fc.constantFrom(1, 2), (all, columns) => {
        const pages = bookPages([{ title: "chapter", blocks: all }], { ...room, columns });
        expect(linesOn(pages)).toEqual(all.flatMap((b) => b.cells[0]!.lines));
        for (const { placed } of pages) {
          const low = new Map<number, number>();
          for (const { block, x, top } of placed) {
            expect(top).toBeLessThanOrEqual((low.get(x) ?? room.top) + 1e-9);
            low.set(x, top - blockHigh(block));
            expect(low.get(x)!).toBeGreaterThanOrEqual(room.low - 1e-6);
          }
        }
      }),
    );
  });

  test("a heading stands above what follows it, never last", () => {
    fc.assert(
      fc.property(blocks, (all) => {
        const pages = bookPages([{ title: "chapter", blocks: all }], room);
        pages.slice(0, -1).forEach(({ placed }, i) => {
          // More headings in a row than a page holds cannot stay together.
          const run = [...placed].reverse().findIndex(({ block }) => !block.keep);
          if (run > 0) expect([i, run]).toEqual([i, 0]);
        });
      }),
    );
  });

  test("a parting leaves two lines on either side, and blanks count for none", () => {
    const told = (count: number): Block => ({ cells: [{ x: 0, lines: [...Array.from({ length: count }, () => lineOf(5)), { ...lineOf(5), blank: true }] }], parts: true });
    const parts = partedBlock(told(6), 26)!;
    expect(parts.map((b) => b.cells[0]!.lines.filter((l) => !l.blank).length)).toEqual([4, 2]);
    expect(partedBlock(told(3), 11)).toBeUndefined();
    expect(partedBlock(told(6), 4)).toBeUndefined();
  });

  test("a long row of a table goes on inside the page, whatever keeps room below it", () => {
    const rows = tableBlocks([{ head: "when", mm: 40 }, { head: "what", mm: 130 }], Array.from({ length: 12 }, (_, i) => ["one", Array.from({ length: 5 + 3 * i }, () => lineOf(4))])).map((b) => ({ ...b, parts: true }));
    for (let above = 1; above < 60; above++) {
      const pages = bookPages([{ title: "calendar", blocks: [{ cells: [{ x: 0, lines: [lineOf(4 * above)] }] }, ...rows] }], room);
      for (const { placed } of pages) for (const { block, top } of placed) expect(top - blockHigh(block)).toBeGreaterThanOrEqual(room.low - 1e-6);
      expect(pages.flatMap(({ placed }) => placed).reduce((sum, { block }) => sum + block.cells.reduce((n, c) => n + c.lines.filter((l) => l.highMm === 4).length, 0), 0)).toBe(12 * 5 + 3 * 66 + (above === 1 ? 1 : 0));
    }
  });

  test("a step is parted only where enough of it stands on either page", () => {
    const step: Block = { cells: [{ x: 0, lines: Array.from({ length: 20 }, () => lineOf(4)) }], parts: true, least: { first: 30, rest: 16 } };
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 64 }), (above) => {
        const pages = bookPages([{ title: "steps", blocks: [{ cells: [{ x: 0, lines: Array.from({ length: above }, () => lineOf(4)) }] }, step] }], room);
        const stands = pages.flatMap(({ placed }) => placed.slice(-1)).map(({ block }) => blockHigh(block)).slice(above * 4 + 30 > 260 ? 1 : 0);
        expect(stands.reduce((sum, mm) => sum + mm, 0)).toBe(80);
        if (stands.length > 1) {
          expect(stands[0]).toBeGreaterThanOrEqual(28);
          expect(stands[1]).toBeGreaterThanOrEqual(16);
        }
      }),
    );
  });

  test("a chapter begins below the one before only where that saves a page, and its own pages bear its name", () => {
    const chapter = (title: string, count: number, joins = false) => ({ title, joins, blocks: Array.from({ length: count }, (): Block => ({ cells: [{ x: 0, lines: [lineOf(10)] }] })) });
    const pagesOf = (first: number, second: number) => bookPages([chapter("materials", first), chapter("tools", second, true), chapter("steps", 1)], room).map(({ title, more }) => `${title}${more ? ", more" : ""}`);
    expect(pagesOf(5, 10)).toEqual(["materials", "steps"]);
    expect(pagesOf(20, 20)).toEqual(["materials", "tools", "steps"]);
    expect(pagesOf(30, 40)).toEqual(["materials", "materials, more", "tools, more", "steps"]);
  });

  test("a table's head stands again where the table goes on", () => {
    const head: Block = { cells: [{ x: 0, lines: [lineOf(4)] }], keep: true };
    const rows = Array.from({ length: 100 }, (): Block => ({ cells: [{ x: 0, lines: [lineOf(6)] }], head }));
    const pages = bookPages([{ title: "table", blocks: [head, ...rows] }], room);
    expect(pages.length).toBe(3);
    for (const { placed } of pages) expect(placed[0]!.block).toBe(head);
  });
});

describe("words as they are printed", () => {
  test("letters are as wide as the standard face has them", () => {
    // Helvetica, per 1000 of the size: A 667, i 222, figures 556, blank 278; bold A 722 (Adobe's metrics of the core 14 faces, from memory).
    for (const [text, wide] of [["A", 667], ["i", 222], ["8", 556], [" ", 278], ["Ai8", 1445]] as const) expect(printedWidth(text, capitalShare)).toBeCloseTo(wide / 1000, 6);
    expect(printedWidth("A", capitalShare, true)).toBeCloseTo(0.722, 6);
  });

  test("no line is wider than it may be, no letter is lost, and a number stays with its unit", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, maxLength: 60, unit: fc.constantFrom("a", "W", "i", "ł", "9", "-") }), { maxLength: 20 }), fc.integer({ min: 8, max: 90 }), (words, wide) => {
        const broken = brokenAt(words.join(" "), 2.5, wide);
        for (const line of broken) expect(printedWidth(line, 2.5)).toBeLessThanOrEqual(wide);
        expect(broken.join("").replaceAll(" ", "")).toBe(words.join(""));
      }),
    );
    for (let wide = 12; wide < 60; wide++) for (const line of brokenAt("skived over 12 mm at 45 % of it", 2.5, wide)) expect(line).not.toMatch(/^(mm|%)/);
  });
});

test("what dries at the same time counts once", () => {
  const wait = (wellMin: number) => ({ leastMin: 1, wellMin, what: "it dries", source: "invented" });
  const steps = [{ id: "a", after: [], wait: wait(60) }, { id: "b", after: ["a"], wait: wait(30) }, { id: "c", after: ["a"], wait: wait(45) }, { id: "d", after: ["b", "c"] }];
  expect(restMin(steps)).toBe(105);
});

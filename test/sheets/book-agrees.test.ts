import { describe, expect, test } from "vitest";
import { bookPages } from "#sheets/book/making-pdf.ts";
import { bookPages as laidOut } from "#sheets/book/flow.ts";
import type { Block } from "#sheets/book/block.ts";
import { printPaper } from "#sheets/print-paper.ts";
import type { MakingSaid } from "#making/said.ts";
import { bookInput, busy, saidAll } from "../support/book-inputs.ts";
import { wordsOnPage } from "../support/words-on-page.ts";

/** Words of every page in the order in which they were written. */
const wordsOf = (own: Parameters<typeof bookInput>[0]) => {
  const input = bookInput(own, { paper: "A4" });
  return { input, pages: bookPages(input, printPaper(input.choices)).inks.map(wordsOnPage) };
};
const minutesOf = (told: string): number => Number(/(\d+)\s+h/.exec(told)?.[1] ?? 0) * 60 + Number(/(\d+)\s+min/.exec(told)?.[1] ?? 0);

describe("a number that stands in several places of the book is the same in all", () => {
  test.each([[{}], [{ ...saidAll, pairs: "1" }], [{ ...saidAll, pairs: "3", lasts: "2" }], [{ pairs: "12" }]] as const satisfies readonly (readonly [MakingSaid])[])("hours by stretch on the cover add up to those told for one pair: %j", (said) => {
    const { input, pages } = wordsOf({ said });
    const words = pages[0]!.map((w) => w.text), table = words.slice(words.indexOf("Dries"));
    const rows = input.making.cost.work.map(({ phase }) => {
      const at = table.indexOf(phase.charAt(0).toUpperCase() + phase.slice(1));
      expect([phase, at >= 0]).toEqual([phase, true]);
      return minutesOf(table[at + 2]!);
    });
    const told = /About ([^.]*?) of work for one pair/.exec(words.join(" "))![1]!;
    expect(rows.reduce((sum, min) => sum + min, 0)).toBe(minutesOf(told));
    expect(rows).toEqual(input.making.cost.work.map((w) => Math.round(w.minutes)));
  });

  test.each([["the example", {}], ["quarters", busy]] as const)("the heel is as high on the cover and in the log as the steps build it: %s", (_, own) => {
    const { input, pages } = wordsOf(own);
    const { backMm, breastMm } = input.made!.heel!;
    const high = (mm: number): string => String(Math.round(10 * mm) / 10);
    const cover = pages[0]!.map((w) => w.text), text = pages.map((page) => page.map((w) => w.text).join(" ")), all = text.join(" ").replaceAll("\u00a0", " ");
    expect(cover[cover.indexOf("Heel, at the back") + 1]).toBe(`${high(backMm)} mm`);
    expect(text[0]!.replaceAll("\u00a0", " ")).toContain(`a heel of ${high(backMm)} mm in`);
    expect(all).toContain(`${high(backMm)} mm at the back and ${high(breastMm)} mm at the breast`);
    const log = pages.flat().map((w) => w.text);
    expect([log[log.indexOf("Heel height at the back") + 1], log[log.indexOf("Heel height at the breast") + 1]]).toEqual([high(backMm), high(breastMm)]);
  });

  test("the log says beside what is asked over the leather what it is on the bare last", () => {
    const { input, pages } = wordsOf({});
    const page = pages.find((words) => words.some((w) => w.text === "Lasted, mm"))!.map((w) => w.text), at = page.indexOf("A  Throat depth");
    const bare = input.lines.settings.throatDepthMm;
    expect(page.slice(at + 2, at + 4)).toEqual(["over the leather,", `bare last ${bare.toFixed(1)}`]);
    expect(Number(page[at + 1])).toBeGreaterThan(bare);
  });
});

test("what to take care of is never the smallest print beside a step", () => {
  const { pages } = wordsOf(busy);
  const care = pages.flatMap((page) => page.filter((w) => /^(Take care|As above:|Knife, page \d+:)$/.test(w.text) && w.heightMm < 4));
  expect(care.length).toBeGreaterThan(10);
  for (const w of care) expect(w.heightMm).toBeGreaterThan(2.299);
});

test("chapters go on below one another while a third of the page is free, each page by the chapter it begins in", () => {
  const block = (highMm: number): Block => ({ cells: [{ x: 0, lines: [{ highMm, ink: () => undefined }] }] });
  const room = { left: 20, top: 280, low: 20, barlessLow: 20, width: 170, columns: 1, step: 180 };
  const chapter = (title: string, count: number, joins = true) => ({ title, joins, blocks: Array.from({ length: count }, () => block(10)) });
  const titles = (...all: readonly ReturnType<typeof chapter>[]) => laidOut(all, room).map(({ title, more }) => `${title}${more ? ", more" : ""}`);
  expect(titles(chapter("care", 14, false), chapter("cost", 18), chapter("log", 30))).toEqual(["care", "cost, more", "log, more"]);
  expect(titles(chapter("care", 19, false), chapter("cost", 18))).toEqual(["care", "cost"]);
  expect(titles(chapter("care", 14, false), chapter("cost", 18, false))).toEqual(["care", "cost"]);
});

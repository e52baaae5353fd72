import { beforeAll, describe, expect, test } from "vitest";
import { bookPdf } from "#sheets/book/making-pdf.ts";
import { plainLetters } from "#sheets/lettering.ts";
import type { LastInput } from "#sheets/input.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { moneyWords } from "#making/amounts/decimal.ts";
import { amountWords } from "#making/amounts/units.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { lastInput } from "#job/sheets-for.ts";
import { bookInput, busy, saidAll } from "../support/book-inputs.ts";
import { onLast } from "../support/on-last.ts";
import { pdfLines } from "../support/pdf-lines.ts";

/** Words of every page as an outside reader finds them, in the order in which they were written. */
async function pagesOf(input: LastInput): Promise<readonly string[]> {
  const { bytes } = await bookPdf(input, printPaper(input.choices));
  return (await pdfLines(bytes)).map(({ text }) => text.join(" ").replace(/\s+/g, " "));
}

/** Whether words stand in one on a page, or go on from the foot of one page to the next. */
function holds(pages: readonly string[], told: string): boolean {
  const words = plainLetters(told).replace(/\s+/g, " ").trim().split(" ");
  const found = (from: number, to: number, page: string | undefined): boolean => page?.includes(words.slice(from, to).join(" ")) ?? false;
  return pages.some((page, i) => found(0, words.length, page) || words.some((_, k) => k > 0 && found(0, k, page) && found(k, words.length, pages[i + 1])));
}

describe.each([["the example", {}, "A4"], ["quarters with all that can be added, everything said", { ...busy, said: saidAll }, "Letter"]] as const)("the book of %s", (_, own, paper) => {
  const input = bookInput(own, { paper });
  const { needs, toBuy, steps, cautions, tools, bonds, calendar, cost } = input.making;
  let pages: readonly string[] = [];
  beforeAll(async () => {
    pages = await pagesOf(input);
  });
  const missing = (told: readonly string[]): readonly string[] => told.filter((words) => !holds(pages, words));
  const hours = (minutes: number): string => [minutes >= 60 ? `${Math.floor(minutes / 60)} h` : "", minutes % 60 > 0 ? `${minutes % 60} min` : ""].filter(Boolean).join(" ");
  const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

  test("counts its pages on every one", () => {
    pages.forEach((page, i) => expect(page).toContain(`Page ${i + 1} of ${pages.length}`));
    expect(pages.length).toBeGreaterThan(10);
  });

  test("names every piece of the pair and how many are cut, and every strip", () => {
    const count = (name: string) => input.pieces.filter((p) => p.name === name).reduce((sum, p) => sum + p.perPair, 0);
    const names = [...new Set(input.pieces.map((p) => p.name))];
    for (const name of names) expect([name, pages.some((page) => new RegExp(`${upperFirst(name)} .*?\\b${count(name)} \\d right, \\d left`).test(page))]).toEqual([name, true]);
    expect(missing(input.strips.map((s) => upperFirst(s.name)))).toEqual([]);
  });

  test("lists every good with what it is, net and with what falls away", () => {
    expect(needs.length).toBeGreaterThan(10);
    expect(missing(needs.flatMap((n) => [upperFirst(n.good), n.kind, amountWords(n.net, n.measure), amountWords(n.gross, n.measure), n.reason, n.source]))).toEqual([]);
    expect(missing(toBuy.flatMap((b) => (b.whole && b.short > 0 ? [b.whole.words] : [])))).toEqual([]);
    const away = needs.flatMap(({ good, waste }) => (waste ? [[waste.why, `${good} ${Math.round(100 * waste.ofBought)} %`] as const] : []));
    expect(missing(away.map(([why]) => why))).toEqual([]);
    for (const [, told] of away) expect([told, pages.some((page) => page.toLowerCase().includes(plainLetters(told)))]).toEqual([told, true]);
    expect(missing(bonds.map((b) => upperFirst(b.name)))).toEqual([]);
    expect(missing(input.making.thread.seams.map((s) => upperFirst(s.name)))).toEqual([]);
    expect(missing(tools.flatMap((t) => [upperFirst(t.tool), t.use]))).toEqual([]);
  });

  test("tells every step in full, in its order, with its waits", () => {
    expect(missing(steps.flatMap((s) => [s.title, ...s.todo, ...(s.wait ? [s.wait.what] : [])]))).toEqual([]);
    expect(missing(steps.flatMap((s) => [s.right.join(" "), s.fails.join(" ")]))).toEqual([]);
    const places = steps.map((s) => pages.findIndex((page) => page.includes(plainLetters(s.title)) && page.startsWith("Page") && /Steps/.test(page)));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test("tells beside the first step of each page what to take care of, and where the whole of it stands", () => {
    const stepPages = pages.map((page) => (/Steps(, more)? /.test(page.slice(0, 60)) ? page : ""));
    for (const { hazard, title, short, steps: ids } of cautions) {
      const at = pages.findIndex((page) => page.includes(`${upperFirst(title)} Step`));
      expect([hazard, at > 0 && pages[at]!.slice(0, 60).includes("Take care"), ids.length > 0]).toEqual([hazard, true, true]);
      for (const id of ids) {
        const { title: step } = steps.find((s) => s.id === id)!;
        const page = stepPages.find((text) => text.includes(plainLetters(step)))!;
        const times = page.split(plainLetters(`${upperFirst(hazard)}, page ${at + 1}: ${short}`)).length - 1;
        // Twice only where a step came over from another page.
        expect([id, hazard, times === 1 || times === 2]).toEqual([id, hazard, true]);
      }
    }
  });

  test("gives every caution in full, and every limit with who set it and when", () => {
    expect(missing(cautions.flatMap((c) => [c.what, ...c.care, ...(c.law ?? []), ...(c.room ?? []), c.first, c.source]))).toEqual([]);
    const limits = cautions.flatMap((c) => c.limits ?? []);
    expect(limits.length).toBeGreaterThan(5);
    for (const { substance, jurisdiction, date, ppm, mgPerM3, kind, source, short, ceilingPpm } of limits) {
      const told = pages.map((page) => page.split(`${upperFirst(substance)} Set when`)[1]?.split("15 minutes; never over")[1]).find((t) => t !== undefined);
      expect([substance, told]).toEqual([substance, expect.stringContaining(plainLetters(`${jurisdiction} ${date} ${ppm} ${mgPerM3}${short ? ` ${short.ppm} ppm` : ""}`))]);
      expect(told).toContain(plainLetters(source));
      if (ceilingPpm !== undefined) expect(told).toContain(`never over ${ceilingPpm} ppm`);
      expect(pages.some((page) => new RegExp(`${upperFirst(kind)}: [^.]*${jurisdiction}`).test(page))).toBe(true);
    }
  });

  test("tells at once how the days go: every stretch of the work with its steps and its hours", () => {
    expect(pages[0]).toContain("How the days go");
    for (const phase of new Set(steps.map((s) => s.phase))) {
      const places = steps.flatMap((s, i) => (s.phase === phase ? [i + 1] : []));
      const range = places.length > 1 ? `${places[0]}–${places.at(-1)}` : String(places[0]);
      expect(pages[0]).toMatch(new RegExp(`${upperFirst(phase)} ${range} (\\d+ h)? ?(\\d+ min)?`));
      if (cost.total === 0) expect(pages[0]).toContain(`${upperFirst(phase)} ${range} ${hours(steps.filter((s) => s.phase === phase).reduce((sum, s) => sum + s.minutes, 0))}`);
      // Together, without any left out.
      expect(places).toEqual(Array.from(places, (_, i) => places[0]! + i));
    }
    expect(pages[0]).toContain(calendar ? "one of your times at the bench" : "As if you worked every evening");
  });

  test("says what a pair costs, or how to learn it", () => {
    if (cost.total > 0) {
      expect(missing([moneyWords(cost.total, "EUR"), "When skins cost 10 % more", moneyWords(cost.skinsDearer.more, "EUR"), ...cost.shares.map((s) => upperFirst(s.part))])).toEqual([]);
    } else expect(missing(["No price is said"])).toEqual([]);
  });

  test("holds the calendar where there is one", () => {
    const times = calendar?.sessions.length ?? 0;
    expect(pages.some((page) => page.includes("Calendar"))).toBe(times > 0);
  });

  test("asks for every measure of both shoes", () => {
    const form = pages.filter((page) => page.includes("What this pair measured")).join(" ");
    for (const told of ["Throat depth", "Back height", "Outside, height at 1/4", "Inside, height, lowest place", "toe centre", "waist, inside", "Heel height at the back", "Sole margin at the waist", "Hours taken", "What to change next time"]) expect(form).toContain(told);
  });
});

test("fits on so many pages as one takes along to the bench", async () => {
  expect((await pagesOf(bookInput())).length).toBeLessThanOrEqual(30);
});

test("a price asked that is too low says so, and what has no price is named once", async () => {
  const input = bookInput({ said: { ...saidAll, asked: "100" } }), { cost } = input.making;
  const [page = "", ...others] = (await pagesOf(input)).filter((text) => text.includes("Left out, for want of a price:"));
  expect(others).toEqual([]);
  expect(page).toContain(`Asked 100.00 EUR: ${moneyWords(cost.total - 100, "EUR")} too little`.replace(/\s/g, " "));
  expect(page).not.toContain("no price");
  for (const good of cost.unpriced) expect(page.split("for want of a price:")[1]!.split("Where the money goes")[0]).toContain(good);
});

test("the same pair gives the same bytes, and another another", async () => {
  const print = (input: LastInput) => bookPdf(input, printPaper(input.choices));
  const [a, b, other] = [await print(bookInput()), await print(bookInput()), await print(bookInput({ said: { pairs: 2 } }))];
  expect(Buffer.from(a.bytes).equals(Buffer.from(b.bytes))).toBe(true);
  expect(Buffer.from(a.bytes).equals(Buffer.from(other.bytes))).toBe(false);
});

test("a pattern corrected for its leather is told on the cover and beside the margins", async () => {
  const job = defaultJob();
  const pair = onLast(new Pipeline().run({ ...job, leather: { upper: { known: "nappa", name: "Black nappa" } }, lasting: { correct: true } }, new Map(), { triangles: 3000 }));
  const pages = await pagesOf(lastInput(pair));
  expect(pages[0]).toContain("Corrected for Black nappa: toe to throat");
  const marks = pages.filter((page) => page.includes("Marks on both lasts")).join(" ");
  expect(marks).toContain("The marks stay where they are.");
  expect(marks).toContain("these margins are the plain pattern's");
});

test("a year of evenings fills no book: the first sixty are printed, and where the others stand is said", async () => {
  const input = bookInput({ said: { pairs: 30, start: "2026-12-01", sessions: "Tue 19:00-21:30" } });
  expect(input.making.calendar!.sessions.length).toBeGreaterThan(60);
  const pages = (await pagesOf(input)).filter((page) => page.includes("Calendar"));
  expect(pages.join(" ")).toContain(`These are the first 60 of ${input.making.calendar!.sessions.length} times at the bench`);
  expect(pages.join(" ").match(/Tue \d+ \w+ \d{4} 19:00 to 21:30/g)).toHaveLength(60);
});

test.each([["₹", "INR"], ["€", "€"], ["zł", "zl"], ["靴", ""]] as const)("money in %s is told in letters that the sheets can print", async (currency, told) => {
  const pages = await pagesOf(bookInput({ said: { rate: "20", currency } }));
  const cost = pages.find((page) => page.includes("Cost of one pair"))!;
  expect(cost).not.toContain("?");
  expect(cost).toContain(["at 20.00", told].filter(Boolean).join(" "));
});

test("every word of a book is in letters that the sheets can print", () => {
  const texts = (value: unknown): readonly string[] => (typeof value === "string" ? [value] : typeof value === "object" && value !== null ? Object.values(value).flatMap(texts) : []);
  for (const own of [{}, { ...busy, said: saidAll }]) {
    const { findings: _, ...making } = bookInput(own).making;
    const all = texts(making);
    expect(all.length).toBeGreaterThan(500);
    // What has no like letter comes out as a question mark.
    const asked = (text: string): number => text.split("?").length;
    expect(all.filter((text) => asked(plainLetters(text)) !== asked(text))).toEqual([]);
  }
});

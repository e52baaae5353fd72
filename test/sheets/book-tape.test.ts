import { describe, expect, test } from "vitest";
import { bookPages, bookPdf } from "#sheets/book/making-pdf.ts";
import { marginMm } from "#sheets/paper.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { proveBookPdf } from "#sheets/readback/prove-book.ts";
import { overlaps, wordsOnPage } from "../support/words-on-page.ts";
import { tapedInput } from "../support/taped-input.ts";

describe.each([["with its bottom", true, "right"], ["without a bottom", false, "left"]] as const)("the book of a taped pattern %s", (_, withBottom, side) => {
  const made = tapedInput(side, withBottom);
  const { inks } = bookPages(made, printPaper(made.choices));
  const pages = inks.map((ink) => wordsOnPage(ink));
  const text = pages.map((page) => page.map((w) => w.text).join(" "));

  test("has its throat and back, its upper and its steps, and nothing of a last that it has not", async () => {
    const [throat, back] = [made.tape.medial.lengths, made.tape.lateral.lengths].reduce(([t, b], l) => [t + l.centre / 2, b + l.back / 2], [0, 0]);
    const half = (mm: number): string => `${(Math.round(2 * mm) / 2).toFixed(1)} mm`;
    expect(text[0]).toContain(half(throat));
    expect(text[0]).toContain(half(back));
    expect(text[0]).toContain("lying flat");
    expect(text[0]).toContain("The topline is folded over a tape");
    expect(text[0]).not.toContain("The last from outside");
    expect(text.join(" ")).toContain("Lengths of the taped pattern lying flat");
    expect(text.some((t) => t.startsWith("Page") && t.includes("Steps"))).toBe(true);
    const pieces = text.filter((t) => t.includes("Cut for the pair")).join(" ");
    expect(pieces).toContain("Upper, net");
    expect(pieces.includes("Outsole")).toBe(withBottom);
    await expect(proveBookPdf(await bookPdf(made, printPaper(made.choices)))).resolves.toBeUndefined();
  });

  test("shows what needs no last, and of the bottom only where one was traced", () => {
    const steps = text.filter((t) => t.startsWith("Page") && t.includes("Steps")).join(" ");
    expect(steps).toContain("The topline cut across");
    expect(steps).not.toMatch(/last from below|The back cut across|The heel from outside/);
    expect([steps.includes("shoe from below"), steps.includes("The edge cut across")]).toEqual([withBottom, withBottom]);
  });

  test("keeps its words apart and inside the margins", () => {
    pages.forEach((words, i) => {
      expect([i + 1, overlaps(words)]).toEqual([i + 1, []]);
      expect(words.filter((w) => w.from < marginMm || w.to > inks[i]!.page.widthMm - marginMm + 0.05)).toEqual([]);
    });
  });
});

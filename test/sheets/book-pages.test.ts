import { describe, expect, test } from "vitest";
import { bookPages } from "#sheets/book/making-pdf.ts";
import { marginMm, type PaperName } from "#sheets/paper.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { bookInput, busy, saidAll } from "../support/book-inputs.ts";
import { overlaps, struckThrough, wordsOnPage } from "../support/words-on-page.ts";

const longTitle = `A title that goes on ${"and on ".repeat(40)}${"withoutanyblank".repeat(12)} 靴 обувь Łódź`;
/** A workshop whose figures are as long as they come; invented. */
const dear = {
  ...saidAll, pairs: "1000", currency: "francs", rate: "999999", overhead: "120000", asked: "29000000",
  prices: Object.fromEntries(["upper leather", "lining leather", "sole leather", "thread", "contact cement"].map((good) => [good, { price: "1234567.89" }])),
};

describe("nothing is cut off and nothing lies on anything else", () => {
  test.each(["A4", "Letter", "A3", "A2", "roll"] as const satisfies readonly PaperName[])("on %s", (paper) => {
    for (const own of [{}, { ...busy, said: dear }]) {
      for (const change of [{}, { title: longTitle, size: "EU 38½, narrow heel, wide joints" }]) {
        const input = bookInput(own, { paper }, change);
        const { inks } = bookPages(input, printPaper(input.choices));
        inks.forEach((ink, i) => {
          const words = wordsOnPage(ink), { widthMm, heightMm } = ink.page;
          const off = words.filter((w) => w.from < marginMm - 0.05 || w.to > widthMm - marginMm + 0.05 || w.y < marginMm || w.y + w.heightMm > heightMm - marginMm + 0.05);
          expect([paper, i + 1, off.map((w) => w.text)]).toEqual([paper, i + 1, []]);
          expect([paper, i + 1, overlaps(words)]).toEqual([paper, i + 1, []]);
          // Drawings of shoes have words among their lines.
          const days = Math.max(-1, ...words.filter((w) => w.text === "How the days go").map((w) => w.y));
          const bare = words.some((w) => /^(Pieces|Marks on both lasts)(, more)?$/.test(w.text)) ? [] : days > 0 ? words.filter((w) => w.y < days) : words;
          expect([paper, i + 1, struckThrough(ink, bare)]).toEqual([paper, i + 1, []]);
          expect([paper, i + 1, words.filter((w) => w.heightMm < 1.99 && !/^(Print at|Corrected|\d+$|must measure|size )/.test(w.text)).map((w) => w.text)]).toEqual([paper, i + 1, []]);
        });
      }
    }
  });

  test("the size is told whole on every page", () => {
    const size = "EU 38½, narrow heel, wide joints";
    const input = bookInput({}, {}, { size, title: longTitle });
    for (const ink of bookPages(input, printPaper(input.choices)).inks) expect(wordsOnPage(ink).some((w) => w.text === `size ${size}`)).toBe(true);
  });

  test("no page ends with a heading: below each phase stands a step", () => {
    const input = bookInput(busy, { paper: "Letter" });
    for (const ink of bookPages(input, printPaper(input.choices)).inks) {
      const words = wordsOnPage(ink);
      const lowest = Math.min(...words.filter((w) => w.y > marginMm + 7).map((w) => w.y));
      for (const w of words) if (["Pattern", "Cutting", "Closing", "Bottom parts", "Lasting", "Bottoming", "Heel", "Finishing"].includes(w.text) && w.heightMm > 4.5) expect(w.y - lowest).toBeGreaterThan(20);
    }
  });

  test("a table that goes on names its columns again", () => {
    const input = bookInput({ ...busy, said: { ...saidAll, pairs: "30" } }, { paper: "Letter" });
    const pages = bookPages(input, printPaper(input.choices)).inks.map((ink) => wordsOnPage(ink).map((w) => w.text));
    const calendar = pages.filter((page) => page.some((t) => /^Calendar(, more)?$/.test(t)));
    expect(calendar.length).toBeGreaterThan(1);
    for (const page of calendar) expect(page).toContain("Dries or rests until");
  });
});

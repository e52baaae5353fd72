import { describe, expect, test } from "vitest";
import { capitalShare, textWidth } from "#sheets/lettering.ts";
import { inkUprightStrip, stripWidthMm } from "#sheets/marks/strips.ts";
import { marginMm, papers } from "#sheets/paper.ts";
import { inkLegend } from "#sheets/pdf/how-to.ts";
import { PageInk } from "#sheets/pdf/page-ink.ts";
import { truePage } from "#sheets/print-paper.ts";

/** Level words of a page with where they begin and end, mm. */
function wordsOn(ink: PageInk): readonly { readonly text: string; readonly from: number; readonly to: number; readonly y: number }[] {
  return [...ink.content().matchAll(/BT \/(Plain|Bold) (\S+) Tf \S+ 0 0 \S+ (\S+) (\S+) Tm <([0-9A-Fa-f]+)> Tj ET/g)].map(([, face, size, x, y, hex]) => {
    const text = Buffer.from(hex!, "hex").toString("latin1");
    return { text, from: Number(x), to: Number(x) + textWidth(text, Number(size) * capitalShare, face === "Bold"), y: Number(y) };
  });
}

describe("words keep within what they belong to", () => {
  test.each(["A4", "Letter", "A3"] as const)("the legend of the lines within the page's margins, no words on the next ones: %s", (name) => {
    const ink = new PageInk(truePage(papers[name]));
    inkLegend(ink);
    const words = wordsOn(ink);
    expect(words.length).toBeGreaterThan(8);
    for (const { to } of words) expect(to).toBeLessThanOrEqual(papers[name].widthMm - marginMm + 0.01);
    // A sample long enough to show its dashes stands before the words of the next column.
    for (const row of new Set(words.slice(1).map((w) => w.y))) {
      const inRow = words.slice(1).filter((w) => w.y === row);
      inRow.slice(1).forEach((w, i) => expect(w.from - inRow[i]!.to).toBeGreaterThan(8));
    }
  });

  test("the long words of a strip on the strip", () => {
    const ink = new PageInk(truePage(papers.A4));
    inkUprightStrip(ink, { name: "along", zero: "seat point", title: ["Inside", "feather line"], marks: [{ key: "joint", tick: "joint", words: "joint", lengthMm: 206 }, { key: "low", tick: "low", words: "low", lengthMm: 127 }] }, 100, 20);
    for (const { text, from, to } of wordsOn(ink)) {
      expect([text, from >= 100.5]).toEqual([text, true]);
      expect(to).toBeLessThan(100 + stripWidthMm);
    }
  });
});

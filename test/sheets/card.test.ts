// The card as an outside reader of PDF sees it (pdf.js): paper sizes of ISO 216 and 8½ × 11 in, bars and squares at true scale.
import { expect, test } from "vitest";
import { barAcrossMm, barMm, cardHalves, cardPapers, cardSheet } from "#photo/card.ts";
import { cardOnPaper } from "#sheets/card-sheet.ts";
import { cardPdf } from "#sheets/card.ts";
import { papers } from "#sheets/paper.ts";
import { pdfLines } from "../support/pdf-lines.ts";

test.each(cardPapers)("on %s", async (name) => {
  const bytes = await cardPdf(name);
  expect(await cardPdf(name)).toEqual(bytes);
  const pages = await pdfLines(bytes);
  expect(pages.length).toBe(3);
  const paper = papers[name];
  cardHalves.forEach((half, p) => {
    const { view, lines } = pages[p]!;
    expect(Math.abs((view[2]! - view[0]!) * (25.4 / 72) - paper.widthMm)).toBeLessThan(0.01);
    expect(Math.abs((view[3]! - view[1]!) * (25.4 / 72) - paper.heightMm)).toBeLessThan(0.01);
    const straight = lines.filter((l) => l.stroked && l.xy.length === 4);
    const spans = straight.map(({ xy: [x0, y0, x1, y1] }) => [Math.abs(x1! - x0!), Math.abs(y1! - y0!)] as const);
    expect(spans.filter(([w, h]) => w < 1e-3 && Math.abs(h - barMm) < 0.01).length).toBe(1);
    expect(spans.filter(([w, h]) => h < 1e-3 && Math.abs(w - barAcrossMm) < 0.01).length).toBe(1);
    // Every black square is filled where the card says it is.
    const at = cardOnPaper(paper, name, half);
    const left = half === "left" ? at.x : at.x - 180;
    const filled = lines.filter((l) => !l.stroked);
    const corner = filled.map(({ xy }) => [Math.min(...xy.filter((_, i) => i % 2 === 0)), Math.min(...xy.filter((_, i) => i % 2 === 1))] as const);
    const { black } = cardSheet(name, half);
    for (let i = 0; i < black.length; i += 2) expect(corner.some(([x, y]) => Math.abs(x - black[i]! - left) < 0.01 && Math.abs(y - black[i + 1]! - at.y) < 0.01), `${half} ${black[i]} ${black[i + 1]}`).toBe(true);
    // Nothing is printed where common printers leave a blank.
    for (const { xy } of filled) for (let i = 0; i < xy.length; i += 2) {
      expect(xy[i]!).toBeGreaterThan(9.99);
      expect(xy[i]!).toBeLessThan(paper.widthMm - 9.99);
    }
  });
});

import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { bookPdf } from "#sheets/book/making-pdf.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { proveBookPdf } from "#sheets/readback/prove-book.ts";
import { bookInput, busy } from "../support/book-inputs.ts";
import { pdfLines, type PdfLine } from "../support/pdf-lines.ts";

/** Longer and shorter side of a line's box, mm. */
function sidesOf(xy: ArrayLike<number>): readonly [number, number] {
  const at = (axis: number): readonly number[] => Array.from({ length: xy.length / 2 }, (_, i) => xy[2 * i + axis]!);
  const span = (all: readonly number[]): number => Math.max(...all) - Math.min(...all);
  const [w, h] = [span(at(0)), span(at(1))];
  return [Math.max(w, h), Math.min(w, h)];
}
const shows = (lines: readonly PdfLine[], [long, short]: readonly [number, number], one: number): boolean =>
  lines.some((l) => l.closed && Math.abs(sidesOf(l.xy)[0] - long / one) < 0.03 && Math.abs(sidesOf(l.xy)[1] - short / one) < 0.03);

describe.each([["A4", {}], ["Letter", busy], ["A3", { parts: { cut: "inner-seam" } }]] as const)("drawings on %s", (paper, own) => {
  const input = bookInput(own, { paper });

  test("have the scale that stands beside them, as an outside reader finds them", async () => {
    const { bytes } = await bookPdf(input, printPaper(input.choices));
    const pages = await pdfLines(bytes);
    const cover = pages[0]!, upper = Number(/lying flat, right shoe, 1 : ([\d.]+),/.exec(cover.text.join(" "))![1]);
    const panels = input.pieces.filter((p) => p.side === "right" && p.material === "upper leather" && ["upper", "vamp", "inner quarter", "outer quarter"].includes(p.name));
    expect(panels.length).toBe(own === busy ? 3 : 1);
    for (const piece of panels) expect([piece.name, shows(cover.lines, sidesOf(piece.outline.xy), upper)]).toEqual([piece.name, true]);
    const index = pages.filter((p) => p.text.some((t) => t.startsWith("Pieces")));
    const one = Number(/drawn 1 : (\d+)/.exec(index[0]!.text.join(" "))![1]);
    const lines = index.flatMap((p) => p.lines);
    for (const piece of input.pieces.filter((p) => p.side === "right")) expect([piece.name, shows(lines, sidesOf(piece.outline.xy), one)]).toEqual([piece.name, true]);
  });

  test("are read back before they are handed out, and refused where they are not true", async () => {
    const bound = await bookPdf(input, printPaper(input.choices));
    await expect(proveBookPdf(bound)).resolves.toBeUndefined();
    const wrong = bound.drawn.map((page) => page.map((d, i) => (i === 0 ? { ...d, wide: d.wide + 0.1 } : d)));
    await expect(proveBookPdf({ ...bound, drawn: wrong })).rejects.toThrow(Refusal);
    const other = bound.pages.map((page, i) => (i === 0 ? { ...page, barMm: page.barMm + 1 } : page));
    await expect(proveBookPdf({ ...bound, pages: other })).rejects.toThrow(Refusal);
  });
});

test("a printer that draws too small is put right in the book as well", async () => {
  const input = bookInput({}, { barAcrossMm: 98, barUpMm: 99 });
  const bound = await bookPdf(input, printPaper(input.choices));
  await expect(proveBookPdf(bound)).resolves.toBeUndefined();
  const [cover] = await pdfLines(bound.bytes);
  expect(cover!.text.join(" ")).toContain("Corrected for a printer that prints 100 as 98 across and 99 up");
});

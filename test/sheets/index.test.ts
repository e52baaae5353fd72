import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import type { Piece, Strip } from "#pieces/piece.ts";
import { usualSheets } from "#sheets/choices.ts";
import { pagesInWords } from "#sheets/index-entries.ts";
import { flowed } from "#sheets/pdf/index-flow.ts";
import type { IndexItem } from "#sheets/pdf/index-items.ts";
import { partOf } from "#sheets/shoe-part.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";
import { samplePieces } from "../support/sample-pieces.ts";

/** Invented strips. */
const strips: readonly Strip[] = [
  { name: "topline tape", material: "tape", widthMm: 3.5, lengthMm: 431.4, perPair: 2, where: "under the fold" },
  { name: "elastic gore", material: "elastic", widthMm: 30, lengthMm: 42, perPair: 2, where: "at the throat" },
];
/** Forty pieces: the sample's smaller ones again under names of their own. */
const many: readonly Piece[] = [...samplePieces(), ...Array.from({ length: 14 }, (_, k) => samplePieces().filter((p) => p.name === "sock").map((p) => ({ ...p, name: `lift ${k + 1}` }))).flat()];

async function textOf(pieces: readonly Piece[], paper: "A4" | "A3" | "roll" = "A4") {
  const files = await sheetsOf(samplePair({ pieces, strips, choices: { ...usualSheets, paper } }), unwatched);
  const pages = await pdfLines(files.find((f) => f.name === "pattern.pdf")!.bytes);
  const pattern = pages.findIndex((p) => p.text.some((t) => /^(card|cutting) set, /.test(t)));
  return { covers: pages.slice(0, pattern).map((p) => p.text), pages: pages.map((p) => p.text) };
}

describe("index of the pieces", () => {
  test.each(["A4", "A3", "roll"] as const)("%s: lists every name and every strip exactly once, with its area and its pages", async (paper) => {
    const { covers, pages } = await textOf(many, paper);
    const listed = covers.flat();
    for (const name of new Set(many.map((p) => p.name))) {
      expect(listed.filter((t) => t === name.charAt(0).toUpperCase() + name.slice(1))).toHaveLength(1);
    }
    expect(listed.filter((t) => t === "Topline tape")).toHaveLength(1);
    expect(listed).toContain("cut 2, 3.5 mm wide, 431 mm long");
    expect(listed.filter((t) => t === "Elastic gore")).toHaveLength(1);
    expect(listed.filter((t) => t.endsWith(" dm²"))).toHaveLength(new Set(many.map((p) => p.name)).size);
    // Where the index sends the maker, the piece is.
    const told = listed.join(" ").matchAll(/cut 1 (right|left) on pages? ([\d, to]+?)(?=;| [A-Z]| \d+\.\d+ dm²|$)/g);
    for (const [, , numbers] of told) for (const n of numbers!.match(/\d+/g)!) expect(Number(n)).toBeGreaterThan(covers.length);
    const sock = /Sock \d.*?cut 1 right on page (\d+)/.exec(listed.join(" "));
    if (sock) expect(pages[Number(sock[1]) - 1]!.join(" ")).toContain("Sock");
  });

  test("a few pieces stand on the first page, many run on", async () => {
    expect((await textOf(samplePieces())).covers).toHaveLength(1);
    expect((await textOf(many)).covers.length).toBeGreaterThan(1);
  });

  test("a heading never stands alone at the foot of a column, and blocks do not overlap", () => {
    const item = (heightMm: number, heading = false): IndexItem => ({ heightMm, heading, ink: () => {} });
    const items = [item(8, true), item(30), item(55), item(8, true), item(20), item(90), item(90)];
    const at = flowed(items, { columns: 2, left: 0, step: 50, width: 45, top: 100, low: 0, firstTop: 100, firstLow: 0 });
    // 8 + 30 + 55 leave 7: the heading goes to the second column with its block; each of the last two needs a column of its own.
    expect(at.map((a) => [a.page, a.x, a.y])).toEqual([[0, 0, 100], [0, 0, 92], [0, 0, 62], [0, 50, 100], [0, 50, 92], [1, 0, 100], [1, 50, 100]]);
  });

  test("page numbers in words", () => {
    expect(pagesInWords([3])).toBe("page 3");
    expect(pagesInWords([2, 3])).toBe("pages 2, 3");
    expect(pagesInWords([2, 3, 4, 7, 9, 10])).toBe("pages 2 to 4, 7, 9, 10");
  });

  test("every name of the trade has its place on the shoe", () => {
    const names = ["upper", "upper, net", "vamp", "inner quarter", "outer quarter", "lining", "vamp lining", "heel pocket", "toe puff", "stiffener", "insole", "second insole board", "shank", "bottom filler", "outsole", "split lift", "lift 1", "top piece", "sock", "instep strap", "elastic gore", "bow", "topline binding", "back strip", "toe cap"];
    expect(names.filter((n) => !partOf(n))).toEqual([]);
    expect(partOf("toe cap")!.from).toBeGreaterThan(0.5);
    expect(partOf("second insole board")!.to).toBeLessThan(1);
    expect(partOf("heel pocket")!.to).toBeLessThan(0.4);
  });
});

import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { usualSheets, type SheetChoices } from "#sheets/choices.ts";
import { pageTitles } from "#sheets/pdf/pattern-pdf.ts";
import { ring } from "#sheets/piece-drawing.ts";
import { printed, printPlan } from "#sheets/print-plan.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { tilingOf } from "#sheets/tiling.ts";
import { pdfLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";
import { samplePiece, samplePieces } from "../support/sample-pieces.ts";

const pieces = samplePieces();
function planned(change: Partial<SheetChoices>) {
  const { sheet } = printPlan(pieces, { ...usualSheets, ...change });
  const tiling = tilingOf(sheet, sheet.placed.map((p) => [ring(p.outline)]));
  return { sheet, tiling, piecesOn: tiling.tiles.map((_, t) => sheet.placed.filter((_, i) => tiling.tilesOfPiece[i]!.includes(t)).map((p) => p.piece)) };
}

describe("sets", () => {
  test("cards alone, what is cut alone, or both", () => {
    const names = (change: Partial<SheetChoices>) => planned(change).sheet.placed.map((p) => p.piece);
    expect(names({ sets: "net" })).toEqual(pieces.filter((p) => p.material === "card"));
    expect(names({ sets: "cutting" })).toEqual(pieces.filter((p) => p.material !== "card"));
    expect(names({ sets: "both" })).toEqual(pieces);
  });

  test("the card that the shank is bent on belongs to what is cut: it is not laid on the last", () => {
    const bend = samplePiece("shank bend", "right", "card", [[0, 0], [100, 0], [100, 25], [0, 25]], [], true);
    expect(printed([...pieces, bend], { ...usualSheets, sets: "cutting" })).toContain(bend);
    expect(printed([...pieces, bend], { ...usualSheets, sets: "net" })).not.toContain(bend);
  });

  test.each(["A4", "Letter", "A3", "A2", "roll"] as const)("never share a page, cards come first, and every page says its set: %s", (paper) => {
    const { sheet, tiling, piecesOn } = planned({ paper });
    const sets = piecesOn.map((here) => new Set(here.map((p) => (p.material === "card" ? "card set" : "cutting set"))));
    for (const set of sets) expect(set.size).toBe(1);
    const words = sets.flatMap((s) => [...s]);
    expect(words).toEqual([...words].sort());
    expect(pageTitles(sheet, tiling).map((t) => t.set)).toEqual(words);
  });

  test("a set without pieces is said to be empty, and nothing fails", async () => {
    const files = await sheetsOf(samplePair({ pieces: pieces.filter((p) => p.material !== "card"), choices: { ...usualSheets, sets: "net" } }), unwatched);
    const pages = await pdfLines(files.find((f) => f.name === "pattern.pdf")!.bytes);
    expect(pages).toHaveLength(1);
    expect(pages[0]!.text.join(" ")).toContain("No piece belongs to the set that was chosen");
  });

  test("are printed on the pages", async () => {
    const files = await sheetsOf(samplePair(), unwatched);
    const [, ...pages] = await pdfLines(files.find((f) => f.name === "pattern.pdf")!.bytes);
    for (const { text } of pages) expect(text.some((t) => /^(card|cutting) set, /.test(t))).toBe(true);
  });
});

describe("every piece on a page of its own", () => {
  test.each(["A4", "A3", "roll"] as const)("%s: all pieces are there, no page shows two, pages follow the order of the pieces", (paper) => {
    const { sheet, tiling, piecesOn } = planned({ paper, onePage: true });
    expect(sheet.placed.map((p) => p.piece)).toEqual(pieces);
    for (const here of piecesOn) expect(here).toHaveLength(1);
    const first = tiling.tilesOfPiece.map((tiles) => tiles[0]!);
    expect(first).toEqual([...first].sort((a, b) => a - b));
    // Pages of one piece follow one another.
    for (const tiles of tiling.tilesOfPiece) expect(tiles).toEqual(tiles.map((_, k) => tiles[0]! + k));
  });

  test("a page is titled with its piece, and where the piece needs several with which of them it is", () => {
    const { sheet, tiling } = planned({ onePage: true });
    const titles = pageTitles(sheet, tiling).map((t) => t.shows);
    expect(titles.slice(0, 2)).toEqual(["upper, net, right, sheet 1 of 2", "upper, net, right, sheet 2 of 2"]);
    expect(titles).toContain("insole, left");
    expect(new Set(titles).size).toBe(titles.length);
  });
});

describe("wide paper", () => {
  test("has fewer joints: none on A3, where an upper is narrower than the page", () => {
    const joints = (paper: SheetChoices["paper"]) => planned({ paper }).tiling.joints.length;
    expect(joints("A4")).toBeGreaterThan(0);
    expect(joints("A3")).toBe(0);
    expect(joints("A2")).toBe(0);
    expect(planned({ paper: "A2" }).tiling.tiles.length).toBeLessThan(planned({ paper: "A3" }).tiling.tiles.length);
  });
});

import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { edgeMm } from "#sheets/best-place.ts";
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

  test("the plan counts the pieces that are printed", () => {
    for (const sets of ["both", "net", "cutting"] as const) {
      const plan = printPlan(pieces, { ...usualSheets, sets });
      expect(plan.pieces).toBe(plan.sheet.placed.length);
    }
    expect(printPlan(pieces, { ...usualSheets, sets: "net" }).pieces).toBe(pieces.filter((p) => p.material === "card").length);
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

describe("a piece on its own page", () => {
  // A sole nearly as long as the window reaches into the strip that its page shares with the next one below: the small piece
  // that comes after it in the same column must not step aside for it.
  test.each(["A4", "Letter", "A3", "roll"] as const)("lies in its corner, whatever lies on the pages beside it: %s", (paper) => {
    const { grid } = printPlan(pieces, { ...usualSheets, paper }).sheet;
    const long = samplePiece("long", "right", "sole leather", [[0, 0], [Math.min(grid.windowHeightMm, 400) - 4, 0], [Math.min(grid.windowHeightMm, 400) - 4, grid.windowWidthMm - 4], [0, grid.windowWidthMm - 4]]);
    const lift = samplePiece("lift 1", "right", "heel leather", [[0, 0], [70, 0], [70, 60], [0, 60]]);
    const { sheet } = printPlan([long, lift, long, lift, lift, long, lift, lift, long, lift], { ...usualSheets, paper, onePage: true });
    const tiling = tilingOf(sheet, sheet.placed.map((p) => [ring(p.outline)]));
    sheet.placed.forEach(({ bounds: b }, i) => {
      const tile = tiling.tiles[tiling.tilesOfPiece[i]![0]!]!;
      expect(tiling.tilesOfPiece[i]).toHaveLength(1);
      expect(b.minX - tile.xMm).toBeCloseTo(edgeMm, 1);
      expect(tile.yMm + tile.heightMm - b.maxY).toBeCloseTo(edgeMm, 1);
    });
    const boxes = sheet.placed.map((p) => p.bounds);
    for (const [i, a] of boxes.entries()) for (const b of boxes.slice(i + 1)) expect(Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY)).toBeGreaterThan(0);
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

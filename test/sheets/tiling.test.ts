import { describe, expect, test } from "vitest";
import { arrange } from "#sheets/arrange.ts";
import { edgeMm } from "#sheets/best-place.ts";
import { stepsOf } from "#sheets/page-grid.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import { ring } from "#sheets/piece-drawing.ts";
import { tilingOf } from "#sheets/tiling.ts";
import { samplePieces, sampleRectangle } from "../support/sample-pieces.ts";

const grid = gridOf(papers.A4);
const tiled = (pieces: Parameters<typeof arrange>[0]) => {
  const sheet = arrange(pieces, grid);
  return { sheet, tiling: tilingOf(sheet, sheet.placed.map((p) => [ring(p.outline)])) };
};

describe("pages of the pattern", () => {
  test("every point of every outline lies in the window of a page of that piece", () => {
    const { sheet, tiling } = tiled(samplePieces());
    sheet.placed.forEach(({ outline }, i) => {
      for (let k = 0; k < outline.length; k += 2) {
        const x = outline[k]!, y = outline[k + 1]!;
        const shown = tiling.tilesOfPiece[i]!.some((t) => {
          const tile = tiling.tiles[t]!;
          return x >= tile.xMm && x <= tile.xMm + grid.windowWidthMm && y >= tile.yMm && y <= tile.yMm + grid.windowHeightMm;
        });
        expect(shown).toBe(true);
      }
    });
  });

  test("a page that lies wholly inside a large piece carries no ink and is left out", () => {
    // 3 × 3 pages, the middle one blank.
    const step = stepsOf(grid);
    const { tiling } = tiled([sampleRectangle("board", 2.9 * step.x, 2.9 * step.y)]);
    expect(tiling.tiles).toHaveLength(8);
    expect(tiling.tiles.some((t) => t.column === 1 && t.row === 1)).toBe(false);
  });

  test("a piece that just fills a page needs one, a hair more needs two", () => {
    // As much as the window less the blank edge on both sides.
    const width = grid.windowWidthMm - 2 * edgeMm, height = grid.windowHeightMm - 2 * edgeMm;
    expect(tiled([sampleRectangle("full", width, height)]).tiling.tiles).toHaveLength(1);
    expect(tiled([sampleRectangle("over", width + 2 * edgeMm + 0.1, height)]).tiling.tiles).toHaveLength(2);
  });

  test("pages of one piece hang together by joints, pages of pieces apart do not", () => {
    const { tiling } = tiled([sampleRectangle("long", 400, 100), sampleRectangle("small", 150, 250)]);
    const [long, small] = tiling.tilesOfPiece as [readonly number[], readonly number[]];
    expect(long.length).toBeGreaterThan(1);
    expect(tiling.joints).toHaveLength(long.length - 1);
    if (!long.includes(small[0]!)) expect(tiling.tiles[small[0]!]!.group).not.toBe(tiling.tiles[long[0]!]!.group);
  });
});

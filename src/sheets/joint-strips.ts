import type { CommonSheet, PlacedPiece } from "./arrange.ts";
import { pageSpan, stepsOf } from "./page-grid.ts";
import type { Box } from "./room.ts";

/** The strips through a piece that two of its pages share, over the whole sheet: words keep off them where they can. */
export function jointStrips({ grid, widthMm, heightMm }: CommonSheet, { bounds: b }: PlacedPiece): readonly Box[] {
  const step = stepsOf(grid);
  const [c0, c1] = pageSpan(b.minX, b.maxX, grid.windowWidthMm, grid.overlapMm);
  const [r0, r1] = pageSpan(heightMm - b.maxY, heightMm - b.minY, grid.windowHeightMm, grid.overlapMm);
  const strips: Box[] = [];
  for (let c = c0 + 1; c <= c1; c++) strips.push({ x: c * step.x, y: 0, width: grid.overlapMm, height: heightMm });
  for (let r = r0 + 1; r <= r1; r++) strips.push({ x: 0, y: heightMm - r * step.y - grid.overlapMm, width: widthMm, height: grid.overlapMm });
  return strips;
}

import type { CommonSheet } from "./arrange.ts";
import { stepsOf } from "./page-grid.ts";
import type { Box } from "./room.ts";

/** The strips that two neighbouring pages share, on the whole sheet: large words keep off them. */
export function jointStrips(sheet: CommonSheet): readonly Box[] {
  const { grid, widthMm, heightMm, columns, rows } = sheet;
  const step = stepsOf(grid);
  const strips: Box[] = [];
  for (let c = 1; c < columns; c++) strips.push({ x: c * step.x, y: 0, width: grid.overlapMm, height: heightMm });
  for (let r = 1; r < rows; r++) strips.push({ x: 0, y: heightMm - r * step.y - grid.overlapMm, width: widthMm, height: grid.overlapMm });
  return strips;
}

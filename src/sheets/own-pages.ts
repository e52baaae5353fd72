import { bestPlace, widestColumns, seen, type Try } from "./best-place.ts";
import { spansOf, stepsOf } from "./page-grid.ts";
import type { Grid } from "./paper.ts";
import type { Turned } from "./turns.ts";

/**
 * Each piece in the upper left corner of pages of its own, in the order given, row by row of the sheet. Where a piece reaches into
 * the strip that its last page shares with the next, that page is left blank: so no piece has to make way for another.
 */
export function eachAlone(turns: readonly (readonly Turned[])[], grid: Grid): readonly Try[] {
  const step = stepsOf(grid);
  let column = 0, row = 0, rowHigh = 0;
  return turns.map((tries) => {
    const own = bestPlace(tries, [], new Map(), () => false, grid);
    const [wide, high] = cellsOf(own, grid);
    if (column > 0 && column + wide > widestColumns) {
      row += rowHigh;
      column = rowHigh = 0;
    }
    const at = { ...own, left: own.left + column * step.x, top: own.top + row * step.y };
    column += wide;
    rowHigh = Math.max(rowHigh, high);
    return at;
  });
}

/** Pages across and down that a piece keeps from others. */
function cellsOf(own: Try, grid: Grid): readonly [number, number] {
  const box = seen(own);
  const step = stepsOf(grid);
  const { columns, rows } = spansOf(box, grid);
  const beyond = (end: number, page: number, size: number) => (end > (page + 1) * size ? 2 : 1);
  return [columns[1] + beyond(box.left + box.width, columns[1], step.x), rows[1] + beyond(box.top + box.height, rows[1], step.y)];
}

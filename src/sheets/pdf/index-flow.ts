import type { IndexItem } from "./index-items.ts";

/** A block with its place: page from 0, upper left corner on the paper, mm. */
export interface Flowed {
  readonly item: IndexItem;
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Columns of a page, the first page's beginning lower and ending higher than the others', mm. */
export interface Columns {
  readonly columns: number;
  readonly left: number;
  readonly step: number;
  readonly width: number;
  readonly top: number;
  readonly low: number;
  readonly firstTop: number;
  readonly firstLow: number;
}

/** Blocks one below the other, column by column, page by page. A heading stays with what follows it. */
export function flowed(items: readonly IndexItem[], { columns, left, step, width, top, low, firstTop, firstLow }: Columns): readonly Flowed[] {
  let page = 0, column = 0, y = firstTop;
  return items.map((item, i) => {
    const next = items[i + 1];
    const needed = item.heightMm + (item.heading && next ? next.heightMm : 0);
    if (y - needed < (page === 0 ? firstLow : low) && y < (page === 0 ? firstTop : top)) {
      column++;
      if (column === columns) {
        column = 0;
        page++;
      }
      y = page === 0 ? firstTop : top;
    }
    const at = { item, page, x: left + column * step, y, width };
    y -= item.heightMm;
    return at;
  });
}

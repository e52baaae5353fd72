import type { Grid } from "./paper.ts";

/** A page's place in the grid; row 0 at the top. */
export interface Cell {
  readonly column: number;
  readonly row: number;
}
export const keyOf = ({ column, row }: Cell): string => `${column},${row}`;
export const parseKey = (key: string): Cell => {
  const [column, row] = key.split(",").map(Number);
  return { column: column!, row: row! };
};

/** From the corner of one page's window to the next. */
export function stepsOf(grid: Grid): { readonly x: number; readonly y: number } {
  return { x: grid.windowWidthMm - grid.overlapMm, y: grid.windowHeightMm - grid.overlapMm };
}

/** First and last page along one axis for what runs from `from` to `to`: the first that shows its beginning whole. */
export function pageSpan(from: number, to: number, window: number, overlap: number): readonly [number, number] {
  const step = window - overlap;
  const first = Math.max(0, Math.floor(from / step + 1e-9));
  return [first, Math.max(first, Math.ceil((to - window) / step - 1e-9))];
}

export interface Spans {
  readonly columns: readonly [number, number];
  readonly rows: readonly [number, number];
}

/** Pages under a box measured from the sheet's top left corner downward, mm. */
export function spansOf(b: { readonly left: number; readonly top: number; readonly width: number; readonly height: number }, grid: Grid): Spans {
  return {
    columns: pageSpan(b.left, b.left + b.width, grid.windowWidthMm, grid.overlapMm),
    rows: pageSpan(b.top, b.top + b.height, grid.windowHeightMm, grid.overlapMm),
  };
}

/**
 * The pages that own ink: every point of a stroke is owned by the one page, among the spans, that begins before it. Where they
 * would not hang together, all pages of the spans. Strokes x0 y0 …, mm, y up; a point lies on the sheet at x + `right`,
 * `down` − y from its top left corner. `every` is how finely strokes are walked, mm.
 */
export function inkPages(strokes: readonly Float64Array[], right: number, down: number, { columns: [c0, c1], rows: [r0, r1] }: Spans, grid: Grid, every: number): ReadonlySet<string> {
  const all: Cell[] = [];
  for (let row = r0; row <= r1; row++) for (let column = c0; column <= c1; column++) all.push({ column, row });
  if (all.length === 1) return new Set(all.map(keyOf));
  const step = stepsOf(grid);
  const wide = c1 - c0 + 1;
  const inked = new Uint8Array(all.length);
  for (const xy of strokes) {
    for (let i = 0; i + 3 < xy.length; i += 2) {
      const dx = xy[i + 2]! - xy[i]!, dy = xy[i + 3]! - xy[i + 1]!;
      const parts = Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy)) / every));
      for (let k = 0; k <= parts; k++) {
        const x = xy[i]! + (dx * k) / parts + right, y = down - xy[i + 1]! - (dy * k) / parts;
        const column = Math.min(c1, Math.max(c0, Math.floor(x / step.x))), row = Math.min(r1, Math.max(r0, Math.floor(y / step.y)));
        inked[(row - r0) * wide + column - c0] = 1;
      }
    }
  }
  const found = new Set(all.filter((_, i) => inked[i] === 1).map(keyOf));
  return hangsTogether(found) ? found : new Set(all.map(keyOf));
}

const neighbours = ({ column, row }: Cell): readonly string[] => [
  keyOf({ column: column + 1, row }),
  keyOf({ column: column - 1, row }),
  keyOf({ column, row: row + 1 }),
  keyOf({ column, row: row - 1 }),
];

/** Whether the pages are one patch, so that they can be joined edge to edge. */
function hangsTogether(pages: ReadonlySet<string>): boolean {
  const [start] = pages;
  if (start === undefined) return true;
  const seen = new Set([start]);
  const todo = [start];
  for (let page = todo.pop(); page !== undefined; page = todo.pop()) {
    for (const next of neighbours(parseKey(page))) {
      if (pages.has(next) && !seen.has(next)) {
        seen.add(next);
        todo.push(next);
      }
    }
  }
  return seen.size === pages.size;
}

import { pageSpan, stepsOf, type CommonSheet, type PlacedPiece } from "./arrange.ts";

/** One page of the pattern: its place in the grid (row 0 at the top) and the lower left corner of its window on the sheet, mm. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly xMm: number;
  readonly yMm: number;
  /** Pages with the same group are joined to one; each group is joined by itself. */
  readonly group: number;
}

/** Two neighbouring pages to be joined: the second is laid on the first, to the right of it or below it. Indices into `tiles`. */
export interface Joint {
  readonly under: number;
  readonly over: number;
  readonly runs: "upright" | "level";
}

export interface Tiling {
  /** Only pages that carry ink, group by group, each row by row. */
  readonly tiles: readonly Tile[];
  readonly joints: readonly Joint[];
  /** For each placed piece the tiles it lies on, as indices. */
  readonly tilesOfPiece: readonly (readonly number[])[];
}

/** `ink[i]` are the strokes that belong to piece i on the sheet, x0 y0 …; a closed one repeats its first point. */
export function tilingOf(sheet: CommonSheet, ink: readonly (readonly Float64Array[])[]): Tiling {
  const keys = sheet.placed.map((p, i) => [...pagesWithInk(sheet, p, ink[i]!)]);
  const groups = groupsOf(keys);
  const all = [...new Set(keys.flat())].map(parse);
  const first = new Map<number, number>();
  const byRow = (a: Cell, b: Cell) => a.row - b.row || a.column - b.column;
  all.sort(byRow).forEach((c, i) => {
    const g = groups.get(keyOf(c))!;
    if (!first.has(g)) first.set(g, i);
  });
  all.sort((a, b) => first.get(groups.get(keyOf(a))!)! - first.get(groups.get(keyOf(b))!)! || byRow(a, b));
  const step = stepsOf(sheet.grid);
  const numbers = [...new Set(all.map((c) => groups.get(keyOf(c))!))];
  const tiles = all.map((c): Tile => ({
    ...c,
    xMm: c.column * step.x,
    yMm: sheet.heightMm - c.row * step.y - sheet.grid.windowHeightMm,
    group: numbers.indexOf(groups.get(keyOf(c))!),
  }));
  const index = new Map(tiles.map((t, i) => [keyOf(t), i]));
  return { tiles, joints: jointsOf(tiles, index), tilesOfPiece: keys.map((ks) => ks.map((k) => index.get(k)!).sort((a, b) => a - b)) };
}

interface Cell {
  readonly column: number;
  readonly row: number;
}
const keyOf = ({ column, row }: Cell): string => `${column},${row}`;
const parse = (key: string): Cell => {
  const [column, row] = key.split(",").map(Number);
  return { column: column!, row: row! };
};

/** The pages that own ink of a piece: every point of a stroke is owned by the one page that begins before it. */
function pagesWithInk(sheet: CommonSheet, { bounds: b }: PlacedPiece, strokes: readonly Float64Array[]): ReadonlySet<string> {
  const { grid, heightMm } = sheet;
  const step = stepsOf(grid);
  const [c0, c1] = pageSpan(b.minX, b.maxX, grid.windowWidthMm, grid.overlapMm);
  const [r0, r1] = pageSpan(heightMm - b.maxY, heightMm - b.minY, grid.windowHeightMm, grid.overlapMm);
  const owner = (x: number, y: number): Cell => ({
    column: Math.min(c1, Math.max(c0, Math.floor(x / step.x))),
    row: Math.min(r1, Math.max(r0, Math.floor((heightMm - y) / step.y))),
  });
  const found = new Set<string>();
  for (const xy of strokes) {
    for (let i = 0; i + 3 < xy.length; i += 2) {
      const dx = xy[i + 2]! - xy[i]!, dy = xy[i + 3]! - xy[i + 1]!;
      const parts = Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy))));
      for (let k = 0; k <= parts; k++) found.add(keyOf(owner(xy[i]! + (dx * k) / parts, xy[i + 1]! + (dy * k) / parts)));
    }
  }
  if (hangsTogether(found)) return found;
  for (let row = r0; row <= r1; row++) for (let column = c0; column <= c1; column++) found.add(keyOf({ column, row }));
  return found;
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
    for (const next of neighbours(parse(page))) {
      if (pages.has(next) && !seen.has(next)) {
        seen.add(next);
        todo.push(next);
      }
    }
  }
  return seen.size === pages.size;
}

/** Pages that share a piece belong together; the number of a group is arbitrary. */
function groupsOf(keys: readonly (readonly string[])[]): ReadonlyMap<string, number> {
  const group = new Map<string, number>();
  keys.forEach((pages, i) => {
    const meets = new Set(pages.map((p) => group.get(p)).filter((g) => g !== undefined));
    for (const p of pages) group.set(p, i);
    for (const [p, g] of group) if (meets.has(g)) group.set(p, i);
  });
  return group;
}

function jointsOf(tiles: readonly Tile[], index: ReadonlyMap<string, number>): readonly Joint[] {
  const joints: Joint[] = [];
  tiles.forEach((tile, under) => {
    const right = index.get(keyOf({ column: tile.column + 1, row: tile.row }));
    const below = index.get(keyOf({ column: tile.column, row: tile.row + 1 }));
    if (right !== undefined && tiles[right]!.group === tile.group) joints.push({ under, over: right, runs: "upright" });
    if (below !== undefined && tiles[below]!.group === tile.group) joints.push({ under, over: below, runs: "level" });
  });
  return joints;
}

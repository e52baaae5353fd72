import type { CommonSheet, PlacedPiece } from "./arrange.ts";
import { edgeMm } from "./best-place.ts";
import { inkPages, keyOf, pageSpan, parseKey, stepsOf, type Cell } from "./page-grid.ts";
import { leastRolledMm } from "./print-paper.ts";

/** One page of the pattern: its place in the grid (row 0 at the top) and the lower left corner of its window on the sheet, mm. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly xMm: number;
  readonly yMm: number;
  /** Height of its window, mm: of a page from a roll only as much as its pieces need. */
  readonly heightMm: number;
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
  /** Only pages that carry ink, batch by batch, in each group by group, in each row by row. */
  readonly tiles: readonly Tile[];
  readonly joints: readonly Joint[];
  /** For each placed piece the tiles it lies on, as indices. */
  readonly tilesOfPiece: readonly (readonly number[])[];
}

/** `ink[i]` are the strokes that belong to piece i on the sheet, x0 y0 …; a closed one repeats its first point. */
export function tilingOf(sheet: CommonSheet, ink: readonly (readonly Float64Array[])[]): Tiling {
  const keys = sheet.placed.map((p, i) => [...pagesWithInk(sheet, p, ink[i]!)]);
  const groups = groupsOf(keys);
  const all = [...new Set(keys.flat())].map(parseKey);
  const first = new Map<number, number>();
  const byRow = (a: Cell, b: Cell) => a.row - b.row || a.column - b.column;
  all.sort(byRow).forEach((c, i) => {
    const g = groups.get(keyOf(c))!;
    if (!first.has(g)) first.set(g, i);
  });
  const batchOf = new Map(keys.flatMap((pages, i) => pages.map((page) => [page, sheet.placed[i]!.batch] as const)));
  all.sort((a, b) => batchOf.get(keyOf(a))! - batchOf.get(keyOf(b))! || first.get(groups.get(keyOf(a))!)! - first.get(groups.get(keyOf(b))!)! || byRow(a, b));
  const step = stepsOf(sheet.grid);
  const numbers = [...new Set(all.map((c) => groups.get(keyOf(c))!))];
  const tiles = all.map((c): Tile => {
    const group = groups.get(keyOf(c))!;
    const heightMm = sheet.grid.roll ? shownHeight(sheet, c, (i) => keys[i]!.some((k) => groups.get(k) === group)) : sheet.grid.windowHeightMm;
    return { ...c, xMm: c.column * step.x, yMm: sheet.heightMm - c.row * step.y - heightMm, heightMm, group: numbers.indexOf(group) };
  });
  const index = new Map(tiles.map((t, i) => [keyOf(t), i]));
  return { tiles, joints: jointsOf(tiles, index), tilesOfPiece: keys.map((ks) => ks.map((k) => index.get(k)!).sort((a, b) => a - b)) };
}

/** How far down a page from a roll reaches for the pieces of its group, whole mm; joined pages are alike in height. */
function shownHeight({ placed, heightMm, grid }: CommonSheet, { row }: Cell, ofGroup: (piece: number) => boolean): number {
  const top = heightMm - row * stepsOf(grid).y;
  const lowest = Math.min(...placed.flatMap((p, i) => (ofGroup(i) ? [p.bounds.minY] : [])));
  return Math.max(leastRolledMm, Math.min(grid.windowHeightMm, Math.ceil(top - lowest + edgeMm)));
}

/** The pages that own ink of a piece. */
function pagesWithInk({ grid, heightMm }: CommonSheet, { bounds: b }: PlacedPiece, strokes: readonly Float64Array[]): ReadonlySet<string> {
  const spans = {
    columns: pageSpan(b.minX, b.maxX, grid.windowWidthMm, grid.overlapMm),
    rows: pageSpan(heightMm - b.maxY, heightMm - b.minY, grid.windowHeightMm, grid.overlapMm),
  };
  return inkPages(strokes, 0, heightMm, spans, grid, 1);
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

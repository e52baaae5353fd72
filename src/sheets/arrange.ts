import { must } from "#base/bug.ts";
import type { Piece } from "#pieces/piece.ts";
import { bounds, type Bounds } from "#plane/measure.ts";
import { bestPlace, edgeMm, gapMm, insetMm, pagesOf, seen, type Try } from "./best-place.ts";
import { eachAlone } from "./own-pages.ts";
import { keyOf, spansOf, stepsOf } from "./page-grid.ts";
import { pagesAlong, type Grid } from "./paper.ts";
import { less } from "./place-starts.ts";
import { turnedXy, turnsOf, type Turned } from "./turns.ts";

/** Where a piece lies on the common sheet: sheet = turned by `rotationDeg` counter-clockwise, then moved by (xMm, yMm); y up. */
export interface PiecePlace {
  readonly xMm: number;
  readonly yMm: number;
  /** Whole degrees, from 0 and below 180. */
  readonly rotationDeg: number;
}

export interface PlacedPiece {
  readonly piece: Piece;
  /** Pieces of different batches never share a page. */
  readonly batch: number;
  readonly place: PiecePlace;
  /** The cutting line on the sheet, x0 y0 …, mm, y up. */
  readonly outline: Float64Array;
  readonly bounds: Bounds;
}

/** All pieces of the pair on one large sheet, lower left corner at the origin, mm; `columns × rows` windows of pages. */
export interface CommonSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly grid: Grid;
  readonly placed: readonly PlacedPiece[];
}

/** Turns and moves points by a place. Quarter turns are exact. */
export function placedXy(xy: Float64Array, { xMm, yMm, rotationDeg }: PiecePlace): Float64Array {
  return turnedXy(xy, rotationDeg).map((v, i) => v + (i % 2 === 0 ? xMm : yMm));
}

/** A point of the piece on the sheet. */
export function onSheet(at: readonly [number, number], { place }: PlacedPiece): readonly [number, number] {
  const [x, y] = placedXy(Float64Array.from(at), place);
  return [x!, y!];
}

/**
 * Lays all pieces on a common sheet, each upright, turned by a quarter, or turned as it needs fewer pages: largest first, each
 * where it needs the fewest new pages and joints, then nearest to the top and the left. What is called largest is tried in two
 * ways, and the sheet with the fewest pages and joints kept. Same pieces, same places. `batches` keeps pieces apart, page
 * by page; without it all are of one; where each piece is one, each has pages of its own and lies in their corner.
 * Method and limits: docs/method/sheets.md.
 */
export function arrange(pieces: readonly Piece[], asked: Grid, batches?: readonly number[]): CommonSheet {
  const batch = (i: number): number => batches?.[i] ?? 0;
  const alone = pieces.length > 1 && new Set(batches).size === pieces.length;
  const grid = asked.roll && alone ? cutToLength(asked, pieces) : asked;
  const turns = pieces.map((p) => turnsOf(p, grid, edgeMm));
  const chosen = alone ? eachAlone(turns, grid) : bestOrder(pieces.map((p) => extentOf(bounds(p.outline))), turns, batch, grid);
  const step = stepsOf(grid);
  const columns = Math.max(1, ...chosen.map((b) => pagesAlong(b.left + b.width - insetMm, grid.windowWidthMm, grid.overlapMm)));
  const rows = Math.max(1, ...chosen.map((b) => pagesAlong(b.top + b.height - insetMm, grid.windowHeightMm, grid.overlapMm)));
  const widthMm = columns * step.x + grid.overlapMm;
  // A roll's pages end where the last piece does.
  const shown = grid.roll && rows === 1 ? Math.ceil(Math.max(0, ...chosen.map(endOf))) : undefined;
  const heightMm = shown ?? rows * step.y + grid.overlapMm;
  const placed = pieces.map((piece, i) => settle(piece, batch(i), chosen[i]!, heightMm));
  return { widthMm, heightMm, columns, rows, grid: shown ? { ...grid, windowHeightMm: shown } : grid, placed };
}

/** What "largest first" may mean, of width and height: by the area of the box, or by its shorter side. */
const largest: readonly ((extent: Extent) => number)[] = [([w, h]) => w * h, ([w, h]) => Math.min(w, h)];

/** The places of the order that costs least: pages and joints, and of a roll the length of its pages. */
function bestOrder(extents: readonly Extent[], turns: readonly (readonly Turned[])[], batch: (i: number) => number, grid: Grid): readonly Try[] {
  let best: Laid | undefined;
  for (const size of largest) {
    const order = extents.map((_, i) => i).sort((a, b) => batch(a) - batch(b) || size(extents[b]!) - size(extents[a]!) || a - b);
    const laid = laidBy(order, turns, batch, grid);
    if (!best || less([laid.cost, laid.lengthMm], [best.cost, best.lengthMm])) best = laid;
  }
  must(best, "no order of the pieces");
  return best.chosen;
}

interface Laid {
  /** For each piece its place. */
  readonly chosen: readonly Try[];
  readonly cost: number;
  /** Paper from a roll that is used, mm. */
  readonly lengthMm: number;
}

function laidBy(order: readonly number[], turns: readonly (readonly Turned[])[], batch: (i: number) => number, grid: Grid): Laid {
  /** Which piece's pages each page belongs to: pages that share a piece have to be joined. */
  const groupOf = new Map<string, number>();
  const taken: Try[] = [];
  const chosen: Try[] = turns.map(() => undefined!);
  let cost = 0;
  for (const i of order) {
    const foreign = (page: string): boolean => groupOf.has(page) && batch(groupOf.get(page)!) !== batch(i);
    const best = bestPlace(turns[i]!, taken, groupOf, foreign, grid);
    chosen[i] = best;
    taken.push(best);
    cost += best.cost;
    const pages = pagesOf(best, spansOf(seen(best), grid), grid);
    const merged = new Set(pages.map((p) => groupOf.get(p)));
    for (const [page, group] of groupOf) if (merged.has(group)) groupOf.set(page, i);
    for (const page of pages) groupOf.set(page, i);
  }
  return { chosen, cost: Math.round(cost * 1e6) / 1e6, lengthMm: grid.roll ? lengthOf(chosen, grid) : 0 };
}

/** The length of all pages of a roll, mm: each ends where its lowest piece does. */
function lengthOf(chosen: readonly Try[], grid: Grid): number {
  const ends = new Map<string, number>();
  for (const one of chosen) {
    const { columns: [c], rows: [r] } = spansOf(seen(one), grid);
    const key = keyOf({ column: c, row: r });
    ends.set(key, Math.max(ends.get(key) ?? 0, endOf(one) - r * stepsOf(grid).y));
  }
  return Math.round([...ends.values()].reduce((sum, mm) => sum + mm, 0));
}

/** The lower end of what is seen of a place, mm from the sheet's top. */
const endOf = ({ top, height }: Try): number => top + height - insetMm;

/** The window of a roll's pages where no piece shares one: as high as the longest piece, so that the sheet does not grow to the sky. */
function cutToLength(grid: Grid, pieces: readonly Piece[]): Grid {
  const longest = Math.max(...pieces.map(({ outline }) => Math.max(...extentOf(bounds(outline)))));
  return { ...grid, windowHeightMm: Math.min(grid.windowHeightMm, Math.ceil(longest) + 2 * gapMm) };
}

type Extent = readonly [width: number, height: number];
const extentOf = (b: Bounds): Extent => [b.maxX - b.minX, b.maxY - b.minY];

function settle(piece: Piece, batch: number, at: Try, sheetHeightMm: number): PlacedPiece {
  const { box, rotationDeg } = at.turned;
  // Lower left corner of the piece on the sheet, y up; rounded so that places are short in every file.
  const x = Math.round((at.left + gapMm) * 100) / 100;
  const y = Math.round((sheetHeightMm - at.top - at.height + gapMm) * 100) / 100;
  const place: PiecePlace = { xMm: Math.round((x - box.minX) * 1000) / 1000, yMm: Math.round((y - box.minY) * 1000) / 1000, rotationDeg };
  const outline = placedXy(piece.outline.xy, place);
  return { piece, batch, place, outline, bounds: bounds({ xy: outline }) };
}

import { must } from "#base/bug.ts";
import type { Piece } from "#pieces/piece.ts";
import { bounds, type Bounds } from "#plane/measure.ts";
import { inkPages, keyOf, spansOf, stepsOf, type Spans } from "./page-grid.ts";
import { pagesAlong, type Grid } from "./paper.ts";
import { less, overlap, starts, type Box } from "./place-starts.ts";
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

/** Free paper round each piece, mm. */
export const gapMm = 2.5;
/** Free paper between a piece and the edge of a page's window, mm: beyond it the paper is blank anyway. */
export const edgeMm = 1;
/** By how much the box of a piece with its gap may stand over the window. */
const insetMm = gapMm - edgeMm;
/** The sheet grows downward beyond this many pages in a row, so that its thumbnail stays readable. */
const widestColumns = 4;
/** A joint through a piece costs the maker a little more than a further page. */
const jointCost = 1.2;
/** Each page by which pages to be joined grow together over those of any one piece. */
const growthCost = 0.45;
/** A patch of more pages than this is a burden to join and to handle: there growing costs more. */
const easyPages = 6;
const burdenCost = 0.8;
/** A mark or a word through which a joint would run. */
const markCost = 0.06;

/** Turns and moves points by a place. Quarter turns are exact. */
export function placedXy(xy: Float64Array, { xMm, yMm, rotationDeg }: PiecePlace): Float64Array {
  return turnedXy(xy, rotationDeg).map((v, i) => v + (i % 2 === 0 ? xMm : yMm));
}

/** A point of the piece on the sheet. */
export function onSheet(at: readonly [number, number], { place }: PlacedPiece): readonly [number, number] {
  const [x, y] = placedXy(Float64Array.from(at), place);
  return [x!, y!];
}

interface Try extends Box {
  readonly turned: Turned;
}

/**
 * Lays all pieces on a common sheet, each upright, turned by a quarter, or turned as it needs fewer pages: largest first, each
 * where it needs the fewest new pages and joints, then nearest to the top and the left. Same pieces, same places. `batches`
 * keeps pieces apart, page by page; without it all are of one.
 * Method and limits: docs/method/sheets.md.
 */
export function arrange(pieces: readonly Piece[], asked: Grid, batches?: readonly number[]): CommonSheet {
  const boxes = pieces.map((p) => bounds(p.outline));
  const batch = (i: number): number => batches?.[i] ?? 0;
  const grid = asked.roll ? cutToLength(asked, pieces, batches) : asked;
  const order = pieces.map((_, i) => i).sort((a, b) => batch(a) - batch(b) || areaOf(boxes[b]!) - areaOf(boxes[a]!) || a - b);
  /** Which piece's pages each page belongs to: pages that share a piece have to be joined. */
  const groupOf = new Map<string, number>();
  const taken: Box[] = [];
  const chosen = new Map<number, Try>();
  for (const i of order) {
    const foreign = (page: string): boolean => groupOf.has(page) && batch(groupOf.get(page)!) !== batch(i);
    const best = bestPlace(turnsOf(pieces[i]!, grid, edgeMm), taken, groupOf, foreign, grid);
    chosen.set(i, best);
    taken.push(best);
    const pages = pagesOf(best, spansOf(seen(best), grid), grid);
    const merged = new Set(pages.map((p) => groupOf.get(p)));
    for (const [page, group] of groupOf) if (merged.has(group)) groupOf.set(page, i);
    for (const page of pages) groupOf.set(page, i);
  }
  const step = stepsOf(grid);
  const columns = Math.max(1, ...taken.map((b) => pagesAlong(b.left + b.width - insetMm, grid.windowWidthMm, grid.overlapMm)));
  const rows = Math.max(1, ...taken.map((b) => pagesAlong(b.top + b.height - insetMm, grid.windowHeightMm, grid.overlapMm)));
  const widthMm = columns * step.x + grid.overlapMm;
  // A roll's pages end where the last piece does.
  const shown = grid.roll && rows === 1 ? Math.ceil(Math.max(0, ...taken.map((b) => b.top + b.height - insetMm))) : undefined;
  const heightMm = shown ?? rows * step.y + grid.overlapMm;
  const placed = pieces.map((piece, i) => settle(piece, batch(i), chosen.get(i)!, heightMm));
  return { widthMm, heightMm, columns, rows, grid: shown ? { ...grid, windowHeightMm: shown } : grid, placed };
}

/** The window of a roll's pages where hardly any piece shares one: as high as the longest piece, so that the sheet does not grow to the sky. */
function cutToLength(grid: Grid, pieces: readonly Piece[], batches: readonly number[] | undefined): Grid {
  if (new Set(batches).size <= widestColumns) return grid;
  const longest = Math.max(...pieces.map(({ outline }) => Math.max(...extentOf(bounds(outline)))));
  return { ...grid, windowHeightMm: Math.min(grid.windowHeightMm, Math.ceil(longest) + 2 * gapMm) };
}

const extentOf = (b: Bounds): readonly [number, number] => [b.maxX - b.minX, b.maxY - b.minY];

const areaOf = (b: Bounds): number => (b.maxX - b.minX) * (b.maxY - b.minY);

/** The part of a box that has to lie in windows. */
const seen = ({ left, top, width, height }: Box): Box => ({ left: left + insetMm, top: top + insetMm, width: width - 2 * insetMm, height: height - 2 * insetMm });

/** What takes the piece's own coordinates, turned, to the sheet's top left corner: right, and down from it. */
const originOf = ({ left, top, turned: { box } }: Try): readonly [number, number] => [left + gapMm - box.minX, top + gapMm + box.maxY];

/** The pages on which a piece would have ink. */
function pagesOf(tried: Try, spans: Spans, grid: Grid): readonly string[] {
  return [...inkPages([tried.turned.coarse], ...originOf(tried), spans, grid, 4)];
}

function bestPlace(turns: readonly Turned[], taken: readonly Box[], groupOf: ReadonlyMap<string, number>, foreign: (page: string) => boolean, grid: Grid): Try {
  let best: Try | undefined;
  let bestScore: readonly number[] = [];
  const step = stepsOf(grid);
  for (const turned of turns) {
    const width = turned.box.maxX - turned.box.minX + 2 * gapMm;
    const height = turned.box.maxY - turned.box.minY + 2 * gapMm;
    const lefts = starts(taken.map((t) => [t.left, t.width]), width, step.x, grid.windowWidthMm, insetMm);
    for (const top of starts(taken.map((t) => [t.top, t.height]), height, step.y, grid.windowHeightMm, insetMm)) {
      for (const left of lefts) {
        const tried: Try = { left, top, width, height, turned };
        const spans = spansOf(seen(tried), grid);
        if (spans.columns[1] >= widestColumns && spans.columns[0] > 0) continue;
        const least = jointCost * jointsIn(spans);
        if (best && least > bestScore[0]!) continue;
        if (taken.some((t) => overlap(t, tried))) continue;
        const pages = pagesOf(tried, spans, grid);
        if (pages.some(foreign)) continue;
        const fresh = pages.filter((p) => !groupOf.has(p)).length;
        const cost = least + fresh + growth(pages, groupOf) + jointCost * cutBeside(tried, spans, pages, groupOf, grid) + markCost * marksCut(tried, spans, grid);
        const score = [Math.round(cost * 1e6), spans.rows[1], spans.columns[1], turned.awayDeg, grid.roll ? top + height : top, left, turned.rotationDeg];
        score[0] = score[0]! / 1e6;
        if (!best || less(score, bestScore)) {
          best = tried;
          bestScore = score;
        }
      }
    }
  }
  // A fresh row of pages below everything is always among the tries.
  must(best, "a piece whose outline is not made of numbers");
  return best;
}

const jointsIn = ({ columns, rows }: Spans): number => columns[1] - columns[0] + rows[1] - rows[0];

/** Joints of the pages' other pieces that would run through this one, since it lies in the strip that two joined pages share. */
function cutBeside({ left, top, width, height }: Try, { columns, rows }: Spans, pages: readonly string[], groupOf: ReadonlyMap<string, number>, grid: Grid): number {
  const groups = new Set(pages.map((p) => groupOf.get(p)).filter((g) => g !== undefined));
  if (groups.size === 0) return 0;
  const joined = (column: number, row: number): boolean => groups.has(groupOf.get(keyOf({ column, row })) ?? -1);
  const step = stepsOf(grid);
  const half = grid.overlapMm / 2;
  const any = ([a, b]: readonly [number, number], at: (i: number) => boolean): boolean => Array.from({ length: b - a + 1 }, (_, i) => at(a + i)).some(Boolean);
  let cuts = 0;
  if (left + gapMm < columns[0] * step.x + half && any(rows, (r) => joined(columns[0] - 1, r) && joined(columns[0], r))) cuts++;
  if (left + width - gapMm > (columns[1] + 1) * step.x + half && any(rows, (r) => joined(columns[1] + 1, r) && joined(columns[1], r))) cuts++;
  if (top + gapMm < rows[0] * step.y + half && any(columns, (c) => joined(c, rows[0] - 1) && joined(c, rows[0]))) cuts++;
  if (top + height - gapMm > (rows[1] + 1) * step.y + half && any(columns, (c) => joined(c, rows[1] + 1) && joined(c, rows[1]))) cuts++;
  return cuts;
}

/** Marks that would lie in the strips of the piece's own joints. */
function marksCut(tried: Try, { columns, rows }: Spans, grid: Grid): number {
  const { marks } = tried.turned;
  const [right, down] = originOf(tried);
  const step = stepsOf(grid);
  const inStrip = (v: number, [a, b]: readonly [number, number], s: number): boolean => {
    const page = Math.floor(v / s);
    return page > a && page <= b && v - page * s < grid.overlapMm;
  };
  let cut = 0;
  for (let i = 0; i < marks.length; i += 2) if (inStrip(marks[i]! + right, columns, step.x) || inStrip(down - marks[i + 1]!, rows, step.y)) cut++;
  return cut;
}

/** The price of the pages by which the patch that must be joined would outgrow the largest of its parts. */
function growth(pages: readonly string[], groupOf: ReadonlyMap<string, number>): number {
  const touched = new Set(pages.map((p) => groupOf.get(p)).filter((g) => g !== undefined));
  if (touched.size === 0) return 0;
  let largest = pages.length;
  const together = new Set(pages);
  for (const group of touched) {
    let size = 0;
    for (const [page, g] of groupOf) {
      if (g !== group) continue;
      size++;
      together.add(page);
    }
    largest = Math.max(largest, size);
  }
  return growthCost * (together.size - largest) + burdenCost * Math.max(0, together.size - Math.max(easyPages, largest));
}

function settle(piece: Piece, batch: number, at: Try, sheetHeightMm: number): PlacedPiece {
  const { box, rotationDeg } = at.turned;
  // Lower left corner of the piece on the sheet, y up; rounded so that places are short in every file.
  const x = Math.round((at.left + gapMm) * 100) / 100;
  const y = Math.round((sheetHeightMm - at.top - at.height + gapMm) * 100) / 100;
  const place: PiecePlace = { xMm: Math.round((x - box.minX) * 1000) / 1000, yMm: Math.round((y - box.minY) * 1000) / 1000, rotationDeg };
  const outline = placedXy(piece.outline.xy, place);
  return { piece, batch, place, outline, bounds: bounds({ xy: outline }) };
}

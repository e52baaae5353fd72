import { must } from "#base/bug.ts";
import type { Piece } from "#pieces/piece.ts";
import { bounds, type Bounds } from "#plane/measure.ts";
import { pagesAlong, type Grid } from "./paper.ts";

/** Where a piece lies on the common sheet: sheet = turned by `rotationDeg` counter-clockwise, then moved by (xMm, yMm); y up. */
export interface PiecePlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly rotationDeg: 0 | 90;
}

export interface PlacedPiece {
  readonly piece: Piece;
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
/** The sheet grows downward beyond this many pages in a row, so that its thumbnail stays readable. */
const widestColumns = 4;
/** A joint through a piece costs the maker a little more than a further page. */
const jointCost = 1.2;
/** Each page by which pages to be joined grow together over those of any one piece: a little worse than a further page. */
const growthCost = 1.1;

/** Turns and moves points by a place. Quarter turns are exact. */
export function placedXy(xy: Float64Array, { xMm, yMm, rotationDeg }: PiecePlace): Float64Array {
  const out = new Float64Array(xy.length);
  for (let i = 0; i < xy.length; i += 2) {
    const x = xy[i]!, y = xy[i + 1]!;
    out[i] = (rotationDeg === 90 ? -y : x) + xMm;
    out[i + 1] = (rotationDeg === 90 ? x : y) + yMm;
  }
  return out;
}

/** A point of the piece on the sheet. */
export function onSheet(at: readonly [number, number], { place }: PlacedPiece): readonly [number, number] {
  const [x, y] = placedXy(Float64Array.from(at), place);
  return [x!, y!];
}

/** Upright box on the sheet while it is laid out, measured from its top left corner downward, gap included. */
interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}
interface Try extends Box {
  readonly rotationDeg: 0 | 90;
}

/**
 * Lays all pieces on a common sheet, each upright or turned by a quarter: largest first, each where it needs the fewest new
 * pages and joints, then nearest to the top and the left. Same pieces, same places.
 * Method and limits: docs/method/sheets.md.
 */
export function arrange(pieces: readonly Piece[], grid: Grid): CommonSheet {
  const boxes = pieces.map((p) => bounds(p.outline));
  const order = pieces.map((_, i) => i).sort((a, b) => areaOf(boxes[b]!) - areaOf(boxes[a]!) || a - b);
  /** Which piece's pages each page belongs to: pages that share a piece have to be joined. */
  const groupOf = new Map<string, number>();
  const taken: Box[] = [];
  const chosen = new Map<number, Try>();
  for (const i of order) {
    const best = bestPlace(boxes[i]!, taken, groupOf, grid);
    chosen.set(i, best);
    taken.push(best);
    const pages = pagesUnder(best, grid);
    const merged = new Set(pages.map((p) => groupOf.get(p)));
    for (const [page, group] of groupOf) if (merged.has(group)) groupOf.set(page, i);
    for (const page of pages) groupOf.set(page, i);
  }
  const step = stepsOf(grid);
  const columns = Math.max(1, ...taken.map((b) => pagesAlong(b.left + b.width, grid.windowWidthMm, grid.overlapMm)));
  const rows = Math.max(1, ...taken.map((b) => pagesAlong(b.top + b.height, grid.windowHeightMm, grid.overlapMm)));
  const widthMm = columns * step.x + grid.overlapMm;
  const heightMm = rows * step.y + grid.overlapMm;
  const placed = pieces.map((piece, i) => settle(piece, boxes[i]!, chosen.get(i)!, heightMm));
  return { widthMm, heightMm, columns, rows, grid, placed };
}

const areaOf = (b: Bounds): number => (b.maxX - b.minX) * (b.maxY - b.minY);

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

function spansOf(b: Box, grid: Grid): { readonly columns: readonly [number, number]; readonly rows: readonly [number, number] } {
  return {
    columns: pageSpan(b.left, b.left + b.width, grid.windowWidthMm, grid.overlapMm),
    rows: pageSpan(b.top, b.top + b.height, grid.windowHeightMm, grid.overlapMm),
  };
}

function pagesUnder(b: Box, grid: Grid): readonly string[] {
  const { columns, rows } = spansOf(b, grid);
  const out: string[] = [];
  for (let r = rows[0]; r <= rows[1]; r++) for (let c = columns[0]; c <= columns[1]; c++) out.push(`${c},${r}`);
  return out;
}

function bestPlace(box: Bounds, taken: readonly Box[], groupOf: ReadonlyMap<string, number>, grid: Grid): Try {
  const wide = box.maxX - box.minX + 2 * gapMm;
  const high = box.maxY - box.minY + 2 * gapMm;
  let best: Try | undefined;
  let bestScore: readonly number[] = [];
  for (const rotationDeg of [0, 90] as const) {
    const width = rotationDeg === 0 ? wide : high;
    const height = rotationDeg === 0 ? high : wide;
    for (const top of starts(taken.map((t) => [t.top, t.height]), height, stepsOf(grid).y, grid.windowHeightMm)) {
      for (const left of starts(taken.map((t) => [t.left, t.width]), width, stepsOf(grid).x, grid.windowWidthMm)) {
        const tried: Try = { left, top, width, height, rotationDeg };
        const { columns, rows } = spansOf(tried, grid);
        if (columns[1] >= widestColumns && columns[0] > 0) continue;
        if (taken.some((t) => overlap(t, tried))) continue;
        const pages = pagesUnder(tried, grid);
        const fresh = pages.filter((p) => !groupOf.has(p)).length;
        const joints = columns[1] - columns[0] + rows[1] - rows[0];
        const score = [fresh + jointCost * joints + growthCost * growth(pages, groupOf), rows[1], columns[1], top, left, rotationDeg];
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

/** By how many pages the patch that must be joined would outgrow the largest of its parts. */
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
  return together.size - largest;
}

/** Places along one axis worth trying: page beginnings, page ends less the piece, and behind each piece already there. */
function starts(taken: readonly (readonly number[])[], size: number, step: number, window: number): readonly number[] {
  const out = new Set<number>([0]);
  let end = 0;
  for (const [at, length] of taken) {
    out.add(at! + length!);
    end = Math.max(end, at! + length!);
  }
  for (let page = 0; (page - 1) * step <= end; page++) {
    out.add(page * step);
    if (size < window) out.add(page * step + window - size);
  }
  return [...out];
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.left + b.width - 1e-9 && b.left < a.left + a.width - 1e-9 && a.top < b.top + b.height - 1e-9 && b.top < a.top + a.height - 1e-9;

function less(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! < b[i]!;
  return false;
}

function settle(piece: Piece, box: Bounds, at: Try, sheetHeightMm: number): PlacedPiece {
  // Lower left corner of the piece on the sheet, y up; rounded so that places are short in every file.
  const x = Math.round((at.left + gapMm) * 100) / 100;
  const y = Math.round((sheetHeightMm - at.top - at.height + gapMm) * 100) / 100;
  const cornerX = at.rotationDeg === 0 ? box.minX : -box.maxY;
  const cornerY = at.rotationDeg === 0 ? box.minY : box.minX;
  const place: PiecePlace = { xMm: Math.round((x - cornerX) * 1000) / 1000, yMm: Math.round((y - cornerY) * 1000) / 1000, rotationDeg: at.rotationDeg };
  const outline = placedXy(piece.outline.xy, place);
  return { piece, place, outline, bounds: bounds({ xy: outline }) };
}

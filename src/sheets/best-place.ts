import { must } from "#base/bug.ts";
import { inkPages, keyOf, spansOf, stepsOf, type Spans } from "./page-grid.ts";
import type { Grid } from "./paper.ts";
import { less, overlap, starts, type Box } from "./place-starts.ts";
import type { Turned } from "./turns.ts";

/** Free paper round each piece, mm. */
export const gapMm = 2.5;
/** Free paper between a piece and the edge of a page's window, mm: beyond it the paper is blank anyway. */
export const edgeMm = 1;
/** By how much the box of a piece with its gap may stand over the window. */
export const insetMm = gapMm - edgeMm;
/** The sheet grows downward beyond this many pages in a row, so that its thumbnail stays readable. */
export const widestColumns = 4;
/** A joint through a piece costs the maker a little more than a further page. */
const jointCost = 1.2;
/** Each page by which pages to be joined grow together over those of any one piece. */
const growthCost = 0.45;
/** A patch of more pages than this is a burden to join and to handle: there growing costs more. */
const easyPages = 6;
const burdenCost = 0.8;
/** A mark or a word through which a joint would run. */
const markCost = 0.06;

/** A box on the sheet and how the piece in it is turned. */
type Tried = Omit<Try, "cost">;

/** A place for a piece: its box with the gap, and how it is turned. */
export interface Try extends Box {
  readonly turned: Turned;
  /** New pages and joints, and what else counts against it. */
  readonly cost: number;
}

/** The part of a box that has to lie in windows. */
export const seen = ({ left, top, width, height }: Box): Box => ({ left: left + insetMm, top: top + insetMm, width: width - 2 * insetMm, height: height - 2 * insetMm });

/** What takes the piece's own coordinates, turned, to the sheet's top left corner: right, and down from it. */
const originOf = ({ left, top, turned: { box } }: Tried): readonly [number, number] => [left + gapMm - box.minX, top + gapMm + box.maxY];

/** The pages on which a piece would have ink. */
export function pagesOf(tried: Tried, spans: Spans, grid: Grid): readonly string[] {
  return [...inkPages([tried.turned.coarse], ...originOf(tried), spans, grid, 4)];
}

export function bestPlace(turns: readonly Turned[], taken: readonly Box[], groupOf: ReadonlyMap<string, number>, foreign: (page: string) => boolean, grid: Grid): Try {
  let best: Try | undefined;
  let bestScore: readonly number[] = [];
  const step = stepsOf(grid);
  for (const turned of turns) {
    const width = turned.box.maxX - turned.box.minX + 2 * gapMm;
    const height = turned.box.maxY - turned.box.minY + 2 * gapMm;
    const lefts = starts(taken.map((t) => [t.left, t.width]), width, step.x, grid.windowWidthMm, insetMm);
    for (const top of starts(taken.map((t) => [t.top, t.height]), height, step.y, grid.windowHeightMm, insetMm)) {
      for (const left of lefts) {
        const tried = { left, top, width, height, turned };
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
          best = { ...tried, cost };
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
function cutBeside({ left, top, width, height }: Tried, { columns, rows }: Spans, pages: readonly string[], groupOf: ReadonlyMap<string, number>, grid: Grid): number {
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
function marksCut(tried: Tried, { columns, rows }: Spans, grid: Grid): number {
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

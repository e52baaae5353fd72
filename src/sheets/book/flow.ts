import { blockHigh, partedBlock, type Block } from "./block.ts";
import { large, lines } from "./words.ts";

/** A chapter of the book; each begins on a page of its own. */
export interface Chapter {
  readonly title: string;
  readonly blocks: readonly Block[];
  /** Goes over the whole page, also where others have columns. */
  readonly wide?: boolean;
  /** May begin below the end of the chapter before, where that saves a page or fills one. */
  readonly joins?: boolean;
}

/** A block with its place on a page, upper left corner, mm. */
export interface PlacedBlock {
  readonly block: Block;
  readonly x: number;
  readonly top: number;
}

export interface BookPage {
  readonly title: string;
  /** Not the first page of its chapter. */
  readonly more: boolean;
  readonly placed: readonly PlacedBlock[];
}

/** Where blocks may stand on every page, mm. */
export interface BookRoom {
  readonly left: number;
  readonly top: number;
  readonly low: number;
  /** The same on pages of a chapter with nothing drawn to scale, which has no bars to leave room for. */
  readonly barlessLow: number;
  readonly width: number;
  readonly columns: number;
  /** From the left edge of one column to that of the next. */
  readonly step: number;
}

/** From the first column's left edge to the last one's right. */
export const wholeWidth = ({ width, columns, step }: BookRoom): number => (columns - 1) * step + width;

/** A block is not begun where less of it than this would stand before it is parted, mm. */
const leastPartMm = 30;

/**
 * Blocks one below the other, column by column, page by page. A heading stays with what follows it; what may be parted goes on at the
 * top of the next column; a table's head stands again above what goes on.
 */
export function bookPages(chapters: readonly Chapter[], room: BookRoom): readonly BookPage[] {
  const runs: Run[] = [];
  for (const chapter of chapters) {
    const before = runs.at(-1), joined = chapter.joins && before ? joinedRun(before, chapter, room) : undefined;
    if (joined) runs[runs.length - 1] = joined;
    else runs.push(runOf(chapter, room));
  }
  return runs.flatMap(pagesOf);
}

/** Chapters one below the other, each but the first with its title above it, and their pages. */
interface Run {
  readonly chapters: readonly { readonly title: string; readonly head?: Block }[];
  readonly blocks: readonly Block[];
  readonly pages: readonly (readonly PlacedBlock[])[];
}

const runOf = ({ title, blocks, wide }: Chapter, room: BookRoom): Run => ({ chapters: [{ title }], blocks, pages: chapterPages(blocks, wide ? { ...room, columns: 1 } : room) });

/** A chapter goes on below the one before where so much of the last page is free, and no page more is taken for it. */
const freeShare = 1 / 3;

/** A chapter below the end of those before: where that takes fewer pages, or a good part of a page would stay empty; nothing elsewhere. */
function joinedRun(before: Run, chapter: Chapter, room: BookRoom): Run | undefined {
  const head: Block = { cells: [{ x: 0, lines: lines(chapter.title, room.width, large) }], ruleMm: 0.5, underRuleMm: 2, keep: true, gapMm: 8 };
  const blocks = [...before.blocks, head, ...chapter.blocks], pages = chapterPages(blocks, room);
  const spared = before.pages.length + runOf(chapter, room).pages.length - pages.length;
  const begins = pages.findIndex((placed) => placed.some(({ block }) => block === head)) < before.pages.length;
  const fits = spared > 0 || (spared === 0 && begins && freeOf(before, room) >= freeShare);
  return fits ? { chapters: [...before.chapters, { title: chapter.title, head }], blocks, pages } : undefined;
}

/** How much of a run's last page is free below all that stands on it, of its height. */
function freeOf({ pages }: Run, { top, barlessLow, left, step, columns }: BookRoom): number {
  const last = pages.at(-1)!.filter(({ x }) => x > left + (columns - 1.5) * step);
  const low = Math.min(top, ...last.map((placed) => placed.top - blockHigh(placed.block)));
  return (low - barlessLow) / (top - barlessLow);
}

/** Each page by the name of the chapter that it begins in. */
function pagesOf({ chapters, pages }: Run): readonly BookPage[] {
  const begins = chapters.map(({ head }) => (head ? pages.findIndex((placed) => placed.some(({ block }) => block === head)) : 0));
  return pages.map((placed, i) => {
    const at = begins.findLastIndex((page, k) => k === 0 || page < i || placed[0]?.block === chapters[k]!.head);
    return { title: chapters[at]!.title, more: i > 0 && placed[0]?.block !== chapters[at]!.head, placed };
  });
}

function chapterPages(blocks: readonly Block[], { left, top, low: aboveBars, barlessLow, columns, step }: BookRoom): readonly (readonly PlacedBlock[])[] {
  const low = blocks.some((b) => b.drawn) ? aboveBars : barlessLow;
  const pages: PlacedBlock[][] = [[]];
  let column = 0, y = top;
  const next = (): void => {
    y = top;
    column = (column + 1) % columns;
    if (column === 0) pages.push([]);
  };
  const put = (block: Block): void => {
    pages[pages.length - 1]!.push({ block, x: left + column * step, top: y });
    y -= blockHigh(block);
  };
  const queue = [...blocks];
  for (let i = 0; i < queue.length; i++) {
    const block = queue[i]!;
    const gap = y < top ? (block.gapMm ?? 0) : 0;
    if (y < top && y - gap - leastOf(queue, i) < low - 1e-9) next();
    else y -= gap;
    const fresh = y === top;
    if (fresh && block.head) put(block.head);
    const parted = y - blockHigh(block) < low - 1e-9 ? partedBlock(block, Math.min(y - low, blockHigh(block) - (block.least?.rest ?? 0))) : undefined;
    // What cannot be parted where it would have to be begins on a page of its own.
    if (!parted && !fresh && y - blockHigh(block) < low - 1e-9) {
      next();
      i--;
      continue;
    }
    put(parted ? parted[0] : block);
    if (parted) {
      queue.splice(i + 1, 0, parted[1]);
      next();
    }
  }
  return pages;
}

/** The least that must have room for a block to begin here: of what is parted its beginning, of a heading what follows it too. */
function leastOf(blocks: readonly Block[], i: number): number {
  const block = blocks[i]!, high = blockHigh(block), after = blocks[i + 1];
  if (block.keep && after) return high + (after.gapMm ?? 0) + leastOf(blocks, i + 1);
  if (!block.parts) return high;
  const { first, rest } = block.least ?? { first: leastPartMm, rest: 0 };
  return first + rest < high ? first : high;
}

/** Page number, from 1, of every block that is named. */
export function anchorsOf(pages: readonly BookPage[]): ReadonlyMap<string, number> {
  return new Map(pages.flatMap(({ placed }, i) => placed.flatMap(({ block }) => (block.anchor ? [[block.anchor, i + 1] as const] : []))));
}

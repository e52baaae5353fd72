import type { PageInk } from "../pdf/page-ink.ts";

/** One line of a cell, or a picture that is never parted: so high, drawn with its upper left corner at (x, top); mm. */
export interface Line {
  readonly highMm: number;
  readonly ink: (ink: PageInk, x: number, top: number) => void;
  /** Nothing is drawn. */
  readonly blank?: boolean;
  /** Stands for so many lines that are never parted. */
  readonly lines?: number;
}

/** Lines one below the other, `x` to the right of the block's left edge, mm. */
export interface Cell {
  readonly x: number;
  readonly lines: readonly Line[];
}

/** What stands on a page as one: cells side by side, as high as the highest. */
export interface Block {
  readonly cells: readonly Cell[];
  /** Blank above it; not at the top of a page, mm. */
  readonly gapMm?: number;
  /** A line across above it, so wide, mm. */
  readonly ruleMm?: number;
  /** Blank between that line and the first of words, where it is less than usual, mm. */
  readonly underRuleMm?: number;
  /** Never the last on a page: a heading. */
  readonly keep?: boolean;
  /** May be parted between two lines. */
  readonly parts?: boolean;
  /** Only parted where at least so much of it stands on the page it begins on, and goes on, mm. */
  readonly least?: { readonly first: number; readonly rest: number };
  /** Stands in the first cell of what goes on after a parting: "8, goes on". */
  readonly again?: readonly Line[];
  /** Stands again above it where it begins a page: the names of a table's columns. */
  readonly head?: Block;
  /** By which its page is named elsewhere. */
  readonly anchor?: string;
  /** What is drawn to scale in it: its page shows the bars. */
  readonly drawn?: readonly Drawn[];
}

/** A drawing to scale: by which name it is found again in the file, and how large it must be there, mm. */
export interface Drawn {
  readonly name: string;
  readonly wide: number;
  readonly high: number;
}

/** Blank between a rule and the first line below it, mm. */
const usualUnderMm = 1;
const underOf = ({ ruleMm, underRuleMm }: Block): number => (ruleMm ? (underRuleMm ?? usualUnderMm) : 0);

const sum = (lines: readonly Line[]): number => lines.reduce((mm, line) => mm + line.highMm, 0);

/** How high a block is, its gap left out, mm. */
export const blockHigh = (block: Block): number => underOf(block) + Math.max(0, ...block.cells.map(({ lines }) => sum(lines)));

/** Draws a block with its upper left corner at (x, top); without its rule where the page has one there already. */
export function inkBlock(ink: PageInk, block: Block, x: number, top: number, width: number, ruled = false): void {
  const { cells, ruleMm } = block;
  if (ruleMm && !ruled) {
    ink.style(ruleMm);
    ink.line(x, top, x + width, top);
  }
  for (const cell of cells) {
    let y = top - underOf(block);
    for (const line of cell.lines) {
      line.ink(ink, x + cell.x, y);
      y -= line.highMm;
    }
  }
}

/** Fewer lines than this are not left alone on either side of a parting. */
const leastLines = 2;

/** A block in two, the first no higher than `roomMm`; nothing where its widest cell cannot be parted there. */
export function partedBlock(block: Block, roomMm: number): readonly [Block, Block] | undefined {
  const room = roomMm - underOf(block);
  // A cell of blanks alone only keeps room below the others, and has no say in where they are parted.
  const told = block.cells.filter(({ lines }) => lines.some((l) => !l.blank));
  const cuts = told.map(({ lines }) => cutOf(lines, room));
  const highest = told.reduce((best, { lines }, i) => (sum(lines) > sum(told[best]!.lines) ? i : best), 0);
  if (!cuts[highest] || cuts[highest] === told[highest]!.lines.length) return undefined;
  const cells = (of: (lines: readonly Line[], cut: number) => readonly Line[]): readonly Cell[] => told.map((cell, i) => ({ x: cell.x, lines: of(cell.lines, cuts[i]!) }));
  const { anchor: _, ...rest } = block;
  const going = cells((lines, cut) => lines.slice(cut));
  const again: readonly Cell[] = block.again ? [{ x: 0, lines: [...block.again, ...(going[0]?.x === 0 ? going[0].lines : [])] }, ...going.filter((c) => c.x !== 0)] : going;
  return [{ ...block, cells: cells((lines, cut) => lines.slice(0, cut)) }, { ...rest, gapMm: 0, cells: again }];
}

/** How many lines of a cell stand before a parting. */
function cutOf(lines: readonly Line[], room: number): number {
  const told = (some: readonly Line[]): number => some.reduce((count, l) => count + (l.blank ? 0 : (l.lines ?? 1)), 0);
  let count = 0, mm = 0;
  while (count < lines.length && mm + lines[count]!.highMm <= room + 1e-9) mm += lines[count++]!.highMm;
  if (told(lines.slice(count)) === 0) return lines.length;
  while (count > 0 && told(lines.slice(count)) < leastLines) count--;
  return told(lines.slice(0, count)) < leastLines ? 0 : count;
}

import { blockHigh, type Block, type Line } from "./block.ts";
import { blank, together } from "./words.ts";

const columnGapMm = 6;

/** Width of one of two columns. */
export const halfOf = (width: number): number => (width - columnGapMm) / 2;

/** Short entries in two columns as high as one another, read down the left one first; never parted within an entry. */
export function inTwoColumns(entries: readonly (readonly Line[])[], width: number, betweenMm: number): readonly Block[] {
  if (entries.length === 0) return [];
  const whole = entries.map((entry) => [together(entry), blank(betweenMm)]);
  const cut = evenCut(whole.map((lines) => blockHigh({ cells: [{ x: 0, lines }] })));
  return [{ cells: [{ x: 0, lines: whole.slice(0, cut).flat() }, { x: halfOf(width) + columnGapMm, lines: whole.slice(cut).flat() }], parts: true }];
}

/** After how many the left column ends, so that the higher of both is lowest. */
function evenCut(highs: readonly number[]): number {
  const all = highs.reduce((sum, mm) => sum + mm, 0);
  let left = 0, best = highs.length, least = all;
  highs.forEach((mm, i) => {
    left += mm;
    if (Math.max(left, all - left) < least) [best, least] = [i + 1, Math.max(left, all - left)];
  });
  return best;
}

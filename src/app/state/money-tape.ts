/** One part of the money, as it lies on the tape. */
export interface TapePart {
  readonly from: number;
  readonly to: number;
  /** Words fit on the part itself. */
  readonly inside: boolean;
  /** Where its words end, beside the line that leads to it; only where they stand outside. */
  readonly wordsTo: number;
  /** In which row below the tape its words stand, from 0. */
  readonly row: number;
}

/** Air between words, px. */
const gap = 14;

/**
 * Lays parts end to end on a tape from 0 to `length` px and finds a place for the words of each: on the part where they fit, else below it in
 * the highest row in which they stand in the way of no other words and of no line that leads to some. Words end at their line.
 * @param widths of the words, px
 */
export function layTape(shares: readonly number[], length: number, widths: readonly number[]): readonly TapePart[] {
  const parts: TapePart[] = [];
  let at = 0;
  shares.forEach((share, i) => {
    const from = at, to = (at += share * length), wide = widths[i]!;
    const inside = to - from >= wide + gap;
    const wordsTo = Math.max((from + to) / 2, wide);
    const below = parts.filter((p) => !p.inside && p.wordsTo > wordsTo - wide - gap);
    parts.push({ from, to, inside, wordsTo, row: inside ? 0 : below.reduce((row, p) => Math.max(row, p.row + 1), 0) });
  });
  return parts;
}

/** Marks along the tape, in money: about `count` of them at steps of 1, 2 or 5. */
export function tapeMarks(most: number, count: number): readonly number[] {
  if (!(most > 0)) return [];
  const rough = most / Math.max(1, count), ten = 10 ** Math.floor(Math.log10(rough));
  const step = ten * ([1, 2, 5].find((n) => n * ten >= rough) ?? 10);
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => Number((i * step).toPrecision(12)));
}

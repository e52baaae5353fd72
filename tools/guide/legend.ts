import type { Lettering, Stroke, StrokeKind } from "#sheets/pen.ts";

/** Kinds of line on a piece, and what each says. */
const kinds: readonly (readonly [StrokeKind, string])[] = [
  ["cut", "cutting line: full"],
  ["net", "feather line, trim line, net line: long dashes"],
  ["fold", "fold: dash and two dots"],
  ["stitch", "stitch line: dots"],
  ["skive", "skive to here: short dashes"],
  ["centre", "centre or back line: dash and dot"],
  ["joint", "joint line, heel breast line: thin and full"],
  ["place", "what lies here: dash, short dash"],
];

/** A sample of each, one under the other. */
export function drawLegend(): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[]; readonly widthMm: number; readonly heightMm: number } {
  const heightMm = 7 * kinds.length + 6;
  const at = (i: number): number => heightMm - 8 - 7 * i;
  return {
    strokes: kinds.map(([kind], i) => ({ kind, xy: Float64Array.of(6, at(i) + 1.2, 46, at(i) + 1.2), closed: false })),
    words: kinds.map(([, text], i) => ({ text, xMm: 52, yMm: at(i), heightMm: 2.8, angleDeg: 0, bold: false })),
    widthMm: 142,
    heightMm,
  };
}

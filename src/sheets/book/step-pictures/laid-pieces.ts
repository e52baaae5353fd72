import type { Mark, Piece } from "#pieces/piece.ts";
import type { Outline } from "#plane/outline.ts";
import { bounds } from "#plane/measure.ts";
import { besideMm, scaleFor } from "./sketch-lines.ts";
import { plainMm, Sketch, type Xy } from "./sketch.ts";

/** A piece with its place in a drawing. */
export interface LaidPiece {
  readonly piece: Piece;
  readonly at: (p: Xy) => Xy;
  readonly along: (xy: ArrayLike<number>) => number[];
}

const gapMm = 4;
export const mostHighMm = 33;

/** By which the outline of a piece is found again in the file. */
export const pictureName = (step: string, piece: string): string => `picture-${step}-${piece}`.replace(/[^a-z0-9-]+/gi, "-");

/** Pieces at one scale: the first as it lies, the others on their longer side, one below the other beside it. */
export function laidPieces(step: string, pieces: readonly Piece[], width: number): { readonly sketch: Sketch; readonly laid: readonly LaidPiece[]; readonly scale: number; readonly words: string } {
  const boxes = pieces.map((piece, i) => {
    const { minX, minY, maxX, maxY } = bounds(piece.outline), turned = i > 0 && maxY - minY > maxX - minX;
    return { piece, minX, minY, maxX, maxY, turned, wide: turned ? maxY - minY : maxX - minX, high: turned ? maxX - minX : maxY - minY };
  });
  const [first, ...others] = boxes, few = others.length;
  const room = width - 2 * besideMm - (few > 0 ? gapMm : 0), high = mostHighMm - Math.max(0, few - 1) * gapMm;
  const { scale, words } = scaleFor(first!.wide + Math.max(0, ...others.map((b) => b.wide)), Math.max(first!.high, others.reduce((sum, b) => sum + b.high, 0)), room, high);
  const sketch = new Sketch();
  let down = 0;
  const laid = boxes.map(({ piece, minX, maxX, maxY, turned, high: h }, i): LaidPiece => {
    const [right, low] = i === 0 ? [0, 0] : [scale * first!.wide + gapMm, down];
    if (i > 0) down += scale * h + gapMm;
    const at = ([x, y]: Xy): Xy => (turned ? [right + scale * (maxY - y), scale * (x - maxX) - low] : [right + scale * (x - minX), scale * (y - maxY) - low]);
    const along = (xy: ArrayLike<number>): number[] => thinned(xy).flatMap(([x, y]) => at([x, y]));
    sketch.stroke(along(piece.outline.xy), plainMm, { closed: true, name: pictureName(step, piece.name) });
    return { piece, at, along };
  });
  return { sketch, laid, scale, words };
}

/** Points enough for so small a line; the ends and the outermost ones are kept, so that no size changes. */
export function thinned(xy: ArrayLike<number>, most = 160): readonly Xy[] {
  const n = xy.length / 2, every = Math.max(1, Math.floor(n / most)), kept = new Set([n - 1]);
  for (const axis of [0, 1]) {
    let least = 0, farthest = 0;
    for (let i = 1; i < n; i++) {
      if (xy[2 * i + axis]! < xy[2 * least + axis]!) least = i;
      if (xy[2 * i + axis]! > xy[2 * farthest + axis]!) farthest = i;
    }
    kept.add(least).add(farthest);
  }
  return Array.from({ length: n }, (_, i): readonly [number, Xy] => [i, [xy[2 * i]!, xy[2 * i + 1]!]]).flatMap(([i, p]) => (i % every === 0 || kept.has(i) ? [p] : []));
}

type LineMark = Extract<Mark, { kind: "line" }>;

/** Lines of one use drawn on a piece. */
export const linesOf = ({ marks }: Piece, use: LineMark["use"], name?: string): readonly LineMark[] => marks.flatMap((m) => (m.kind === "line" && m.use === use && (name === undefined || m.name.startsWith(name)) ? [m] : []));

/** The middle of an outline's box. */
export function middleOf(outline: Outline): Xy {
  const { minX, minY, maxX, maxY } = bounds(outline);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

import type { Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import type { SheetInput } from "../../input.ts";
import { pictureName, thinned } from "./laid-pieces.ts";
import { besideMm, scaleFor } from "./sketch-lines.ts";
import { plainMm, Sketch, type Xy } from "./sketch.ts";

/** The bottom of the right shoe from below, toe to the right: the pieces of the bottom all lie in one plane, so each is at its place. */
export interface FromBelow {
  readonly sketch: Sketch;
  readonly words: string;
  readonly scale: number;
  readonly at: (p: Xy) => Xy;
  readonly along: (xy: ArrayLike<number>) => number[];
  readonly piece: (name: string) => Piece | undefined;
}

const mostHighMm = 22;

/** The insole from below; nothing where no bottom was traced. */
export function fromBelow(step: string, { pieces }: SheetInput, width: number): FromBelow | undefined {
  const piece = (name: string): Piece | undefined => pieces.find((p) => p.side === "right" && p.name === name && p.ground === "bottom");
  const insole = piece("insole");
  if (!insole) return undefined;
  const { minX, minY, maxX, maxY } = bounds(insole.outline);
  const { scale, words } = scaleFor(maxX - minX, maxY - minY, width - 2 * besideMm, mostHighMm);
  const at = ([x, y]: Xy): Xy => [scale * (x - minX), scale * (minY - y)];
  const along = (xy: ArrayLike<number>): number[] => thinned(xy).flatMap((p) => at(p));
  const sketch = new Sketch();
  sketch.stroke(along(insole.outline.xy), plainMm, { closed: true, name: pictureName(step, "insole") });
  return { sketch, words, scale, at, along, piece };
}

export const belowTitle = ({ words }: FromBelow): string => `Right shoe from below, ${words}`;

import { bounds } from "#plane/measure.ts";
import type { PiecePlace, PlacedPiece } from "./arrange.ts";
import type { Lettering, Stroke } from "./pen.ts";
import type { Box } from "./room.ts";
import { turnedXy, unitOf } from "./turns.ts";

/**
 * A piece that lies turned on the sheet, set straight to the nearest quarter for writing on it: words run along and across the
 * piece as if it lay square, then all goes back to the sheet together.
 */
export interface Bench {
  readonly straight: PlacedPiece;
  /** What is turned back on the way to the sheet, about the sheet's corner; degrees from -45 to 45. */
  readonly leanDeg: number;
}

export function benchOf(placed: PlacedPiece): Bench {
  const { place, piece } = placed;
  const quarter = Math.round(place.rotationDeg / 90) * 90;
  const leanDeg = place.rotationDeg - quarter;
  if (leanDeg === 0) return { straight: placed, leanDeg };
  const [xMm, yMm] = turnedXy(Float64Array.of(place.xMm, place.yMm), -leanDeg);
  const square: PiecePlace = { xMm: xMm!, yMm: yMm!, rotationDeg: quarter };
  const outline = turnedXy(placed.outline, -leanDeg);
  return { straight: { piece, batch: placed.batch, place: square, outline, bounds: bounds({ xy: outline }) }, leanDeg };
}

export function strokeOnSheet(s: Stroke, leanDeg: number): Stroke {
  if (leanDeg === 0) return s;
  return { ...s, xy: turnedXy(s.xy, leanDeg), ...(s.curves && { curves: { ...s.curves, xy: turnedXy(s.curves.xy, leanDeg) } }) };
}

export function wordsOnSheet(w: Lettering, leanDeg: number): Lettering {
  if (leanDeg === 0) return w;
  const [x, y] = turnedXy(Float64Array.of(w.xMm, w.yMm), leanDeg);
  return { ...w, xMm: x!, yMm: y!, angleDeg: w.angleDeg + leanDeg };
}

/** Whether a box on the bench keeps off strips of the sheet. */
export function offStrips(strips: readonly Box[], leanDeg: number): (box: Box) => boolean {
  const [c, s] = unitOf(leanDeg);
  return ({ x, y, width, height }) => {
    const left = c * x - s * y + Math.min(0, -s * height), low = s * x + c * y + Math.min(0, s * width);
    const wide = c * width + Math.abs(s) * height, high = c * height + Math.abs(s) * width;
    return !strips.some((k) => left < k.x + k.width && k.x < left + wide && low < k.y + k.height && k.y < low + high);
  };
}

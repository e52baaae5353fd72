import type { Outline, Polyline } from "./outline.ts";
import { AreaPen, BoundsPen, LengthPen, trace, traceOpen } from "./pen.ts";

/** Upright box, mm. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Distance of two points, mm. */
export const apart = (a: readonly [number, number], b: readonly [number, number]): number => Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);

/** Enclosed area with its sign, mm²: positive where the outline runs counter-clockwise. */
export function signedArea(outline: Outline): number {
  const pen = new AreaPen();
  trace(outline, pen);
  return pen.total;
}

/** Enclosed area, mm². */
export function area(outline: Outline): number {
  return Math.abs(signedArea(outline));
}

/** Length of the closed outline, mm. */
export function perimeter(outline: Outline): number {
  const pen = new LengthPen();
  trace(outline, pen);
  return pen.total;
}

/** Length of the open polyline, mm. */
export function lengthOf(line: Polyline): number {
  const pen = new LengthPen();
  traceOpen(line, pen);
  return pen.total;
}

/** Box round an outline or a polyline, mm. */
export function bounds(line: Outline | Polyline): Bounds {
  const pen = new BoundsPen();
  traceOpen(line, pen);
  return { minX: pen.minX, minY: pen.minY, maxX: pen.maxX, maxY: pen.maxY };
}

/** +1 counter-clockwise, −1 clockwise, 0 without area. */
export function winding(outline: Outline): 1 | -1 | 0 {
  const a = signedArea(outline);
  return a > 0 ? 1 : a < 0 ? -1 : 0;
}

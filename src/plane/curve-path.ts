import type { Pen } from "./pen.ts";

/**
 * A line of straight pieces and cubic Béziers. `xy` holds the start, then six numbers a piece: both inner control points and the end;
 * so any turn or move of its points moves the whole line. A closed one ends where it starts.
 */
export interface CurvePath {
  readonly xy: Float64Array;
  /** 1 where a piece is straight; its inner control points lie at its thirds. */
  readonly straight: Uint8Array;
  readonly closed: boolean;
}

/** A pen that takes curves. */
export type CurvePen = Pen & { curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void };

/** Walks a line of curves with a pen; an open one is not ended. */
export function traceCurves({ xy, straight, closed }: CurvePath, pen: CurvePen): void {
  pen.begin(xy[0]!, xy[1]!);
  for (let k = 0, i = 2; k < straight.length; k++, i += 6) {
    const bySelf = closed && k === straight.length - 1 && straight[k] === 1;
    if (bySelf) break; // `close` draws it
    if (straight[k] === 1) pen.line(xy[i + 4]!, xy[i + 5]!);
    else pen.curve(xy[i]!, xy[i + 1]!, xy[i + 2]!, xy[i + 3]!, xy[i + 4]!, xy[i + 5]!);
  }
  if (closed) pen.close();
}

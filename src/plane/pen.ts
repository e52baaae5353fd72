import type { Outline, Polyline } from "./outline.ts";

/**
 * What draws, measures or writes a line: begin, any number of lines and cubic curves, close for an outline. One trace feeds
 * every pen, so what is measured is what is printed. `curve` is left out by pens that take straight lines alone.
 */
export interface Pen {
  begin(x: number, y: number): void;
  line(x: number, y: number): void;
  /** Cubic Bézier by its two inner control points and its end. */
  curve?(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  close(): void;
}

/** Walks a closed outline with a pen. */
export function trace({ xy }: Outline, pen: Pen): void {
  if (xy.length === 0) return;
  traceOpen({ xy }, pen);
  pen.close();
}

/** Walks an open polyline with a pen; the pen's close is not called. */
export function traceOpen({ xy }: Polyline, pen: Pen): void {
  if (xy.length === 0) return;
  pen.begin(xy[0]!, xy[1]!);
  for (let i = 2; i < xy.length; i += 2) pen.line(xy[i]!, xy[i + 1]!);
}

/** Running length, mm. */
export class LengthPen implements Pen {
  total = 0;
  #x = 0;
  #y = 0;
  #x0 = 0;
  #y0 = 0;
  begin(x: number, y: number): void {
    this.#x = this.#x0 = x;
    this.#y = this.#y0 = y;
  }
  line(x: number, y: number): void {
    const dx = x - this.#x;
    const dy = y - this.#y;
    this.total += Math.sqrt(dx * dx + dy * dy);
    this.#x = x;
    this.#y = y;
  }
  close(): void {
    this.line(this.#x0, this.#y0);
  }
}

/** Smallest upright box, mm. Empty until something is traced: minX is then above maxX. */
export class BoundsPen implements Pen {
  minX = Infinity;
  minY = Infinity;
  maxX = -Infinity;
  maxY = -Infinity;
  begin(x: number, y: number): void {
    this.line(x, y);
  }
  line(x: number, y: number): void {
    if (x < this.minX) this.minX = x;
    if (x > this.maxX) this.maxX = x;
    if (y < this.minY) this.minY = y;
    if (y > this.maxY) this.maxY = y;
  }
  close(): void {}
}

/** Signed area, mm²: positive counter-clockwise (shoelace formula, taken from the first point to keep the sums small). */
export class AreaPen implements Pen {
  #twice = 0;
  #x = 0;
  #y = 0;
  #x0 = 0;
  #y0 = 0;
  get total(): number {
    return this.#twice / 2;
  }
  begin(x: number, y: number): void {
    this.#x0 = x;
    this.#y0 = y;
    this.#x = this.#y = 0;
  }
  line(x: number, y: number): void {
    const dx = x - this.#x0;
    const dy = y - this.#y0;
    this.#twice += this.#x * dy - dx * this.#y;
    this.#x = dx;
    this.#y = dy;
  }
  /** ½ ∫ x dy − y dx of the cubic, from the first point: exact for its polynomial (Green's theorem). */
  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    const ax = this.#x, ay = this.#y, bx = x1 - this.#x0, by = y1 - this.#y0, cx = x2 - this.#x0, cy = y2 - this.#y0;
    const dx = x - this.#x0, dy = y - this.#y0;
    this.#twice += (6 * (ax * by - bx * ay) + 3 * (ax * cy - cx * ay) + (ax * dy - dx * ay) + 3 * (bx * cy - cx * by) + 3 * (bx * dy - dx * by) + 6 * (cx * dy - dx * cy)) / 10;
    this.#x = dx;
    this.#y = dy;
  }
  close(): void {
    this.#x = this.#y = 0;
  }
}

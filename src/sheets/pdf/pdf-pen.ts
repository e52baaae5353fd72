import { bounds } from "#plane/measure.ts";
import { strokeStyles, type Lettering, type SheetPen, type StrokeKind } from "../pen.ts";
import type { PageInk } from "./page-ink.ts";

/** The part of the common sheet that a page shows, and where its lower left corner lies on the paper, mm. */
export interface PageWindow {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly leftOnPaperMm: number;
  readonly bottomOnPaperMm: number;
}

/** Pieces of a line that lie off the window by more than this are left out of the page, mm. */
const beyondMm = 2;

/** A piece of a line after its start: two numbers for a straight one, six for a cubic. */
type Part = readonly number[];
type Point = readonly [number, number];

/** Draws one page's part of the common sheet. Lines are cut at the ends of their own pieces, never moved, so each page is true. */
export class PdfPen implements SheetPen {
  readonly #ink: PageInk;
  readonly #window: PageWindow;
  #kind: StrokeKind = "cut";
  #start: Point = [0, 0];
  #parts: Part[] = [];

  constructor(ink: PageInk, window: PageWindow) {
    this.#ink = ink;
    this.#window = window;
  }

  use(kind: StrokeKind): void {
    this.#kind = kind;
  }
  begin(x: number, y: number): void {
    this.#start = [x, y];
    this.#parts = [];
  }
  line(x: number, y: number): void {
    this.#parts.push([x, y]);
  }
  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.#parts.push([x1, y1, x2, y2, x, y]);
  }
  close(): void {
    const all = [...this.#start, ...this.#parts.flat()];
    if (!this.#meets(all, beyondMm)) return;
    if (this.#holds(all)) this.#put(this.#start, this.#parts, true);
    else this.#putRuns(isAt(endOf(this.#parts, this.#start), this.#start) ? this.#parts : [...this.#parts, this.#start]);
  }
  end(): void {
    this.#putRuns(this.#parts);
  }
  write(words: Lettering): void {
    const { xMm, yMm, widthMm, heightMm, leftOnPaperMm, bottomOnPaperMm } = this.#window;
    // Generous: words reach at most this far from their beginning; the clip hides what is beyond.
    const reach = words.text.length * words.heightMm + words.heightMm;
    if (words.xMm + reach < xMm || words.xMm - reach > xMm + widthMm || words.yMm + reach < yMm || words.yMm - reach > yMm + heightMm) return;
    this.#ink.write({ ...words, xMm: words.xMm - xMm + leftOnPaperMm, yMm: words.yMm - yMm + bottomOnPaperMm });
  }

  /** Whether all points lie in the window. */
  #holds(xy: readonly number[]): boolean {
    const { minX, minY, maxX, maxY } = bounds({ xy: Float64Array.from(xy) });
    const { xMm, yMm, widthMm, heightMm } = this.#window;
    return minX >= xMm && maxX <= xMm + widthMm && minY >= yMm && maxY <= yMm + heightMm;
  }

  /** Whether the box of some points meets the window; a cubic lies in the box of its control points. */
  #meets(xy: readonly number[], roomMm: number): boolean {
    const { minX, minY, maxX, maxY } = bounds({ xy: Float64Array.from(xy) });
    const { xMm, yMm, widthMm, heightMm } = this.#window;
    return maxX >= xMm - roomMm && minX <= xMm + widthMm + roomMm && maxY >= yMm - roomMm && minY <= yMm + heightMm + roomMm;
  }

  /** Draws the pieces that meet the window, those that follow each other as one line. */
  #putRuns(parts: readonly Part[]): void {
    let at = this.#start;
    let start = at;
    let run: Part[] = [];
    for (const part of parts) {
      const end = endOf([part], at);
      if (this.#meets([...at, ...part], beyondMm)) {
        if (run.length === 0) start = at;
        run.push(part);
      } else {
        this.#put(start, run, false);
        run = [];
      }
      at = end;
    }
    this.#put(start, run, false);
  }

  #put(start: Point, parts: readonly Part[], closed: boolean): void {
    if (parts.length === 0) return;
    const { widthMm, dashMm } = strokeStyles[this.#kind];
    this.#ink.style(widthMm, dashMm);
    this.#ink.strokeParts(start, parts, closed, this.#window.leftOnPaperMm - this.#window.xMm, this.#window.bottomOnPaperMm - this.#window.yMm);
  }
}

const isAt = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1];

function endOf(parts: readonly Part[], start: Point): Point {
  const last = parts[parts.length - 1];
  return last ? [last[last.length - 2]!, last[last.length - 1]!] : start;
}

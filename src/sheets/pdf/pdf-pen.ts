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

/** Runs that leave the window by more than this are left out of the page, mm. */
const beyondMm = 2;

/** Draws one page's part of the common sheet. Lines are cut at their own points, never moved, so each page is true. */
export class PdfPen implements SheetPen {
  readonly #ink: PageInk;
  readonly #window: PageWindow;
  #kind: StrokeKind = "cut";
  #xy: number[] = [];

  constructor(ink: PageInk, window: PageWindow) {
    this.#ink = ink;
    this.#window = window;
  }

  use(kind: StrokeKind): void {
    this.#kind = kind;
  }
  begin(x: number, y: number): void {
    this.#xy = [x, y];
  }
  line(x: number, y: number): void {
    this.#xy.push(x, y);
  }
  close(): void {
    if (this.#shows(this.#xy, 0, this.#xy.length)) {
      const whole = this.#wholeInside();
      if (whole) this.#put(this.#xy, true);
      else this.#putRuns([...this.#xy, this.#xy[0]!, this.#xy[1]!]);
    }
    this.#xy = [];
  }
  end(): void {
    this.#putRuns(this.#xy);
    this.#xy = [];
  }
  write(words: Lettering): void {
    const { xMm, yMm, widthMm, heightMm, leftOnPaperMm, bottomOnPaperMm } = this.#window;
    // Generous: words reach at most this far from their beginning; the clip hides what is beyond.
    const reach = words.text.length * words.heightMm + words.heightMm;
    if (words.xMm + reach < xMm || words.xMm - reach > xMm + widthMm || words.yMm + reach < yMm || words.yMm - reach > yMm + heightMm) return;
    this.#ink.write({ ...words, xMm: words.xMm - xMm + leftOnPaperMm, yMm: words.yMm - yMm + bottomOnPaperMm });
  }

  #wholeInside(): boolean {
    const { xMm, yMm, widthMm, heightMm } = this.#window;
    for (let i = 0; i < this.#xy.length; i += 2) {
      const x = this.#xy[i]!, y = this.#xy[i + 1]!;
      if (x < xMm || x > xMm + widthMm || y < yMm || y > yMm + heightMm) return false;
    }
    return true;
  }

  /** Whether the box of some points meets the window. */
  #shows(xy: readonly number[], from: number, to: number): boolean {
    const { xMm, yMm, widthMm, heightMm } = this.#window;
    let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
    for (let i = from; i < to; i += 2) {
      minX = Math.min(minX, xy[i]!);
      maxX = Math.max(maxX, xy[i]!);
      minY = Math.min(minY, xy[i + 1]!);
      maxY = Math.max(maxY, xy[i + 1]!);
    }
    return maxX >= xMm - beyondMm && minX <= xMm + widthMm + beyondMm && maxY >= yMm - beyondMm && minY <= yMm + heightMm + beyondMm;
  }

  #putRuns(xy: readonly number[]): void {
    let run: number[] = [];
    for (let i = 0; i + 3 < xy.length; i += 2) {
      if (this.#shows(xy, i, i + 4)) {
        if (run.length === 0) run.push(xy[i]!, xy[i + 1]!);
        run.push(xy[i + 2]!, xy[i + 3]!);
      } else {
        this.#put(run, false);
        run = [];
      }
    }
    this.#put(run, false);
  }

  #put(xy: readonly number[], closed: boolean): void {
    if (xy.length < 4) return;
    const { widthMm, dashMm } = strokeStyles[this.#kind];
    this.#ink.style(widthMm, dashMm);
    this.#ink.stroke(xy, closed, this.#window.leftOnPaperMm - this.#window.xMm, this.#window.bottomOnPaperMm - this.#window.yMm);
  }
}

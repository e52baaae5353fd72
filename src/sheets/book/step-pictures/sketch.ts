import type { PageInk } from "../../pdf/page-ink.ts";

export type Xy = readonly [number, number];

interface Stroke {
  readonly xy: readonly number[];
  readonly wideMm: number;
  readonly dashMm: readonly number[];
  readonly closed: boolean;
  readonly name?: string;
}

interface Letter {
  readonly text: string;
  readonly at: Xy;
  /** Which way from its place it stands if there is room. */
  readonly toward: Xy;
}

export interface StrokeStyle {
  readonly dashMm?: readonly number[];
  readonly closed?: boolean;
  /** By which the stroke is found again in the file. */
  readonly name?: string;
}

/** Widths of lines, mm: what the step is about, what it lies on, and what was there before or is hatched. */
export const heavyMm = 0.6, plainMm = 0.25, lightMm = 0.13;

/**
 * A small drawing on paper, mm, y up, from where it likes; what it shows is named by letters that `told` explains. Where each letter
 * stands is found once all is drawn (lettered.ts): no stroke runs through it.
 */
export class Sketch {
  readonly strokes: Stroke[] = [];
  readonly letters: Letter[] = [];
  /** What each letter stands for, in their order; without a letter, what is told of all. */
  readonly told: (readonly [letter: string, words: string])[] = [];

  stroke(xy: ArrayLike<number>, wideMm: number, { dashMm = [], closed = false, name }: StrokeStyle = {}): void {
    if (xy.length >= 4) this.strokes.push({ xy: Array.from(xy), wideMm, dashMm, closed, ...(name && { name }) });
  }

  line(from: Xy, to: Xy, wideMm: number, style: StrokeStyle = {}): void {
    this.stroke([...from, ...to], wideMm, style);
  }

  arrow(from: Xy, to: Xy, wideMm: number, headMm = 1.4): void {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]], long = Math.sqrt(dx * dx + dy * dy) || 1;
    const [ux, uy] = [(headMm * dx) / long, (headMm * dy) / long];
    this.line(from, to, wideMm);
    this.stroke([to[0] - ux - uy / 2, to[1] - uy + ux / 2, ...to, to[0] - ux + uy / 2, to[1] - uy - ux / 2], wideMm);
  }

  cross([x, y]: Xy, halfMm: number, wideMm: number): void {
    this.line([x - halfMm, y - halfMm], [x + halfMm, y + halfMm], wideMm);
    this.line([x - halfMm, y + halfMm], [x + halfMm, y - halfMm], wideMm);
  }

  /** Words beside a place, as they are: the number of a draft. */
  mark(text: string, at: Xy, toward: Xy = [1, 1]): void {
    this.letters.push({ text, at, toward });
  }

  /** The next letter of the alphabet beside a place, explained below the drawing. */
  key(words: string, at: Xy, toward: Xy = [1, 1]): void {
    const letter = String.fromCharCode("a".charCodeAt(0) + this.told.length);
    this.told.push([letter, words]);
    this.mark(letter, at, toward);
  }
}

/** Draws the strokes of a sketch, moved by (dx, dy). */
export function inkStrokes(ink: PageInk, { strokes }: Sketch, dx: number, dy: number): void {
  for (const { xy, wideMm, dashMm, closed, name } of strokes) {
    ink.style(wideMm, dashMm);
    const draw = (): void => ink.stroke(xy, closed, dx, dy);
    if (name) ink.named(name, draw);
    else draw();
  }
}

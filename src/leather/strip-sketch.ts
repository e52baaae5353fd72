/** What a line of a sketch stands for: the thing itself, its finer lines, dashes, marks on leather, what a clamp holds, other pieces, sizes. */
export type SketchKind = "edge" | "thin" | "dash" | "mark" | "grip" | "pieces" | "size";

export interface SketchLine {
  readonly kind: SketchKind;
  /** x0 y0 x1 y1 …, y downward. */
  readonly xy: readonly number[];
  readonly closed: boolean;
}

export interface SketchWord {
  readonly text: string;
  readonly x: number;
  /** Of the foot of its letters. */
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
}

/** A drawing as plain lines and words, in units of which letters are {@link letterHeight} high. */
export interface StripSketch {
  readonly key: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly SketchLine[];
  readonly words: readonly SketchWord[];
}

export const letterHeight = 4.4;

/** Puts a sketch together. */
export class Sketch {
  readonly #head: Pick<StripSketch, "key" | "title" | "width" | "height">;
  readonly #lines: SketchLine[] = [];
  readonly #words: SketchWord[] = [];

  constructor(key: string, title: string, width: number, height: number) {
    this.#head = { key, title, width, height };
  }

  line(kind: SketchKind, xy: readonly number[], closed = false): this {
    this.#lines.push({ kind, xy, closed });
    return this;
  }

  box(kind: SketchKind, x: number, y: number, width: number, height: number): this {
    return this.line(kind, [x, y, x + width, y, x + width, y + height, x, y + height], true);
  }

  /** A rounded outline: the corners are cut twice (Chaikin 1974). */
  curve(kind: SketchKind, corners: readonly number[], closed: boolean): this {
    let xy = corners;
    for (let round = 0; round < 2; round++) xy = cornersCut(xy);
    return this.line(kind, xy, closed);
  }

  /** A strip of leather round a middle, turned by degrees, with an arrow along it. */
  strip(x: number, y: number, length: number, width: number, degrees: number): this {
    const turn = (degrees * Math.PI) / 180, c = Math.cos(turn), s = Math.sin(turn);
    const at = (u: number, v: number): number[] => [rounded(x + c * u - s * v), rounded(y + s * u + c * v)];
    const a = length / 2, b = width / 2;
    return this.line("mark", [...at(-a, -b), ...at(a, -b), ...at(a, b), ...at(-a, b)], true);
  }

  /** A line that leads from words to what they speak of, without a head. */
  size(x0: number, y0: number, x1: number, y1: number): this {
    return this.line("size", [x0, y0, x1, y1]);
  }

  /** An arrow; with a head at both ends unless it shows a course of time. */
  arrow(x0: number, y0: number, x1: number, y1: number, oneHead = false): this {
    const long = Math.hypot(x1 - x0, y1 - y0), u = (2.6 * (x1 - x0)) / long, v = (2.6 * (y1 - y0)) / long;
    const head = (x: number, y: number, sign: number): number[] => [x - sign * u - 0.45 * v, y - sign * v + 0.45 * u, x, y, x - sign * u + 0.45 * v, y - sign * v - 0.45 * u].map(rounded);
    this.line("thin", [x0, y0, x1, y1]).line("thin", head(x1, y1, 1));
    return oneHead ? this : this.line("thin", head(x0, y0, -1));
  }

  /** A dimension between two places on a level line, its words above it. */
  span(x0: number, x1: number, y: number, text: string): this {
    this.arrow(x0, y, x1, y).line("thin", [x0, y - 2, x0, y + 2]).line("thin", [x1, y - 2, x1, y + 2]);
    return this.word(text, (x0 + x1) / 2, y - 1.6, "middle");
  }

  word(text: string, x: number, y: number, anchor: SketchWord["anchor"]): this {
    this.#words.push({ text, x, y, anchor });
    return this;
  }

  done(): StripSketch {
    return { ...this.#head, lines: this.#lines, words: this.#words };
  }
}

const rounded = (v: number): number => Math.round(100 * v) / 100;

function cornersCut(xy: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = 0; i < xy.length; i += 2) {
    const [x0, y0] = [xy[i]!, xy[i + 1]!], [x1, y1] = [xy[(i + 2) % xy.length]!, xy[(i + 3) % xy.length]!];
    out.push(0.75 * x0 + 0.25 * x1, 0.75 * y0 + 0.25 * y1, 0.25 * x0 + 0.75 * x1, 0.25 * y0 + 0.75 * y1);
  }
  return out.map(rounded);
}

const inks: Readonly<Record<SketchKind, string>> = {
  edge: 'fill="none" stroke="#222" stroke-width="0.7"',
  thin: 'fill="none" stroke="#222" stroke-width="0.4"',
  dash: 'fill="none" stroke="#222" stroke-width="0.4" stroke-dasharray="5 1.5 1 1.5"',
  mark: 'fill="none" stroke="#b5482a" stroke-width="1"',
  grip: 'fill="#d8d2c4" stroke="#222" stroke-width="0.5"',
  pieces: 'fill="#f1ece0" stroke="#222" stroke-width="0.4" stroke-dasharray="2 1.5"',
  size: 'fill="none" stroke="#555" stroke-width="0.35"',
};

/** The sketch as an SVG of its own, for pages. */
export function sketchSvg({ title, width, height, lines, words }: StripSketch): string {
  const path = ({ kind, xy, closed }: SketchLine): string => {
    let d = "";
    for (let i = 0; i < xy.length; i += 2) d += `${i === 0 ? "M" : "L"}${xy[i]!} ${xy[i + 1]!}`;
    return `<path d="${d}${closed ? "Z" : ""}" ${inks[kind]}/>`;
  };
  const word = ({ text, x, y, anchor }: SketchWord): string => `<text x="${x}" y="${y}" text-anchor="${anchor}" font-family="sans-serif" font-size="${letterHeight}" fill="#222">${text}</text>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${4 * width}" height="${4 * height}" role="img" aria-label="${title}">`,
    `<rect width="${width}" height="${height}" fill="#fdfbf7"/>`,
    ...lines.map(path),
    ...words.map(word),
    "</svg>\n",
  ].join("\n");
}

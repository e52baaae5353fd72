// What lies on the table, known exactly: the card's two sheets by arithmetic, shapes as a fine raster. mm, y up.
import { band, cardSheet, columns, markerMm, rowsOf, squareMm, type CardPaper } from "#photo/card.ts";

export type Rgb = readonly [number, number, number];

/** A shape on the table: filled by its outline, or a line along it of `strokeMm`; even-odd with `holes`. Colour in linear light. */
export interface Shape {
  readonly xy: ArrayLike<number>;
  readonly colour: Rgb;
  readonly strokeMm?: number;
  /** Where a stroke is missing, as parts of its length 0 … 1. */
  readonly gaps?: readonly (readonly [number, number])[];
}

export interface Table {
  readonly paper: CardPaper;
  readonly shapes: readonly Shape[];
  /** What is seen in the window; left out, the card's own paper. */
  readonly ground?: Rgb;
  /** How the right sheet was joined: moved, mm, and turned about the origin, radian. */
  readonly joint?: { readonly dx: number; readonly dy: number; readonly turn: number };
  /** Printed larger or smaller than it should be. */
  readonly printedAt?: number;
  /** Sheets that lie there; both where left out. */
  readonly sheets?: readonly ("left" | "right")[];
}

const white: Rgb = [0.8, 0.8, 0.78];
const ink: Rgb = [0.02, 0.02, 0.022];
const wood: Rgb = [0.25, 0.14, 0.07];
/** Raster of the shapes, per mm. */
const fine = 16;

/** What is seen at each place of the table: a number into the list of colours, linear light. */
export interface Painted {
  readonly colours: readonly Rgb[];
  readonly at: (x: number, y: number) => number;
}
const [woodAt, whiteAt, inkAt, groundAt, shapesAt] = [0, 1, 2, 3, 4];

export function paintTable(table: Table): Painted {
  const { paper, shapes, ground, joint = { dx: 0, dy: 0, turn: 0 }, printedAt = 1, sheets = ["left", "right"] } = table;
  const rows = rowsOf[paper];
  const wide = 2 * columns * squareMm + 40, high = rows * squareMm + 40;
  const at = new Uint8Array(wide * fine * high * fine);
  shapes.forEach((shape, i) => fillInto(at, wide * fine, shape, i + 1));
  const across = 2 * columns;
  const codes: (readonly (readonly boolean[])[] | undefined)[] = Array.from({ length: across * rows });
  for (const half of ["left", "right"] as const) for (const m of cardSheet(paper, half).markers) codes[Math.round(m.yMm / squareMm) * across + Math.round(m.xMm / squareMm)] = m.white;
  const [c, s] = [Math.cos(joint.turn), Math.sin(joint.turn)];
  /** -1 where the sheet does not lie. */
  const sheetAt = (x0: number, y0: number, half: "left" | "right"): number => {
    const x = half === "right" ? c * (x0 - joint.dx) + s * (y0 - joint.dy) : x0;
    const y = half === "right" ? -s * (x0 - joint.dx) + c * (y0 - joint.dy) : y0;
    const column = Math.floor(x / squareMm), row = Math.floor(y / squareMm);
    if ((half === "left") !== column < columns) return -1;
    if (x < -10 || x > across * squareMm + 10 || y < -20 || y > rows * squareMm + 10) return -1;
    if (column < 0 || column >= across || row < 0 || row >= rows) return whiteAt;
    if (column >= band && column < across - band && row >= band && row < rows - band) {
      const rim = band * squareMm + 3;
      return ground && x > rim && x < across * squareMm - rim && y > rim && y < rows * squareMm - rim ? groundAt : whiteAt;
    }
    const code = codes[row * across + column];
    if (!code) return inkAt;
    const edge = (squareMm - markerMm) / 2;
    const u = ((x - column * squareMm - edge) / markerMm) * 7;
    const v = ((y - row * squareMm - edge) / markerMm) * 7;
    if (u < 0 || v < 0 || u >= 7 || v >= 7) return whiteAt;
    return code[5 - Math.floor(v)]?.[Math.floor(u) - 1] === true ? whiteAt : inkAt;
  };
  const colours = [wood, white, ink, ground ?? white, ...shapes.map((shape) => shape.colour)];
  const seenAt = (x: number, y: number): number => {
    const i = Math.floor((x + 20) * fine), j = Math.floor((y + 20) * fine);
    if (i >= 0 && j >= 0 && i < wide * fine && j < high * fine) {
      const shape = at[j * wide * fine + i]!;
      if (shape > 0) return shapesAt + shape - 1;
    }
    for (const half of sheets) {
      const seen = sheetAt(x / printedAt, y / printedAt, half);
      if (seen >= 0) return seen;
    }
    return woodAt;
  };
  return { colours, at: seenAt };
}

/** Writes a shape into the raster, even-odd by scan lines; a stroke as discs along its line. */
function fillInto(at: Uint8Array, wide: number, { xy, strokeMm, gaps = [] }: Shape, value: number): void {
  const n = xy.length / 2;
  const px = (k: number): number => (xy[2 * (((k % n) + n) % n)]! + 20) * fine;
  const py = (k: number): number => (xy[2 * (((k % n) + n) % n) + 1]! + 20) * fine;
  if (strokeMm === undefined) {
    let [low, top] = [Infinity, -Infinity];
    for (let k = 0; k < n; k++) [low, top] = [Math.min(low, py(k)), Math.max(top, py(k))];
    for (let j = Math.floor(low); j <= top; j++) {
      const y = j + 0.5;
      const cuts: number[] = [];
      for (let k = 0; k < n; k++) {
        const [y0, y1] = [py(k), py(k + 1)];
        if (y0 > y !== y1 > y) cuts.push(px(k) + ((y - y0) / (y1 - y0)) * (px(k + 1) - px(k)));
      }
      cuts.sort((a, b) => a - b);
      for (let c = 0; c + 1 < cuts.length; c += 2) at.fill(value, j * wide + Math.ceil(cuts[c]! - 0.5), j * wide + Math.ceil(cuts[c + 1]! - 0.5));
    }
    return;
  }
  const r = (strokeMm / 2) * fine;
  for (let k = 0; k < n; k++) {
    const part = k / n;
    if (gaps.some(([a, b]) => part >= a && part < b)) continue;
    const steps = Math.max(1, Math.ceil(Math.hypot(px(k + 1) - px(k), py(k + 1) - py(k)) / 2));
    for (let t = 0; t < steps; t++) {
      const cx = px(k) + ((px(k + 1) - px(k)) * t) / steps, cy = py(k) + ((py(k + 1) - py(k)) * t) / steps;
      for (let j = Math.floor(cy - r); j <= cy + r; j++) {
        const half = r * r - (j + 0.5 - cy) ** 2;
        if (half > 0) at.fill(value, j * wide + Math.ceil(cx - Math.sqrt(half) - 0.5), j * wide + Math.ceil(cx + Math.sqrt(half) - 0.5));
      }
    }
  }
}

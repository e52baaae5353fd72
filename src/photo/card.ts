import { codeSide, markerCodes } from "./marker-codes.ts";

/**
 * The printed card: two sheets, each a frame two squares wide that is open on the side where they are joined, so that together
 * they lie round a window in which both tape halves have room. Squares alternate black and white; every white square of the
 * frame carries a marker of its own number. Corners where two black and two white squares meet are what is measured.
 * Coordinates: mm, x to the right, y up, origin at the lower left corner of the left sheet's squares.
 */
export type CardPaper = "A4" | "Letter";
export type CardHalf = "left" | "right";
export const cardPapers: readonly CardPaper[] = ["A4", "Letter"];
export const cardHalves: readonly CardHalf[] = ["left", "right"];

export const squareMm = 10;
/** Width of a marker with its black border; the white left round it keeps corners clear. */
export const markerMm = 7.7;
/** Squares across one sheet, and across the frame. */
export const columns = 18;
export const band = 2;
export const rowsOf: Readonly<Record<CardPaper, number>> = { A4: 26, Letter: 24 };
/** Lengths of the bars that the maker measures: upright and lying. */
export const barMm = 200;
export const barAcrossMm = 100;

export interface CardMarker {
  readonly id: number;
  /** Lower left corner of its square, mm. */
  readonly xMm: number;
  readonly yMm: number;
  /** Rows from the top, true where white. Without the black border. */
  readonly white: readonly (readonly boolean[])[];
}

export interface CardSheet {
  readonly paper: CardPaper;
  readonly half: CardHalf;
  /** Lower left corners of the black squares, x0 y0 x1 y1 …. */
  readonly black: Float64Array;
  readonly markers: readonly CardMarker[];
  /** Where two black and two white squares meet, x0 y0 x1 y1 …. */
  readonly corners: Float64Array;
}

/** Whether the square in a column of the sheet (0 at its left) and a row (0 at the bottom) belongs to the frame. */
function inFrame(paper: CardPaper, half: CardHalf, column: number, row: number): boolean {
  const rows = rowsOf[paper];
  if (column < 0 || column >= columns || row < 0 || row >= rows) return false;
  return row < band || row >= rows - band || (half === "left" ? column < band : column >= columns - band);
}

/** One of the two sheets in the card's coordinates: the right one as it lies when joined without error. */
export function cardSheet(paper: CardPaper, half: CardHalf): CardSheet {
  const left = half === "left" ? 0 : columns * squareMm;
  const black: number[] = [];
  const corners: number[] = [];
  const markers: CardMarker[] = [];
  let id = firstId(paper, half);
  for (let row = 0; row < rowsOf[paper]; row++) {
    for (let column = 0; column < columns; column++) {
      if (!inFrame(paper, half, column, row)) continue;
      const x = left + column * squareMm, y = row * squareMm;
      if ((column + row) % 2 === 0) black.push(x, y);
      else markers.push({ id, xMm: x, yMm: y, white: whiteOf(id++) });
      const around = inFrame(paper, half, column - 1, row) && inFrame(paper, half, column, row - 1) && inFrame(paper, half, column - 1, row - 1);
      if (around) corners.push(x, y);
    }
  }
  return { paper, half, black: Float64Array.from(black), markers, corners: Float64Array.from(corners) };
}

function whiteOf(id: number): boolean[][] {
  const code = markerCodes[id]!;
  const last = codeSide * codeSide - 1;
  return Array.from({ length: codeSide }, (_, r) => Array.from({ length: codeSide }, (_, c) => ((code >>> (last - r * codeSide - c)) & 1) === 1));
}

/** White squares of one sheet, and with it the numbers that its markers bear. */
const markersOn = (paper: CardPaper): number => ((2 * columns + rowsOf[paper] - 2 * band) * band) / 2;

export function firstId(paper: CardPaper, half: CardHalf): number {
  const before = paper === "A4" ? 0 : 2 * markersOn("A4");
  return before + (half === "left" ? 0 : markersOn(paper));
}

/** All that a photograph may look for in the window: the inner edge of the frame less what stays of the paper when it is cut out. */
export const rimMm = 6;
/** Where the window may be cut out, this far inside the frame. */
export const cutMm = 3;

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The window of the joined card, drawn in by `inset`, mm. */
export function windowOf(paper: CardPaper, inset: number): Box {
  const edge = band * squareMm + inset;
  return { minX: edge, minY: edge, maxX: 2 * columns * squareMm - edge, maxY: rowsOf[paper] * squareMm - edge };
}

import type { Mark, Piece, Xy } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import { placedXy, type CommonSheet, type PlacedPiece } from "#sheets/arrange.ts";
import { usualSheets } from "#sheets/choices.ts";
import type { NamePlate } from "#sheets/name-plate.ts";
import { gridOf } from "#sheets/paper.ts";
import type { Lettering, Stroke } from "#sheets/pen.ts";
import { drawPiece, type PieceDrawing } from "#sheets/piece-drawing.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { placeWords } from "#sheets/piece-words.ts";
import { Room } from "#sheets/room.ts";
import { patternSvg } from "#sheets/svg.ts";
import { ringIn, runsIn, type Window } from "./clip.ts";

/** Free paper round and between pieces, mm. */
const gapMm = 6;
/** A row of pieces is no longer than this, so that words can be read where the picture is shrunk to a page, mm. */
const rowMm = 300;

/** Pieces side by side in rows, as they are printed, on ground of their own so that they can be read on dark pages too. */
export function piecesPicture(title: string, pieces: readonly Piece[], plate: NamePlate): string {
  const { placed, widthMm, heightMm } = inRows(pieces);
  return picture(title, widthMm, heightMm, placed.map((p) => drawPiece(p, plate, [])));
}

export interface Detail {
  readonly piece: Piece;
  /** What is looked at, in the piece's own coordinates. */
  readonly middle: Xy;
  readonly words: string;
}

/** Places of pieces side by side, each in a window of one size: lines run on to its edge, what lies in it has its name. */
export function detailsPicture(title: string, { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }, details: readonly Detail[], plate: NamePlate): string {
  const drawings = details.map(({ piece, middle, words }, i) => {
    const window = { x: gapMm + i * (widthMm + gapMm), y: gapMm + captionMm, width: widthMm, height: heightMm };
    const place = { xMm: window.x + widthMm / 2 - middle[0], yMm: window.y + heightMm / 2 - middle[1], rotationDeg: 0 };
    const outline = placedXy(piece.outline.xy, place);
    const placed = { piece, batch: 0, place, outline, bounds: bounds({ xy: outline }) };
    const strokes = drawPiece(placed, plate, []).strokes.filter(({ kind }) => !ofWords.has(kind)).flatMap((s) => cutTo(s, window));
    const named = namesIn(placed, strokes, window);
    return { placed, strokes: [...strokes, ...named.strokes], words: [...named.words, { text: words, xMm: window.x, yMm: gapMm, heightMm: 3, angleDeg: 0, bold: true }] };
  });
  return picture(title, gapMm + details.length * (widthMm + gapMm), heightMm + captionMm + 2 * gapMm, drawings);
}

const captionMm = 6;
const ofWords: ReadonlySet<string> = new Set(["leader", "picture", "pictured"]);
const cutTo = (s: Stroke, window: Window): readonly Stroke[] => runsIn(s.xy, s.closed, window).map((xy) => ({ kind: s.kind, xy, closed: false }));

/** Names of the marks that lie in a window, beside them. */
function namesIn(whole: PlacedPiece, strokes: readonly Stroke[], window: Window): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const { xMm, yMm } = whole.place;
  const own: Window = { x: window.x - xMm + 1, y: window.y - yMm + 1, width: window.width - 2, height: window.height - 2 };
  const holds = ([x, y]: Xy): boolean => x > own.x && x < own.x + own.width && y > own.y && y < own.y + own.height;
  const marks = whole.piece.marks.flatMap((m): readonly Mark[] => {
    if (m.kind === "line") return runsIn(m.line.xy, false, own).slice(0, 1).map((xy) => ({ ...m, line: { xy } }));
    return (m.kind === "notch" || m.kind === "prick") && holds(m.at) ? [m] : [];
  });
  const outline = ringIn(whole.outline, window);
  const placed: PlacedPiece = { ...whole, piece: { ...whole.piece, marks }, outline, bounds: bounds({ xy: Float64Array.of(window.x, window.y, window.x + window.width, window.y + window.height) }) };
  const room = new Room(outline, placed.bounds, 0);
  for (const s of strokes) room.takeStroke(s.xy, 0.8);
  const anywhere = () => true;
  const points = placeWords(placed, room, "points", anywhere), lines = placeWords(placed, room, "lines", anywhere);
  return { strokes: [...points.strokes, ...lines.strokes], words: [...points.words, ...lines.words] };
}

/** Strokes and words that are no piece, on a sheet of their own. */
export function sketchPicture(title: string, { widthMm, heightMm, strokes, words }: { readonly widthMm: number; readonly heightMm: number; readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] }, like: Piece): string {
  const outline = Float64Array.of(0, 0, widthMm, 0, widthMm, heightMm, 0, heightMm);
  const placed: PlacedPiece = { piece: { ...like, name: title }, batch: 0, place: { xMm: 0, yMm: 0, rotationDeg: 0 }, outline, bounds: bounds({ xy: outline }) };
  return picture(title, widthMm, heightMm, [{ placed, strokes, words }]);
}

function inRows(pieces: readonly Piece[]): { readonly placed: readonly PlacedPiece[]; readonly widthMm: number; readonly heightMm: number } {
  const rows: { readonly pieces: Piece[]; widthMm: number; heightMm: number }[] = [];
  for (const piece of pieces) {
    const b = bounds(piece.outline), width = b.maxX - b.minX + gapMm, height = b.maxY - b.minY + gapMm;
    let row = rows[rows.length - 1];
    if (!row || row.widthMm + width > rowMm) rows.push((row = { pieces: [], widthMm: gapMm, heightMm: 0 }));
    row.pieces.push(piece);
    row.widthMm += width;
    row.heightMm = Math.max(row.heightMm, height);
  }
  const widthMm = Math.max(...rows.map((r) => r.widthMm));
  const heightMm = rows.reduce((sum, r) => sum + r.heightMm, gapMm);
  let top = heightMm - gapMm / 2;
  const placed = rows.flatMap((row) => {
    const middle = top - row.heightMm / 2;
    top -= row.heightMm;
    let left = gapMm;
    return row.pieces.map((piece) => {
      const b = bounds(piece.outline);
      const place = { xMm: rounded(left - b.minX), yMm: rounded(middle - (b.minY + b.maxY) / 2), rotationDeg: 0 };
      left += b.maxX - b.minX + gapMm;
      const outline = placedXy(piece.outline.xy, place);
      return { piece, batch: 0, place, outline, bounds: bounds({ xy: outline }) };
    });
  });
  return { placed, widthMm, heightMm };
}

const rounded = (v: number): number => Math.round(100 * v) / 100;

/** The ground of the sheets' family: warm white. */
const ground = `<rect width="100%" height="100%" fill="#fdfbf7" stroke="none"/>`;

function picture(title: string, widthMm: number, heightMm: number, drawings: readonly PieceDrawing[]): string {
  const sheet: CommonSheet = { widthMm: rounded(widthMm), heightMm: rounded(heightMm), columns: 1, rows: 1, grid: gridOf(printPaper(usualSheets)), placed: drawings.map((d) => d.placed) };
  return new TextDecoder().decode(patternSvg(title, sheet, drawings)).replace("</title>\n", `</title>\n${ground}\n`);
}

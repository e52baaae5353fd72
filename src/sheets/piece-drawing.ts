import type { Mark } from "#pieces/piece.ts";
import { fitCurves } from "#plane/curve-fit.ts";
import { traceCurves, type CurvePath } from "#plane/curve-path.ts";
import { bounds } from "#plane/measure.ts";
import { trace, traceOpen } from "#plane/pen.ts";
import { onSheet, placedXy, type PiecePlace, type PlacedPiece } from "./arrange.ts";
import { edgeMm } from "./best-place.ts";
import { benchOf, offStrips, strokeOnSheet, wordsOnSheet } from "./bench.ts";
import { textWidth } from "./lettering.ts";
import type { Lettering, SheetPen, Stroke, StrokeKind } from "./pen.ts";
import { leastPlate, ownLabel, placeNamePlate, setMiddle, type NamePlate } from "./name-plate.ts";
import { placeWords } from "./piece-words.ts";
import { Room, type Box } from "./room.ts";

/** Everything that is drawn for one piece, on the common sheet. The first stroke is the cutting line. */
export interface PieceDrawing {
  readonly placed: PlacedPiece;
  readonly strokes: readonly Stroke[];
  readonly words: readonly Lettering[];
}

/**
 * Draws a piece with its marks, each named in words beside it, and its name plate where there is room. All words keep off the
 * strips of joints where they can.
 */
export function drawPiece(onPages: PlacedPiece, plate: NamePlate, strips: readonly Box[]): PieceDrawing {
  const { straight: placed, leanDeg } = benchOf(onPages);
  const clear = offStrips(strips, leanDeg);
  const label = new Set(ownLabel(placed.piece));
  const drawn = placed.piece.marks.map((mark) => drawMark(mark, placed));
  const strokes: Stroke[] = [{ kind: "cut", xy: placed.outline, closed: true }, ...drawn.flatMap((d) => d.strokes)];
  const own = drawn.flatMap((d, i) => (label.has(i) ? [] : d.words));
  const begun = () => {
    // Words that find no place inside keep to the paper that is surely on the page.
    const room = new Room(placed.outline, placed.bounds, edgeMm);
    for (const s of strokes) room.takeStroke(s.closed ? ring(s.xy) : s.xy, s.kind === "cut" ? 1 : 0.8);
    const words = own.map((w) => offJoint(w, room, clear));
    for (const w of words) room.takeStroke(baseLine(w), w.heightMm * 0.9);
    return { room, words };
  };
  const { room, words } = begun();
  const points = placeWords(placed, room, "points", clear);
  const name = placeNamePlate(plate, true, room, placed, clear);
  const parts = name ? [points, name, placeWords(placed, room, "lines", clear)] : nameFirst(placed, plate, begun().room, clear);
  const [cut, ...rest] = [...strokes, ...parts.flatMap((p) => p.strokes)];
  return {
    placed: onPages,
    strokes: [{ ...cut!, xy: onPages.outline, curves: curvesOn(onPages.place, onPages.piece.outline.xy, true) }, ...rest.map((s) => strokeOnSheet(s, leanDeg))],
    words: [...words, ...parts.flatMap((p) => p.words)].map((w) => wordsOnSheet(w, leanDeg)),
  };
}

/** The words of a piece too small for all of them: its name before the names of its marks. */
function nameFirst(placed: PlacedPiece, plate: NamePlate, room: Room, clear: (box: Box) => boolean): readonly { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] }[] {
  const placedName = placeNamePlate(plate, true, room, placed, clear) ?? placeNamePlate(plate, false, room, placed, clear);
  const name = placedName ?? { strokes: [], words: [leastPlate(placed)] };
  if (!placedName) for (const w of name.words) room.takeStroke(baseLine(w), w.heightMm);
  return [name, placeWords(placed, room, "points", clear), placeWords(placed, room, "lines", clear)];
}

/** Feeds the cutting line of a drawn piece to a pen. */
export function traceCut({ strokes }: PieceDrawing, pen: SheetPen): void {
  traceStrokes(strokes.slice(0, 1), pen);
}

/** Feeds everything but the cutting line to a pen: marks, then words. */
export function traceRest({ strokes, words }: PieceDrawing, pen: SheetPen): void {
  traceStrokes(strokes.slice(1), pen);
  for (const w of words) pen.write(w);
}

function traceStrokes(strokes: readonly Stroke[], pen: SheetPen): void {
  for (const s of strokes) {
    pen.use(s.kind);
    if (s.curves) traceCurves(s.curves, pen);
    else if (s.closed) trace({ xy: s.xy }, pen);
    else traceOpen({ xy: s.xy }, pen);
    if (!s.closed) pen.end();
  }
}

/** A line of a piece as curves on the sheet. They are fitted in the piece's own coordinates, so that twins get the same ones. */
function curvesOn(place: PiecePlace, xy: Float64Array, closed: boolean): CurvePath {
  const curves = fitCurves(xy, closed);
  return { ...curves, xy: placedXy(curves.xy, place) };
}

/** The same points with the first repeated at the end. */
export function ring(xy: Float64Array): Float64Array {
  const out = new Float64Array(xy.length + 2);
  out.set(xy);
  out[xy.length] = xy[0]!;
  out[xy.length + 1] = xy[1]!;
  return out;
}

function drawMark(mark: Mark, placed: PlacedPiece): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const open = (kind: StrokeKind, ...points: readonly (readonly [number, number])[]): Stroke => ({ kind, xy: Float64Array.from(points.flat()), closed: false });
  switch (mark.kind) {
    case "line":
      return { strokes: [{ kind: mark.use, xy: placedXy(mark.line.xy, placed.place), closed: false, curves: curvesOn(placed.place, mark.line.xy, false) }], words: [] };
    case "notch":
      return { strokes: [open("notch", onSheet(mark.at, placed), onSheet(mark.toward, placed))], words: [] };
    case "prick": {
      const [x, y] = onSheet(mark.at, placed);
      return { strokes: [open("prick", [x - 1.5, y], [x + 1.5, y]), open("prick", [x, y - 1.5], [x, y + 1.5])], words: [] };
    }
    case "arrow":
      return { strokes: arrow(onSheet(mark.from, placed), onSheet(mark.to, placed)).map((p) => open("arrow", ...p)), words: [] };
    case "text":
      return { strokes: [], words: [setMiddle(mark.text, onSheet(mark.at, placed), mark.heightMm, upright(mark.angleDeg + placed.place.rotationDeg), false)] };
  }
}

/** Shaft of an arrow and two barbs at either end, 4 mm long at about 27°. */
function arrow(from: readonly [number, number], to: readonly [number, number]): readonly (readonly (readonly [number, number])[])[] {
  const dx = to[0] - from[0], dy = to[1] - from[1];
  const size = Math.sqrt(dx * dx + dy * dy) || 1;
  const ux = (dx / size) * 3.6, uy = (dy / size) * 3.6;
  return [
    [from, to],
    [[to[0] - ux - uy / 2, to[1] - uy + ux / 2], to, [to[0] - ux + uy / 2, to[1] - uy - ux / 2]],
    [[from[0] + ux - uy / 2, from[1] + uy + ux / 2], from, [from[0] + ux + uy / 2, from[1] + uy - ux / 2]],
  ];
}

/** The same slope, turned so that words do not stand on their heads. */
function upright(angleDeg: number): number {
  const a = (((angleDeg + 89.9999) % 180) + 180) % 180;
  return a - 89.9999;
}

/** What tells the inner half has no place of its own there, so it also makes way for what is drawn on the piece. */
const tellsHalf = "inside";

/** Words of the piece's own that a joint would run through, moved to the nearest place where none does, if there is one. */
function offJoint(w: Lettering, room: Room, clear: (box: Box) => boolean): Lettering {
  const b = bounds({ xy: baseLine(w) });
  const half = w.heightMm / 2;
  const box: Box = { x: b.minX - half, y: b.minY - half, width: b.maxX - b.minX + 2 * half, height: b.maxY - b.minY + 2 * half };
  if (clear(box) && (w.text !== tellsHalf || room.isFree(box, true))) return w;
  const size = { width: textWidth(w.text, w.heightMm, w.bold) + 2, height: 1.5 * w.heightMm + 1 };
  const free = room.nearestFree(size, [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2], clear);
  return free ? setMiddle(w.text, [free.x + size.width / 2, free.y + size.height / 2], w.heightMm, 0, w.bold) : w;
}

/** The line along the middle of written words, for taking their room. */
function baseLine(w: Lettering): Float64Array {
  const turn = (w.angleDeg * Math.PI) / 180;
  const ux = Math.cos(turn), uy = Math.sin(turn);
  const length = textWidth(w.text, w.heightMm, w.bold);
  const x = w.xMm - (uy * w.heightMm) / 2, y = w.yMm + (ux * w.heightMm) / 2;
  return Float64Array.of(x, y, x + ux * length, y + uy * length);
}

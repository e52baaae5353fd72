import type { Mark, Piece } from "#pieces/piece.ts";
import { lengthOf } from "#plane/measure.ts";
import { onSheet, placedXy, type PlacedPiece } from "./arrange.ts";
import { textWidth } from "./lettering.ts";
import type { Lettering, Stroke } from "./pen.ts";
import type { Box, Room } from "./room.ts";
import { partOf, shoePicture, type Profile } from "./shoe-picture.ts";

/** What is written large on a piece. */
export interface NamePlate {
  readonly title: string;
  readonly size: string;
  readonly profile: Profile;
}

/** Words centred on a point, turned about it. */
export function setMiddle(text: string, [x, y]: readonly [number, number], heightMm: number, angleDeg: number, bold: boolean): Lettering {
  const half = textWidth(text, heightMm, bold) / 2;
  const turn = (angleDeg * Math.PI) / 180;
  const ux = Math.cos(turn), uy = Math.sin(turn);
  return { text, xMm: x - ux * half + (uy * heightMm) / 2, yMm: y - uy * half - (ux * heightMm) / 2, heightMm, angleDeg, bold };
}

/** Words that tell the piece's edge: with or without allowances. */
export const edgeWords = (piece: Piece): string => (piece.net ? "net: no allowances" : "allowances included");

interface Line {
  readonly text: string;
  readonly heightMm: number;
  readonly bold: boolean;
}

/**
 * The texts of a piece's own label: the first says its name, the others follow it closely in the same direction. They are set
 * anew, as large as there is room for. Returns their places among the marks.
 */
export function ownLabel({ name, marks }: Piece): readonly number[] {
  const first = marks.findIndex((m) => m.kind === "text" && m.text === name);
  if (first < 0) return [];
  const block = [first];
  for (let i = first + 1; i < marks.length; i++) {
    const before = marks[i - 1]!, here = marks[i]!;
    if (before.kind !== "text" || here.kind !== "text" || here.angleDeg !== before.angleDeg) break;
    if (Math.hypot(here.at[0] - before.at[0], here.at[1] - before.at[1]) > 2.2 * Math.max(here.heightMm, before.heightMm)) break;
    block.push(i);
  }
  return block;
}

/** The lines of the name plate; heights of capitals from the ISO 3098 series (from memory). */
function plateLines(piece: Piece, { title, size }: NamePlate, nameMm: number): readonly Line[] {
  const small = nameMm >= 7 ? 3.5 : 2.5;
  const own = ownLabel(piece).slice(1).flatMap((i) => {
    const mark = piece.marks[i]!;
    return mark.kind === "text" ? [mark.text] : [];
  });
  const told = own.length > 0 ? own : [size ? `${piece.side}, size ${size}` : piece.side, edgeWords(piece), `cut ${piece.perPair} in ${piece.material}`, ...(title ? [title] : [])];
  return [
    { text: piece.name.charAt(0).toUpperCase() + piece.name.slice(1), heightMm: nameMm, bold: true },
    ...told.map((text, i) => ({ text, heightMm: i === 0 && nameMm >= 7 ? 5 : small, bold: i === 0 })),
  ];
}

const lineGap = 0.75;
const padMm = 2;
/** Height of the name and width of the picture, best first, mm. */
const plateSizes = [[10, 34], [7, 34], [10, 0], [7, 0], [5, 28], [5, 0], [3.5, 0]] as const;

/** Writes the piece's name as large as there is room for, off the joints if it can, with a little picture of its place. */
export function placeNamePlate(plate: NamePlate, room: Room, placed: PlacedPiece, keepClear: readonly Box[]): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } | undefined {
  const middle = [(placed.bounds.minX + placed.bounds.maxX) / 2, (placed.bounds.minY + placed.bounds.maxY) / 2] as const;
  for (const clear of [true, false]) {
    for (const [nameMm, pictureMm] of plateSizes) {
      const lines = plateLines(placed.piece, plate, nameMm);
      const block = blockOf(lines, pictureMm, plate.profile);
      for (const upright of [false, true]) {
        const size = { width: (upright ? block.height : block.width) + 2 * padMm, height: (upright ? block.width : block.height) + 2 * padMm };
        const box = room.nearestFree(size, middle, (b) => !clear || !keepClear.some((k) => meets(k, b)));
        if (!box) continue;
        room.takeBox(box);
        return setBlock(lines, block, box, upright, placed.piece, plate.profile, pictureMm);
      }
    }
  }
  return undefined;
}

interface Block {
  readonly width: number;
  readonly height: number;
}

function blockOf(lines: readonly Line[], pictureMm: number, profile: Profile): Block {
  const picture = pictureMm > 0 ? 3 + (pictureMm * profile.heightMm) / profile.widthMm : 0;
  return {
    width: Math.max(pictureMm, ...lines.map((l) => textWidth(l.text, l.heightMm, l.bold))),
    height: lines.reduce((sum, l, i) => sum + l.heightMm * (i === 0 ? 1 : 1 + lineGap), 0) + picture + 1,
  };
}

/** Lays out the block in its own x to the right, y up, then turns it into the box. */
function setBlock(lines: readonly Line[], block: Block, box: Box, upright: boolean, piece: Piece, profile: Profile, pictureMm: number): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const turn = (x: number, y: number): readonly [number, number] =>
    upright ? [box.x + box.width - padMm - y, box.y + padMm + x] : [box.x + padMm + x, box.y + padMm + y];
  const words: Lettering[] = [];
  let y = block.height;
  lines.forEach((l, i) => {
    y -= l.heightMm * (i === 0 ? 1 : 1 + lineGap);
    const [xMm, yMm] = turn(0, y);
    words.push({ text: l.text, xMm, yMm, heightMm: l.heightMm, angleDeg: upright ? 90 : 0, bold: l.bold });
  });
  if (pictureMm === 0) return { strokes: [], words };
  const picture = shoePicture(profile, partOf(piece.name), piece.side === "right", [0, 0], pictureMm);
  const set = (kind: "picture" | "pictured") => (xy: Float64Array): Stroke => {
    const out = new Float64Array(xy.length);
    for (let i = 0; i < xy.length; i += 2) [out[i], out[i + 1]] = turn(xy[i]!, xy[i + 1]!) as [number, number];
    return { kind, xy: out, closed: false };
  };
  return { strokes: [...picture.thin.map(set("picture")), ...picture.bold.map(set("pictured"))], words };
}

const meets = (a: Box, b: Box): boolean => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Names the marks in small words beside them, with a thin leader where the words had to go farther off. */
export function placeWords(placed: PlacedPiece, room: Room): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const strokes: Stroke[] = [];
  const words: Lettering[] = [];
  const heightMm = 2.5;
  const named = placed.piece.marks.flatMap((mark) => (mark.kind === "text" || !mark.name ? [] : [{ name: mark.name, anchors: anchorsOf(mark, placed) }]));
  // Points first: a line can be named anywhere along it, a notch only at its place.
  named.sort((a, b) => a.anchors.length - b.anchors.length);
  for (const mark of named) {
    const others = named.flatMap((m) => (m === mark ? [] : m.anchors));
    const found = beside(mark.anchors, others, { width: textWidth(mark.name, heightMm) + 1, height: heightMm + 1.6 }, room);
    if (!found) continue;
    room.takeBox(found.box);
    words.push({ text: mark.name, xMm: found.box.x + 0.5, yMm: found.box.y + 1, heightMm, angleDeg: 0, bold: false });
    if (found.far > 2.4) strokes.push({ kind: "leader", xy: leader(found.anchor, found.box), closed: false });
  }
  return { strokes, words };
}

type Anchor = readonly [number, number];

/** Where words for a mark may point to: its place, or places every few mm along a line, its middle first. */
function anchorsOf(mark: Exclude<Mark, { kind: "text" }>, placed: PlacedPiece): readonly Anchor[] {
  switch (mark.kind) {
    case "notch":
      return [onSheet(mark.toward, placed)];
    case "prick":
      return [onSheet(mark.at, placed)];
    case "arrow":
      return alongLine(Float64Array.from([...onSheet(mark.from, placed), ...onSheet(mark.to, placed)]));
    case "line":
      return alongLine(placedXy(mark.line.xy, placed.place));
  }
}

function alongLine(xy: Float64Array): readonly Anchor[] {
  const length = lengthOf({ xy });
  const parts = Math.max(2, 2 * Math.ceil(length / 10));
  const points: Anchor[] = [];
  let gone = 0;
  for (let i = 0; i + 3 < xy.length; i += 2) {
    const dx = xy[i + 2]! - xy[i]!, dy = xy[i + 3]! - xy[i + 1]!;
    const step = Math.sqrt(dx * dx + dy * dy);
    for (; points.length < parts && (points.length * length) / parts <= gone + step; ) {
      const t = step > 0 ? ((points.length * length) / parts - gone) / step : 0;
      points.push([xy[i]! + t * dx, xy[i + 1]! + t * dy]);
    }
    gone += step;
  }
  points.push([xy[xy.length - 2]!, xy[xy.length - 1]!]);
  const middle = (points.length - 1) / 2;
  return points.map((p, i) => ({ p, off: Math.abs(i - middle) })).sort((a, b) => a.off - b.off).map(({ p }) => p);
}

const directions: readonly Anchor[] = [[1, 0], [-1, 0], [0, 1], [0, -1], [0.7, 0.7], [-0.7, 0.7], [0.7, -0.7], [-0.7, -0.7]];

/**
 * A blank place beside one of the anchors: as near as can be, inside the piece if it can be, and where no other mark (given by
 * `others`) is nearer to the words than their own.
 */
function beside(anchors: readonly Anchor[], others: readonly Anchor[], size: { readonly width: number; readonly height: number }, room: Room): { readonly box: Box; readonly anchor: Anchor; readonly far: number } | undefined {
  for (const [within, alone] of [[true, true], [true, false], [false, false]] as const) {
    for (const far of [1.2, 2.4, 4, 7, 10, 14, 20, 28]) {
      for (const anchor of anchors) {
        for (const [ux, uy] of directions) {
          const box: Box = {
            x: anchor[0] + far * ux + (ux > 0.1 ? 0 : ux < -0.1 ? -size.width : -size.width / 2),
            y: anchor[1] + far * uy + (uy > 0.1 ? 0 : uy < -0.1 ? -size.height : -size.height / 2),
            ...size,
          };
          if (!room.isFree(box, within)) continue;
          if (alone && others.some((o) => toBox(o, box) < 1.5 * toBox(anchor, box) + 1)) continue;
          return { box, anchor, far };
        }
      }
    }
  }
  const box = room.nearestFree(size, anchors[0]!, () => true);
  return box && { box, anchor: anchors[0]!, far: toBox(anchors[0]!, box) };
}

/** From a point to the nearest side of a box, mm. */
function toBox([x, y]: Anchor, box: Box): number {
  const dx = x - Math.min(box.x + box.width, Math.max(box.x, x)), dy = y - Math.min(box.y + box.height, Math.max(box.y, y));
  return Math.sqrt(dx * dx + dy * dy);
}

/** From the mark to the nearest side of its words. */
function leader([x, y]: Anchor, box: Box): Float64Array {
  const cx = Math.min(box.x + box.width, Math.max(box.x, x));
  const cy = Math.min(box.y + box.height, Math.max(box.y, y));
  return Float64Array.of(x, y, cx, cy);
}

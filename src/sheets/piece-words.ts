import type { Mark, Piece } from "#pieces/piece.ts";
import { lengthOf } from "#plane/measure.ts";
import { onSheet, placedXy, type PlacedPiece } from "./arrange.ts";
import { brokenIntoLines, textWidth } from "./lettering.ts";
import type { Lettering, Stroke } from "./pen.ts";
import type { Box, Room } from "./room.ts";
import { shoePicture, type Profile } from "./shoe-picture.ts";

/** What is written large on a piece. */
export interface NamePlate {
  readonly title: string;
  readonly size: string;
  /** Without one no little picture is drawn. */
  readonly profile?: Profile | undefined;
}

/** Words centred on a point, turned about it. */
export function setMiddle(text: string, [x, y]: readonly [number, number], heightMm: number, angleDeg: number, bold: boolean): Lettering {
  const half = textWidth(text, heightMm, bold) / 2;
  const turn = (angleDeg * Math.PI) / 180;
  const ux = Math.cos(turn), uy = Math.sin(turn);
  return { text, xMm: x - ux * half + (uy * heightMm) / 2, yMm: y - uy * half - (ux * heightMm) / 2, heightMm, angleDeg, bold };
}

/** Words that tell the piece's edge: with or without allowances. */
const edgeWords = (piece: Piece): string => (piece.net ? "net: no allowances" : "allowances included");

/** What a piece's own label says of its edge and how it is seen: what follows its name, side and material, less the title. */
export function edgeNote(piece: Piece, title: string): string {
  const told = ownLabel(piece).slice(3).flatMap((i) => {
    const mark = piece.marks[i]!;
    return mark.kind === "text" && !title.includes(mark.text) ? [mark.text] : [];
  });
  return told.length > 0 ? told.map((t, i) => (i + 1 < told.length && !t.endsWith(",") ? `${t},` : t)).join(" ") : edgeWords(piece);
}

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

/** How large a plate is written: heights of capitals from the ISO 3098 series (from memory), and where it is broken; mm. */
interface PlateSize {
  readonly nameMm: number;
  readonly sideMm: number;
  readonly smallMm: number;
  readonly pictureMm: number;
  readonly breakMm: number;
}
const plateSizes: readonly PlateSize[] = [
  { nameMm: 14, sideMm: 7, smallMm: 3.5, pictureMm: 50, breakMm: 80 },
  { nameMm: 10, sideMm: 5, smallMm: 3.5, pictureMm: 42, breakMm: 64 },
  { nameMm: 10, sideMm: 5, smallMm: 3.5, pictureMm: 34, breakMm: 48 },
  { nameMm: 10, sideMm: 5, smallMm: 3.5, pictureMm: 0, breakMm: 64 },
  { nameMm: 10, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 100 },
  { nameMm: 10, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 74 },
  { nameMm: 10, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 56 },
  { nameMm: 7, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 130 },
  { nameMm: 7, sideMm: 5, smallMm: 2.5, pictureMm: 0, breakMm: 74 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 28, breakMm: 56 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 28, breakMm: 38 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 56 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 48 },
  { nameMm: 7, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 38 },
  { nameMm: 5, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 130 },
  { nameMm: 5, sideMm: 3.5, smallMm: 2.5, pictureMm: 0, breakMm: 56 },
  { nameMm: 5, sideMm: 2.5, smallMm: 2.5, pictureMm: 0, breakMm: 38 },
  { nameMm: 3.5, sideMm: 2.5, smallMm: 1.8, pictureMm: 0, breakMm: 38 },
];

/** The lines of the name plate: the name, side and size, and the rest broken into lines. */
function plateLines(piece: Piece, { title, size }: NamePlate, { nameMm, sideMm, smallMm, breakMm }: PlateSize): readonly Line[] {
  const own = ownLabel(piece).slice(1).flatMap((i) => {
    const mark = piece.marks[i]!;
    return mark.kind === "text" ? [mark.text] : [];
  });
  const told = own.length > 0 ? own : [size ? `${piece.side}, size ${size}` : piece.side, edgeWords(piece), `cut ${piece.perPair} in ${piece.material}`, ...(title ? [title] : [])];
  const rest = told.slice(1).map((t, i, all) => (i + 1 < all.length && !t.endsWith(",") ? `${t},` : t)).join(" ");
  return [
    { text: piece.name.charAt(0).toUpperCase() + piece.name.slice(1), heightMm: nameMm, bold: true },
    { text: told[0]!, heightMm: sideMm, bold: true },
    ...brokenIntoLines(rest, smallMm, breakMm).map((text) => ({ text, heightMm: smallMm, bold: false })),
  ];
}

/** From one line's base to the next: clear of what hangs below the upper one. */
const leading = (lines: readonly Line[], i: number): number => (i === 0 ? lines[0]!.heightMm : Math.max(1.75 * lines[i]!.heightMm, lines[i]!.heightMm + 0.32 * lines[i - 1]!.heightMm + 0.8));
const padMm = 1.2;
/** Writes the piece's name as large as there is room for, off the joints if it can, with a little picture of its place. */
export function placeNamePlate(plate: NamePlate, room: Room, placed: PlacedPiece, offJoints: (box: Box) => boolean): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } | undefined {
  const middle = [(placed.bounds.minX + placed.bounds.maxX) / 2, (placed.bounds.minY + placed.bounds.maxY) / 2] as const;
  for (const clear of [true, false]) {
    for (const size of plateSizes) {
      const { pictureMm } = size;
      const lines = plateLines(placed.piece, plate, size);
      const block = blockOf(lines, pictureMm, plate.profile);
      for (const upright of [false, true]) {
        const needed = { width: (upright ? block.height : block.width) + 2 * padMm, height: (upright ? block.width : block.height) + 2 * padMm };
        const box = room.nearestFree(needed, middle, (b) => !clear || offJoints(b));
        if (!box) continue;
        room.takeWords(box);
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

function blockOf(lines: readonly Line[], pictureMm: number, profile: Profile | undefined): Block {
  const picture = pictureMm > 0 && profile ? 3 + (pictureMm * profile.heightMm) / profile.widthMm : 0;
  return {
    width: Math.max(profile ? pictureMm : 0, ...lines.map((l) => textWidth(l.text, l.heightMm, l.bold))),
    height: lines.reduce((sum, _, i) => sum + leading(lines, i), 0) + picture + 1,
  };
}

/** Lays out the block in its own x to the right, y up, then turns it into the box. */
function setBlock(lines: readonly Line[], block: Block, box: Box, upright: boolean, piece: Piece, profile: Profile | undefined, pictureMm: number): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const turn = (x: number, y: number): readonly [number, number] =>
    upright ? [box.x + box.width - padMm - y, box.y + padMm + x] : [box.x + padMm + x, box.y + padMm + y];
  const words: Lettering[] = [];
  let y = block.height;
  lines.forEach((l, i) => {
    y -= leading(lines, i);
    const [xMm, yMm] = turn(0, y);
    words.push({ text: l.text, xMm, yMm, heightMm: l.heightMm, angleDeg: upright ? 90 : 0, bold: l.bold });
  });
  if (pictureMm === 0 || !profile) return { strokes: [], words };
  const picture = shoePicture(profile, piece.name, piece.side === "right", [0, 0], pictureMm);
  const set = (kind: "picture" | "pictured") => (xy: Float64Array): Stroke => {
    const out = new Float64Array(xy.length);
    for (let i = 0; i < xy.length; i += 2) [out[i], out[i + 1]] = turn(xy[i]!, xy[i + 1]!) as [number, number];
    return { kind, xy: out, closed: false };
  };
  return { strokes: [...picture.thin.map(set("picture")), ...picture.bold.map(set("pictured"))], words };
}

/**
 * Names marks of some kinds in small words beside them, with a thin leader where the words had to go farther off. Points come
 * before the name plate, lines after it: a line can be named anywhere along it, a notch only at its place.
 */
export function placeWords(placed: PlacedPiece, room: Room, which: "points" | "lines", offJoints: (box: Box) => boolean): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const strokes: Stroke[] = [];
  const words: Lettering[] = [];
  const heightMm = 2.5;
  const named = placed.piece.marks.flatMap((mark) => (mark.kind === "text" || !mark.name || (which === "lines") !== (mark.kind === "line" || mark.kind === "arrow") ? [] : [{ name: mark.name, anchors: anchorsOf(mark, placed) }]));
  for (const mark of named) {
    const others = named.flatMap((m) => (m === mark ? [] : m.anchors));
    const found = beside(mark.anchors, others, textWidth(mark.name, heightMm) + 1, heightMm + 1.6, room, offJoints);
    if (!found) continue;
    const { box, upright } = found;
    words.push({ text: mark.name, xMm: upright ? box.x + box.width - 0.8 : box.x + 0.5, yMm: upright ? box.y + 0.5 : box.y + 0.8, heightMm, angleDeg: upright ? 90 : 0, bold: false });
    if (found.far > nearMm) {
      const xy = leader(found.anchor, box);
      strokes.push({ kind: "leader", xy, closed: false });
      room.takeStroke(xy, 0.5);
    }
    room.takeWords(box);
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

const directions: readonly Anchor[] = [[1, 0], [-1, 0], [0, 1], [0, -1], [0.7, 0.7], [-0.7, 0.7], [0.7, -0.7], [-0.7, -0.7], [0.25, 1], [-0.25, 1], [0.25, -1], [-0.25, -1]];

/** Words nearer than this need no leader, mm. */
const nearMm = 2.4;

interface Found {
  readonly box: Box;
  readonly anchor: Anchor;
  readonly far: number;
  readonly upright: boolean;
}

/**
 * How places are tried: best first. `whole` asks that the words keep off the joints, `alone` that no other mark is nearer to
 * them than their own.
 */
const tries = [
  { whole: true, within: true, alone: true, upright: false, most: 10 },
  { whole: true, within: true, alone: true, upright: true, most: 10 },
  { whole: true, within: true, alone: false, upright: false, most: 28 },
  { whole: true, within: true, alone: false, upright: true, most: 28 },
  { whole: true, within: false, alone: false, upright: false, most: 28 },
  { whole: false, within: true, alone: false, upright: false, most: 28 },
  { whole: false, within: false, alone: false, upright: true, most: 28 },
] as const;

/** A blank place beside one of the anchors, as near as can be, inside the piece if it can be. */
function beside(anchors: readonly Anchor[], others: readonly Anchor[], length: number, height: number, room: Room, offJoints: (box: Box) => boolean): Found | undefined {
  for (const { whole, within, alone, upright, most } of tries) {
    const size = upright ? { width: height, height: length } : { width: length, height };
    for (const far of [1.2, 2.4, 4, 7, 10, 14, 20, 28]) {
      if (far > most) break;
      for (const anchor of anchors) {
        for (const [ux, uy] of directions) {
          const box: Box = {
            x: anchor[0] + far * ux + (ux > 0.1 ? 0 : ux < -0.1 ? -size.width : -size.width / 2),
            y: anchor[1] + far * uy + (uy > 0.1 ? 0 : uy < -0.1 ? -size.height : -size.height / 2),
            ...size,
          };
          if (!room.isFree(box, within) || (whole && !offJoints(box))) continue;
          if (far > nearMm && room.crossesWords(...leaderEnds(anchor, box))) continue;
          if (alone && others.some((o) => toBox(o, box) < 1.5 * toBox(anchor, box) + 1)) continue;
          return { box, anchor, far, upright };
        }
      }
    }
  }
  const size = { width: length, height };
  const box = room.nearestFree(size, anchors[0]!, offJoints) ?? room.nearestFree(size, anchors[0]!, () => true);
  return box && { box, anchor: anchors[0]!, far: toBox(anchors[0]!, box), upright: false };
}

/** From a point to the nearest side of a box, mm. */
function toBox([x, y]: Anchor, box: Box): number {
  const dx = x - Math.min(box.x + box.width, Math.max(box.x, x)), dy = y - Math.min(box.y + box.height, Math.max(box.y, y));
  return Math.sqrt(dx * dx + dy * dy);
}

/** From the mark to the nearest side of its words. */
function leaderEnds([x, y]: Anchor, box: Box): readonly [number, number, number, number] {
  return [x, y, Math.min(box.x + box.width, Math.max(box.x, x)), Math.min(box.y + box.height, Math.max(box.y, y))];
}
const leader = (anchor: Anchor, box: Box): Float64Array => Float64Array.from(leaderEnds(anchor, box));

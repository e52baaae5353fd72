import type { Mark, Piece } from "#pieces/piece.ts";
import { lengthOf } from "#plane/measure.ts";
import { onSheet, placedXy, type PlacedPiece } from "./arrange.ts";
import { textWidth } from "./lettering.ts";
import type { Lettering, Stroke } from "./pen.ts";
import type { Box, Room } from "./room.ts";

/**
 * Names marks of some kinds in small words beside them, with a thin leader where the words had to go farther off. Points come
 * before the name plate, lines after it: a line can be named anywhere along it, a notch only at its place.
 */
export function placeWords(placed: PlacedPiece, room: Room, which: "points" | "lines", offJoints: (box: Box) => boolean): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[] } {
  const strokes: Stroke[] = [];
  const words: Lettering[] = [];
  const heightMm = 2.5;
  const named = together(marksToName(placed.piece).map((mark) => ({ name: mark.name, points: mark.kind === "notch" || mark.kind === "prick", anchors: anchorsOf(mark, placed) }))).filter((m) => m.points === (which === "points"));
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
interface Named {
  readonly name: string;
  /** Whether only notches and pricks are among them. */
  readonly points: boolean;
  readonly anchors: readonly Anchor[];
}

/** Drafts of lasting after the first have their number beside them, which says enough. */
const numbered = /^draft (?!1,)/;

/** Marks whose names are written beside them: not those whose name stands on the piece anyway. */
function marksToName({ marks }: Piece): readonly Exclude<Mark, { kind: "text" }>[] {
  const written = new Set(marks.flatMap((m) => (m.kind === "text" ? [m.text] : [])));
  return marks.flatMap((m) => (m.kind === "text" || m.name === "" || numbered.test(m.name) || written.has(m.name) ? [] : [m]));
}

/** Marks of one name this close to each other are named once, mm: the notches of a seam, the nails of a lift, a line and its ends. */
const oneNameMm = 40;

function together(marks: readonly Named[]): readonly Named[] {
  const out: Named[] = [];
  for (const mark of marks) {
    const [x, y] = mark.anchors[0]!;
    const near = out.findIndex((m) => m.name === mark.name && m.anchors.some((a) => Math.hypot(a[0] - x, a[1] - y) < oneNameMm));
    if (near < 0) out.push(mark);
    else out[near] = merged(out[near]!, mark);
  }
  return out;
}

/** Points on a line of their name need no words of their own. */
function merged(a: Named, b: Named): Named {
  return a.points === b.points ? { ...a, anchors: [...a.anchors, ...b.anchors] } : a.points ? b : a;
}

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
  const open = (box: Box): boolean => !room.crossesWords(...leaderEnds(anchors[0]!, box));
  const wishes = [(box: Box) => offJoints(box) && open(box), open, offJoints, () => true];
  const box = wishes.reduce<Box | undefined>((found, wish) => found ?? room.nearestFree(size, anchors[0]!, wish), undefined);
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

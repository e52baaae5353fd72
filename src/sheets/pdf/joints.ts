import { overlapMm } from "../paper.ts";
import type { CommonSheet } from "../arrange.ts";
import { textWidth } from "../lettering.ts";
import { ring, type PieceDrawing } from "../piece-drawing.ts";
import type { Joint, Tiling } from "../tiling.ts";
import { inkJointMark, longMarkMm, shortMarkMm } from "./joint-mark.ts";
import type { PageInk } from "./page-ink.ts";
import type { PageWindow } from "./pdf-pen.ts";

/** A joint as it is drawn: a line on the common sheet, mm, with its marks and the place of its words along it. */
export interface DrawnJoint {
  readonly joint: Joint;
  /** Where the line lies: x of an upright joint, y of a level one. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly marks: readonly { readonly along: number; readonly halfMm: number; readonly number: number }[];
  /** Where words of `wordsMm` find room along the line, if they do. */
  readonly words: number | undefined;
}

const wordsMm = 42;
/** Where marks are wished along a joint: far apart, so that a turn shows; a long joint has a third. */
const sharesOf = (lengthMm: number): readonly number[] => (lengthMm > 350 ? [0.12, 0.5, 0.88] : [0.15, 0.85]);
/** Marks keep away from the corners where four pages meet, mm. */
const cornerMm = 14;

/** Places marks and words of all joints where no pattern line runs, and numbers the marks through. */
export function drawJoints(sheet: CommonSheet, tiling: Tiling, drawings: readonly PieceDrawing[]): readonly DrawnJoint[] {
  let number = 0;
  return tiling.joints.map((joint): DrawnJoint => {
    const over = tiling.tiles[joint.over]!, under = tiling.tiles[joint.under]!;
    const w = sheet.grid.windowWidthMm;
    const upright = joint.runs === "upright";
    const at = upright ? over.xMm + overlapMm / 2 : over.yMm + over.heightMm - overlapMm / 2;
    const from = upright ? Math.max(over.yMm, under.yMm) : over.xMm;
    const to = upright ? Math.min(over.yMm + over.heightMm, under.yMm + under.heightMm) : from + w;
    const taken = inkAlong(drawings, upright, at, from, to);
    const marks = sharesOf(to - from).map((share) => {
      const mark = markPlace(taken, from, share * (to - from));
      take(taken, mark.along - from, 2 * mark.halfMm + 2);
      return { ...mark, number: ++number };
    });
    const words = freePlace(taken, from, 0.5 * (to - from), wordsMm, cornerMm);
    return { joint, at, from, to, marks, words };
  });
}

/** A mark near its wished place: a long one where a long one finds room within the near half of the joint, else a short one. */
function markPlace(taken: Uint8Array, from: number, wished: number): { readonly along: number; readonly halfMm: number } {
  for (const [halfMm, within] of [[longMarkMm, 0.3], [shortMarkMm, 0.6]] as const) {
    const along = freePlace(taken, from, wished, 2 * halfMm + 2, cornerMm, within);
    if (along !== undefined) return { along, halfMm };
  }
  return { along: from + wished, halfMm: shortMarkMm };
}

/** For each mm along a joint whether ink lies within the overlap there. */
function inkAlong(drawings: readonly PieceDrawing[], upright: boolean, at: number, from: number, to: number): Uint8Array {
  const taken = new Uint8Array(Math.ceil(to - from));
  const near = overlapMm / 2 + 1;
  for (const { strokes, words } of drawings) {
    const lines = [...strokes.map((s) => (s.closed ? ring(s.xy) : s.xy)), ...words.map((w) => wordsLine(w.xMm, w.yMm, textWidth(w.text, w.heightMm, w.bold), w.angleDeg))];
    for (const xy of lines) {
      for (let i = 0; i + 3 < xy.length; i += 2) {
        const across0 = xy[upright ? i : i + 1]! - at, across1 = xy[upright ? i + 2 : i + 3]! - at;
        if ((across0 > near && across1 > near) || (across0 < -near && across1 < -near)) continue;
        const dx = xy[i + 2]! - xy[i]!, dy = xy[i + 3]! - xy[i + 1]!;
        const parts = Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy))));
        for (let k = 0; k <= parts; k++) {
          const x = xy[i]! + (dx * k) / parts, y = xy[i + 1]! + (dy * k) / parts;
          const along = Math.floor((upright ? y : x) - from);
          if (Math.abs((upright ? x : y) - at) <= near && along >= 0 && along < taken.length) taken[along] = 1;
        }
      }
    }
  }
  return taken;
}

function wordsLine(x: number, y: number, width: number, angleDeg: number): Float64Array {
  const turn = (angleDeg * Math.PI) / 180;
  return Float64Array.of(x, y, x + width * Math.cos(turn), y + width * Math.sin(turn));
}

/** The free place of a length nearest to the wished one, as its middle; none within a share of the joint means none. */
function freePlace(taken: Uint8Array, from: number, wished: number, length: number, corner: number, within = 0.6): number | undefined {
  const half = Math.ceil(length / 2);
  for (let off = 0; off < taken.length * within; off += 2) {
    for (const middle of [wished + off, wished - off]) {
      const a = Math.floor(middle) - half, b = Math.floor(middle) + half;
      if (a < corner || b > taken.length - corner) continue;
      let free = true;
      for (let i = a; i < b && free; i++) free = taken[i] === 0;
      if (free) return from + Math.floor(middle);
    }
  }
  return undefined;
}

function take(taken: Uint8Array, middle: number, length: number): void {
  for (let i = Math.max(0, Math.floor(middle - length / 2)); i < Math.min(taken.length, middle + length / 2); i++) taken[i] = 1;
}

/** Draws a joint on one of its two pages: `role` says which. Pages are named by their printed numbers. */
export function inkJoint(ink: PageInk, drawn: DrawnJoint, window: PageWindow, role: "over" | "under", pageUnder: number, pageOver: number): void {
  const dx = window.leftOnPaperMm - window.xMm, dy = window.bottomOnPaperMm - window.yMm;
  const upright = drawn.joint.runs === "upright";
  const point = (along: number, off: number): readonly [number, number] => (upright ? [drawn.at + off + dx, along + dy] : [along + dx, drawn.at + off + dy]);
  const line = (a: readonly [number, number], b: readonly [number, number]) => ink.line(a[0], a[1], b[0], b[1]);
  if (role === "over") ink.style(0.25, [3, 2]);
  else ink.style(0.18);
  line(point(drawn.from, 0), point(drawn.to, 0));
  for (const { along, halfMm, number } of drawn.marks) inkJointMark(ink, (a, off) => point(along + a, off), { halfMm, upright, label: String(number) });
  if (drawn.words === undefined) return;
  const words = role === "over" ? `cut here, lay on page ${pageUnder}` : `page ${pageOver} is laid on from here`;
  const start = drawn.words - textWidth(words, 1.8) / 2;
  // Words stand on the side that is kept in view: right of (below) the line on the upper page, left of (above) it on the lower.
  const off = upright ? (role === "over" ? 3.1 : -1) : role === "over" ? -3.1 : 1;
  const [x, y] = point(start, off);
  ink.text(words, x, y, 1.8, { angleDeg: upright ? 90 : 0 });
}

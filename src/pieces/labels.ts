import { bounds } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Side } from "#last/last.ts";
import type { Mark, Xy } from "./piece.ts";
import { Room } from "./room.ts";

/** Lines of text under each other. `{side}` in a text stands for left or right. */
export interface LabelBlock {
  readonly lines: readonly LabelLine[];
  /** Middle of the block. */
  readonly at: Xy;
  readonly angleDeg: number;
}

export interface LabelLine {
  readonly text: string;
  readonly heightMm: number;
}

/** Room that a capital's width and the gap after it take, as a share of its height; a wide sans, to be safe. */
const advance = 0.8;
/** Distance from line to line as a share of the taller one's height. */
const leading = 1.6;
/** Least room between a text and a line of the piece, mm. */
const clear = 1.5;

/** Width and height of a block, mm, before it is turned. */
export function blockSize(lines: readonly LabelLine[]): readonly [number, number] {
  let width = 0;
  let height = 0;
  for (const [i, line] of lines.entries()) {
    width = Math.max(width, spoken(line.text, "right").length * line.heightMm * advance);
    height += i === 0 ? line.heightMm : line.heightMm * leading;
  }
  return [width, height];
}

/** The box round a placed block, closed, for others to stay clear of. */
export function blockOutline(block: LabelBlock): Polyline {
  const [width, height] = blockSize(block.lines);
  const corners = boxCorners(block.at, width / 2, height / 2, block.angleDeg);
  return { xy: Float64Array.from([...corners, corners[0]!].flat()) };
}

/** The block's texts as marks, each by the middle of its line. */
export function laidText(block: LabelBlock, side: Side): readonly Mark[] {
  const [, height] = blockSize(block.lines);
  const [ux, uy] = turned(block.angleDeg);
  const marks: Mark[] = [];
  let top = height / 2;
  for (const [i, line] of block.lines.entries()) {
    const middle = top - (i === 0 ? 0.5 : leading - 0.5) * line.heightMm;
    top -= (i === 0 ? 1 : leading) * line.heightMm;
    // Up is a quarter turn to the left of the writing direction.
    marks.push({
      kind: "text",
      text: spoken(line.text, side),
      at: [block.at[0] - uy * middle, block.at[1] + ux * middle],
      heightMm: line.heightMm,
      angleDeg: block.angleDeg,
    });
  }
  return marks;
}

/** The block on the twin: its middle mirrored, its angle such that it still reads. */
export function mirrorBlock(block: LabelBlock): LabelBlock {
  return { ...block, at: [block.at[0], -block.at[1]], angleDeg: readable(-block.angleDeg) };
}

/** The same direction of the line, turned so that it reads: in [−90, 90). Adds 0 so that −0 does not appear. */
export function readable(angleDeg: number): number {
  let a = angleDeg % 180;
  if (a >= 90) a -= 180;
  if (a < -90) a += 180;
  return a + 0;
}

export interface LabelPlace {
  /** Outline in which the block must lie. */
  readonly within: Outline;
  /** Lines it must not touch. */
  readonly avoid: readonly Polyline[];
  /** Where it stands best. */
  readonly near: Xy;
  readonly angleDeg: number;
}

/**
 * Finds room for a block: the place nearest to the wished one where it lies clear of every line; smaller letters are tried
 * where there is none. Where even the smallest do not fit, the smallest stand at the wished place.
 */
export function placeBlock(lines: readonly LabelLine[], place: LabelPlace): LabelBlock {
  const { within, near, angleDeg } = place;
  const box = bounds(within);
  const room = new Room(within, place.avoid);
  let clearMm: Float64Array | undefined;
  // Whether a place lies in the piece is the same for letters of every size: 0 not known yet, 1 outside, 2 inside.
  const known = new Uint8Array(nearestFirst.length);
  let scaled = lines;
  for (const scale of [1, 0.85, 0.7, 0.6, 0.5, 0.4]) {
    scaled = lines.map((l) => ({ text: l.text, heightMm: l.heightMm * scale }));
    const [width, height] = blockSize(scaled);
    // A line nearer than this lies in the block whichever way it is turned.
    const leastMm = Math.min(width, height) / 2 + clear;
    for (let k = 0; k < nearestFirst.length; k++) {
      const [dx, dy, cell] = nearestFirst[k]!;
      // Most find their place at once; only a longer search is worth a survey.
      if (k === surveyFrom) clearMm ??= room.clearance(near, stepMm, reach).mm;
      if (clearMm && clearMm[cell]! < leastMm) continue;
      const at: Xy = [near[0] + dx, near[1] + dy];
      if (known[k] === 1 || at[0] < box.minX || at[0] > box.maxX || at[1] < box.minY || at[1] > box.maxY) continue;
      if (known[k] === 0) known[k] = room.holds(at[0], at[1]) ? 2 : 1;
      if (known[k] === 1 || room.meets(boxCorners(at, width / 2 + clear, height / 2 + clear, angleDeg))) continue;
      return { lines: scaled, at, angleDeg };
    }
  }
  return { lines: scaled, at: near, angleDeg };
}

const stepMm = 3;
const reach = 30;
const surveyFrom = 60;
/** Steps of a grid of 3 mm up to 90 mm to either side, nearest first, with the number of the place row by row. */
const nearestFirst: readonly (readonly [number, number, number])[] = (() => {
  const steps: (readonly [number, number, number])[] = [];
  for (let i = -reach; i <= reach; i++) for (let j = -reach; j <= reach; j++) steps.push([stepMm * i, stepMm * j, (j + reach) * (2 * reach + 1) + i + reach]);
  return steps.sort((a, b) => a[0] * a[0] + a[1] * a[1] - b[0] * b[0] - b[1] * b[1]);
})();

/** Corners of a box round a middle, half sizes given, turned by an angle. */
export function boxCorners(at: Xy, halfWidth: number, halfHeight: number, angleDeg: number): readonly Xy[] {
  const [ux, uy] = turned(angleDeg);
  const corner = (a: number, b: number): Xy => [at[0] + a * ux - b * uy, at[1] + a * uy + b * ux];
  return [
    corner(-halfWidth, -halfHeight),
    corner(halfWidth, -halfHeight),
    corner(halfWidth, halfHeight),
    corner(-halfWidth, halfHeight),
  ];
}

/** Direction of an angle; exact for quarter turns. */
function turned(angleDeg: number): Xy {
  if (angleDeg === 0) return [1, 0];
  if (angleDeg === -90) return [0, -1];
  const a = (angleDeg * Math.PI) / 180;
  return [Math.cos(a), Math.sin(a)];
}

function spoken(text: string, side: Side): string {
  return text.replaceAll("{side}", side);
}

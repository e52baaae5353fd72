import { mirrorPolyline } from "#plane/mirror.ts";
import { bounds } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { blockSize, boxCorners, placeBlock, type LabelBlock, type LabelLine } from "../labels.ts";
import { lineMark } from "../marks.ts";
import type { Material, Xy } from "../piece.ts";
import { Room } from "../room.ts";
import { lineOf } from "./shapes.ts";

export interface StripPiece {
  readonly name: string;
  readonly material: Material;
  readonly outline: Outline;
  readonly marks: readonly Drawn[];
  readonly notes: readonly string[];
  readonly labels: Labels;
  readonly count?: number;
  /** Where its name stands best; its middle where nothing is said. */
  readonly near?: Xy;
  /** What is free across it between its folds: the words go on fewer lines where that is narrow. */
  readonly freeMm?: number;
  readonly directionDeg?: number;
}

/** A small piece that lies along +x, its least stretch along it. */
export function stripDraft({ name, material, outline, marks, notes, labels, count = 1, near, freeMm = Infinity, directionDeg = 0 }: StripPiece): Draft {
  const box = bounds(outline);
  const avoid = marks.flatMap((m) => (m.kind === "line" ? [m.line] : []));
  const lines = flatter(pieceLines({ name, material, notes, count, labels }), freeMm);
  const place = { within: outline, avoid, near: near ?? ([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] as const), angleDeg: 0 };
  const whole = placeBlock(lines, place);
  // On the smallest pieces there is room for name and side alone.
  const label = isFree(whole, new Room(outline, avoid)) ? whole : placeBlock(lines.slice(0, 2).map((l) => ({ ...l, heightMm: lines[1]!.heightMm })), place);
  return { name, material, net: false, outline, marks, labels: [label], directionDeg, ...(count === 1 ? {} : { count }) };
}

function isFree({ lines, at, angleDeg }: LabelBlock, room: Room): boolean {
  const [width, height] = blockSize(lines);
  return room.holds(...at) && !room.meets(boxCorners(at, width / 2, height / 2, angleDeg));
}

/** Least letters that are still read, as a share of the usual ones, and what stays free above and below them, mm. */
const smallest = 0.5;
const clearMm = 3;

/** The words below the name on as few lines as the room across asks for. */
function flatter([name, ...rest]: readonly LabelLine[], freeMm: number): readonly LabelLine[] {
  for (let count = rest.length; ; count--) {
    const per = Math.ceil(rest.length / count);
    const joined = Array.from({ length: Math.ceil(rest.length / per) }, (_, k): LabelLine => ({ text: rest.slice(k * per, (k + 1) * per).map((l) => l.text).join(", "), heightMm: rest[0]!.heightMm }));
    const lines = [name!, ...joined];
    if (count === 1 || blockSize(lines)[1] * smallest + clearMm <= freeMm) return lines;
  }
}

/** Fold lines along both long edges of a piece that lies on the x axis, none where nothing is folded. */
export function foldPair(name: string, foldMm: number, ...points: readonly (readonly [number, number])[]): readonly Drawn[] {
  if (foldMm === 0) return [];
  const line = lineOf(...points);
  return [lineMark(name, "fold", line), lineMark(name, "fold", mirrorPolyline(line))];
}

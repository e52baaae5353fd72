import { mirrorPolyline } from "#plane/mirror.ts";
import { bounds } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { placeBlock } from "../labels.ts";
import { lineMark } from "../marks.ts";
import type { Material } from "../piece.ts";
import { lineOf } from "./shapes.ts";

export interface StripPiece {
  readonly name: string;
  readonly material: Material;
  readonly outline: Outline;
  readonly marks: readonly Drawn[];
  readonly notes: readonly string[];
  readonly labels: Labels;
  readonly count?: number;
}

/** A small piece that lies along +x, its least stretch along it. */
export function stripDraft({ name, material, outline, marks, notes, labels, count = 1 }: StripPiece): Draft {
  const box = bounds(outline);
  const avoid = marks.flatMap((m) => (m.kind === "line" ? [m.line] : []));
  const lines = pieceLines({ name, material, notes, count, labels });
  const label = placeBlock(lines, { within: outline, avoid, near: [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2], angleDeg: 0 });
  return { name, material, net: false, outline, marks, labels: [label], directionDeg: 0, ...(count === 1 ? {} : { count }) };
}

/** Fold lines along both long edges of a piece that lies on the x axis, none where nothing is folded. */
export function foldPair(name: string, foldMm: number, ...points: readonly (readonly [number, number])[]): readonly Drawn[] {
  if (foldMm === 0) return [];
  const line = lineOf(...points);
  return [lineMark(name, "fold", line), lineMark(name, "fold", mirrorPolyline(line))];
}

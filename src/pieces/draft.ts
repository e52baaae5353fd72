import { area, perimeter } from "#plane/measure.ts";
import { mirrorOutline, mirrorPoint, mirrorPolyline } from "#plane/mirror.ts";
import type { Outline } from "#plane/outline.ts";
import type { Side } from "#last/last.ts";
import { laidText, mirrorBlock, type LabelBlock } from "./labels.ts";
import type { GroundName, Mark, Material, Piece } from "./piece.ts";

/** A piece before it is one of a pair: always drawn as a right one, with its texts still to be laid. */
export interface Draft {
  readonly name: string;
  readonly material: Material;
  readonly net: boolean;
  readonly outline: Outline;
  readonly marks: readonly Exclude<Mark, { kind: "text" }>[];
  readonly labels: readonly LabelBlock[];
  readonly directionDeg: number;
  readonly ground?: GroundName;
  /** How many of this very outline one pair needs on each side, where it is not one. */
  readonly count?: number;
}

/** The two pieces of a draft, the one of the last's own side first. The left one is the mirror of the right one, bit for bit. */
export function bothOf(draft: Draft, own: Side): readonly [Piece, Piece] {
  const right = rightOf(draft);
  const left = leftOf(draft, right);
  return own === "right" ? [right, left] : [left, right];
}

function rightOf(draft: Draft): Piece {
  return {
    name: draft.name,
    side: "right",
    material: draft.material,
    perPair: draft.count ?? 1,
    net: draft.net,
    outline: draft.outline,
    marks: [...draft.marks, ...draft.labels.flatMap((b) => laidText(b, "right"))],
    directionDeg: draft.directionDeg,
    areaMm2: area(draft.outline),
    perimeterMm: perimeter(draft.outline),
    ...(draft.ground && { ground: draft.ground }),
  };
}

function leftOf(draft: Draft, right: Piece): Piece {
  return {
    ...right,
    side: "left",
    outline: mirrorOutline(draft.outline),
    marks: [...draft.marks.map(mirrorMark), ...draft.labels.flatMap((b) => laidText(mirrorBlock(b), "left"))],
    directionDeg: draft.directionDeg === 0 ? 0 : -draft.directionDeg,
  };
}

function mirrorMark(mark: Exclude<Mark, { kind: "text" }>): Exclude<Mark, { kind: "text" }> {
  switch (mark.kind) {
    case "line":
      return { ...mark, line: mirrorPolyline(mark.line) };
    case "notch":
      return { ...mark, at: mirrorPoint(mark.at), toward: mirrorPoint(mark.toward) };
    case "prick":
      return { ...mark, at: mirrorPoint(mark.at) };
    case "arrow":
      return { ...mark, from: mirrorPoint(mark.from), to: mirrorPoint(mark.to) };
  }
}

import type { Mark, Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { strokeStyles, type StrokeKind } from "../pen.ts";

type Xy = readonly [number, number];

/** A piece at a scale, drawn size over true size: on its longer side, or as it is, turned by a quarter where that is said. */
export interface SmallPiece {
  readonly piece: Piece;
  readonly scale: number;
  readonly turned: boolean;
  /** Drawn, mm. */
  readonly wide: number;
  readonly high: number;
}

/** By which a drawn outline is found again in the file: its place among the pieces that the book shows. */
export const drawnName = (of: "cover" | "index", i: number): string => `${of}-piece-${i}`;

export function smallPiece(piece: Piece, scale: number, lie: "long" | "as drawn" = "long"): SmallPiece {
  const { minX, minY, maxX, maxY } = bounds(piece.outline);
  const [w, h] = [scale * (maxX - minX), scale * (maxY - minY)];
  const turned = lie === "long" && h > w;
  return { piece, scale, turned, wide: turned ? h : w, high: turned ? w : h };
}

/** Draws it with its upper left corner at (x, top): its outline and, where they are asked for, the lines, notches and arrow drawn on it. */
export function inkSmallPiece(ink: PageInk, { piece, scale, turned }: SmallPiece, x: number, top: number, name: string, marks: readonly Mark["kind"][]): void {
  const { minX, maxX, maxY } = bounds(piece.outline);
  const at = ([px, py]: Xy): Xy => (turned ? [x + scale * (maxY - py), top - scale * (maxX - px)] : [x + scale * (px - minX), top - scale * (maxY - py)]);
  const along = (xy: Float64Array): number[] => thinned(xy).flatMap((p) => at(p));
  ink.style(0.35);
  ink.named(name, () => ink.stroke(along(piece.outline.xy), true));
  for (const mark of piece.marks) if (marks.includes(mark.kind)) inkMark(ink, mark, at, along, scale);
}

/** About as many points of a line as the eye can tell apart; both ends and the outermost points are kept, so that no size changes. */
function thinned(xy: Float64Array): readonly Xy[] {
  const n = xy.length / 2, every = Math.max(1, Math.floor(n / 400));
  const kept = new Set([0, n - 1]);
  for (const axis of [0, 1]) {
    let least = 0, most = 0;
    for (let i = 1; i < n; i++) {
      if (xy[2 * i + axis]! < xy[2 * least + axis]!) least = i;
      if (xy[2 * i + axis]! > xy[2 * most + axis]!) most = i;
    }
    kept.add(least).add(most);
  }
  const out: Xy[] = [];
  for (let i = 0; i < n; i++) if (i % every === 0 || kept.has(i)) out.push([xy[2 * i]!, xy[2 * i + 1]!]);
  return out;
}

function inkMark(ink: PageInk, mark: Mark, at: (p: Xy) => Xy, along: (xy: Float64Array) => number[], scale: number): void {
  switch (mark.kind) {
    case "line":
      use(ink, mark.use, scale);
      return ink.stroke(along(mark.line.xy));
    case "notch":
      use(ink, "notch", scale);
      return ink.line(...at(mark.at), ...at(mark.toward));
    case "prick": {
      const [x, y] = at(mark.at);
      use(ink, "prick", scale);
      ink.line(x - 0.6, y, x + 0.6, y);
      return ink.line(x, y - 0.6, x, y + 0.6);
    }
    case "arrow":
      use(ink, "arrow", scale);
      return inkArrow(ink, at(mark.from), at(mark.to));
    case "text":
  }
}

/** Marks are as thin and as finely dashed as the drawing is small. */
function use(ink: PageInk, kind: StrokeKind, scale: number): void {
  const { dashMm } = strokeStyles[kind], fine = Math.max(0.4, scale);
  ink.style(0.18, dashMm.map((mm) => mm * fine));
}

/** With a head at both ends: least stretch has no sense. */
function inkArrow(ink: PageInk, from: Xy, to: Xy): void {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]], long = Math.sqrt(dx * dx + dy * dy) || 1;
  const head = Math.min(1.8, long / 3), [ux, uy] = [(head * dx) / long, (head * dy) / long];
  ink.line(...from, ...to);
  for (const [[x, y], s] of [[from, 1], [to, -1]] as const) ink.stroke([x + s * ux - uy / 2, y + s * uy + ux / 2, x, y, x + s * ux + uy / 2, y + s * uy - ux / 2]);
}

import { arcLengths } from "#plane/along.ts";
import { partsInside } from "#plane/clip.ts";
import { bounds } from "#plane/measure.ts";
import { rightNormal } from "#plane/edge-offset.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { segmentAt } from "#plane/along.ts";
import { edgePoint, type Edge } from "./net-upper.ts";
import type { Mark, Xy } from "./piece.ts";

type Line = Extract<Mark, { kind: "line" }>;
type Notch = Extract<Mark, { kind: "notch" }>;
type Arrow = Extract<Mark, { kind: "arrow" }>;

/** Depth of a notch on a lasting margin or a card, and on a fold, where it must end well before the fold line; mm. */
export const notchDepthMm = 3;
export const foldNotchDepthMm = 2;

export function lineMark(name: string, use: Line["use"], line: Polyline, as?: Line["as"]): Line {
  return { kind: "line", name, use, line, ...(as && { as }) };
}

/** Length of the mark that stands for a notch where the edge stays in sight, mm. */
const tickMm = 4;

/** A short line square to an edge and inward from it, in a notch's stead: nothing is cut into an edge that is seen. */
export function tickAt(name: string, edge: Edge, s: number): Line {
  const [x, y] = edgePoint(edge, s);
  const [nx, ny] = outward(edge, s);
  return lineMark(name, "place", { xy: Float64Array.of(x, y, x - tickMm * nx, y - tickMm * ny) }, "notch");
}

/** A straight line drawn as far as it lies in an outline; none, one or several marks. */
export function straightMarks(name: string, use: Line["use"], within: Outline, from: Xy, to: Xy): readonly Line[] {
  return partsInside(within, from, to).map(([a, b]) => lineMark(name, use, { xy: Float64Array.of(a[0], a[1], b[0], b[1]) }));
}

/** A notch square to an edge, its mouth `outMm` outside it and its end a depth farther in. */
export function notchAt(name: string, edge: Edge, s: number, outMm: number, depthMm: number): Notch {
  const p = edgePoint(edge, s);
  const [nx, ny] = outward(edge, s);
  return {
    kind: "notch",
    name,
    at: [p[0] + outMm * nx, p[1] + outMm * ny],
    toward: [p[0] + (outMm - depthMm) * nx, p[1] + (outMm - depthMm) * ny],
  };
}

/** A notch along a line from inside a piece: where that line first leaves it. None where it never does. */
export function centreNotch(name: string, outline: Outline, inside: Xy, beyond: Xy, depthMm: number): readonly Notch[] {
  const part = partsInside(outline, inside, beyond)[0];
  if (!part) return [];
  const at = part[1];
  const dx = beyond[0] - inside[0];
  const dy = beyond[1] - inside[1];
  const length = Math.sqrt(dx * dx + dy * dy);
  return [{ kind: "notch", name, at, toward: [at[0] - (depthMm * dx) / length, at[1] - (depthMm * dy) / length] }];
}

/** Unit direction to the right of the edge's travel, blended between its points. */
export function outward(edge: Edge, s: number): Xy {
  const i = segmentAt(edge.arc, s);
  const span = edge.arc[i + 1]! - edge.arc[i]!;
  const t = Math.min(1, Math.max(0, (s - edge.arc[i]!) / span));
  const a = rightNormal(edge.line.xy, i, false);
  const b = rightNormal(edge.line.xy, i + 1, false);
  const x = (1 - t) * a[0] + t * b[0];
  const y = (1 - t) * a[1] + t * b[1];
  const length = Math.sqrt(x * x + y * y);
  return [x / length, y / length];
}

/** The arrow of least stretch along x through a height y, in the longest free part between two x, a little short of both ends. */
export function lengthwiseArrow(within: Outline, y: number, fromX: number, toX: number): readonly Arrow[] {
  const parts = partsInside(within, [fromX, y], [toX, y]).filter(([a, b]) => Math.abs(b[0] - a[0]) > 16);
  const longest = parts.reduce<(typeof parts)[number] | undefined>(
    (best, part) => (!best || Math.abs(part[1][0] - part[0][0]) > Math.abs(best[1][0] - best[0][0]) ? part : best),
    undefined,
  );
  if (!longest) return [];
  const way = longest[1][0] > longest[0][0] ? 1 : -1;
  return [{ kind: "arrow", name: "least stretch", from: [longest[0][0] + 5 * way, y], to: [longest[1][0] - 5 * way, y] }];
}

/** Both ends of an outline on the line x = const: lowest and highest y there. */
export function acrossAt(outline: Outline, x: number): readonly [Xy, Xy] | undefined {
  const box = bounds(outline);
  const parts = partsInside(outline, [x, box.minY - 1], [x, box.maxY + 1]);
  const first = parts[0];
  const last = parts[parts.length - 1];
  return first && last ? [first[0], last[1]] : undefined;
}

/** An outline as an edge that starts and ends at its first point. */
export function ringEdge(outline: Outline): Edge {
  const xy = new Float64Array(outline.xy.length + 2);
  xy.set(outline.xy);
  xy.set(outline.xy.subarray(0, 2), outline.xy.length);
  const line = { xy };
  return { line, arc: arcLengths(line) };
}

import { arcLengths, directionAt, joined, endPart, reversed } from "#plane/along.ts";
import { cutAtCrossing, endReachMm, extendEnd, extendStart, reflect } from "#plane/join.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Xy } from "./piece.ts";

/** Two lines brought to one corner. */
export interface Corner {
  readonly before: Polyline;
  readonly after: Polyline;
}

/** Both lines run on straight until they meet. Where they never do, their ends are joined straight. */
export function sharpCorner(before: Polyline, after: Polyline, reachMm: number): Corner {
  const cut = cutAtCrossing(extendEnd(before, reachMm), extendStart(after, reachMm));
  return cut ?? { before, after };
}

/** The corner of a sewn edge and a folded one. */
export interface FoldedCorner {
  /** The sewn edge up to the fold line and on to the tip of the fold. */
  readonly seam: Polyline;
  /** The fold line and the edge of the fold, both from the corner on. */
  readonly foldLine: Polyline;
  readonly foldEdge: Polyline;
  readonly at: Xy;
}

/**
 * Corner of a sewn cutting edge, which ends at the corner, and a folded edge, which starts there. Beyond the fold line the
 * sewn edge goes on as its own mirror image in the fold line, so that the fold comes down exactly on it and nothing shows.
 */
export function foldedCorner(seam: Polyline, foldLine: Polyline, foldEdge: Polyline, foldMm: number): FoldedCorner {
  const reach = 3 * foldMm + 12;
  const cut = cutAtCrossing(extendEnd(seam, reach), extendStart(foldLine, reach));
  if (!cut) return { seam, foldLine, foldEdge, at: [foldLine.xy[0]!, foldLine.xy[1]!] };
  const along = directionAt(foldLine, arcLengths(foldLine), 0, endReachMm);
  const below = reversed(endPart(cut.before, 4 * foldMm + reach));
  const beyond = new Float64Array(below.xy.length);
  for (let i = 0; i < beyond.length; i += 2) beyond.set(reflect([below.xy[i]!, below.xy[i + 1]!], cut.at, along), i);
  const tip = cutAtCrossing({ xy: beyond }, extendStart(foldEdge, reach));
  if (!tip) return { seam: cut.before, foldLine: cut.after, foldEdge, at: cut.at };
  return { seam: joined([cut.before, tip.before]), foldLine: cut.after, foldEdge: tip.after, at: cut.at };
}

/** The same corner where nothing is folded: the sewn edge runs straight on to the edge of the trim. */
export function straightCorner(seam: Polyline, trimLine: Polyline, trimEdge: Polyline, trimMm: number): FoldedCorner {
  const reach = 3 * trimMm + 12;
  const line = cutAtCrossing(extendEnd(seam, reach), extendStart(trimLine, reach));
  const edge = sharpCorner(seam, trimEdge, reach);
  const foldLine = line ? line.after : trimLine;
  return { seam: edge.before, foldLine, foldEdge: edge.after, at: [foldLine.xy[0]!, foldLine.xy[1]!] };
}

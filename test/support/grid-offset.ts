import { Clipper, EndType, JoinType } from "clipper2-ts";
import type { Outline } from "#plane/outline.ts";
import { signedArea } from "#plane/measure.ts";

/** Points of the grid a millimetre: a tenth of a micrometre, so that 10 m still fit exactly. */
const gridPerMm = 10_000;

export interface OffsetOptions {
  readonly join?: "round" | "mitre";
  /** How far a round join may lie inside its true arc, mm. */
  readonly arcToleranceMm?: number;
}

/**
 * The outline grown (positive) or shrunk (negative) by the same distance everywhere; may fall into parts, or none. Parts are
 * counter-clockwise, largest first; holes (a ring that closes on itself) are left out. Worked on an integer grid of 0.1 µm.
 */
export function offsetOutline(outline: Outline, mm: number, options: OffsetOptions = {}): readonly Outline[] {
  const { join = "round", arcToleranceMm = 0.002 } = options;
  const path = [];
  for (let i = 0; i < outline.xy.length; i += 2) {
    path.push({ x: Math.round(outline.xy[i]! * gridPerMm), y: Math.round(outline.xy[i + 1]! * gridPerMm) });
  }
  const joinType = join === "round" ? JoinType.Round : JoinType.Miter;
  const grown = Clipper.inflatePaths([path], mm * gridPerMm, joinType, EndType.Polygon, 10, arcToleranceMm * gridPerMm);
  return grown
    .map((part) => ({ xy: Float64Array.from(part.flatMap((p) => [p.x / gridPerMm, p.y / gridPerMm])) }))
    .map((part) => ({ part, size: signedArea(part) }))
    .filter(({ size }) => size > 0)
    .sort((a, b) => b.size - a.size)
    .map(({ part }) => part);
}

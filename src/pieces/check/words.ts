import { bounds } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import type { NetPanel, NetPlace, PlaceName } from "../panel.ts";
import type { Xy } from "../piece.ts";
import { halfWords } from "../words.ts";

const placeNames: Readonly<Record<PlaceName, string>> = {
  toe: "toe", throat: "throat", joint: "joint", waist: "waist", breast: "heel breast", seat: "seat", back: "back point",
  "quarter 1/4": "height at 1/4", "quarter 1/2": "height at 1/2", "quarter 3/4": "height at 3/4", lowest: "lowest place", seam: "seam",
};

/** So near to a place it is at it, mm. */
const atMm = 6;
/** A place that every maker knows is named rather than one of the others, even where it is this much farther away, mm. */
const ratherMm = 25;
const wellKnown: ReadonlySet<PlaceName> = new Set(["toe", "throat", "joint", "seat", "back"]);

/** A place of an edge in words, by the nearest named one: "joint, inside", "12 mm from the seat, outside"; by its ends where it has none. */
export function placeWords(panel: NetPanel, edge: number, s: number): string {
  const named = panel.places.filter((p) => p.edge === edge);
  const far = (p: NetPlace): number => Math.abs(p.s - s) + (wellKnown.has(p.name) ? 0 : ratherMm);
  const nearest = named.reduce<NetPlace | undefined>((a, b) => (a && far(a) <= far(b) ? a : b), undefined);
  if (!nearest) return `${Math.round(fromUpperEnd(panel, edge, s))} mm from its upper end`;
  const words = placeNames[nearest.name] + (nearest.half ? `, ${halfWords[nearest.half]}` : "");
  const away = Math.abs(nearest.s - s);
  return away < atMm ? words : `${Math.round(away)} mm from the ${words}`;
}

/** How far along a seam from its end at the topline, or from where it begins where neither end is there. */
export function fromUpperEnd({ edges }: NetPanel, edge: number, s: number): number {
  const { arc } = edges[edge]!;
  const next = edges[(edge + 1) % edges.length]!;
  return next.role === "topline" ? arc[arc.length - 1]! - s : s;
}

/** Where about in a piece a point lies: by thirds of its length, front at the toe, and by its half where it lies well off the middle. */
export function roughly(outline: Outline, at: Xy): string {
  const { minX, maxX, minY, maxY } = bounds(outline);
  const along = (at[0] - minX) / (maxX - minX);
  const part = along > 2 / 3 ? "front" : along < 1 / 3 ? "back" : "middle";
  const across = (at[1] - (minY + maxY) / 2) / (maxY - minY);
  return Math.abs(across) < 0.1 ? part : `${part}, ${halfWords[across > 0 ? "medial" : "lateral"]}`;
}

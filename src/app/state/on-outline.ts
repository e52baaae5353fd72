import { arcLengths, directionAt, nearestOn, pointAt } from "#plane/along.ts";
import { perimeter } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { ArrowKey } from "./pull.ts";

type Xy = readonly [number, number];

/** A traced outline as a track that marks slide along. */
export interface Track {
  readonly line: Polyline;
  readonly arc: Float64Array;
  readonly round: number;
}

export function trackOf(outline: Outline): Track {
  const { xy } = outline;
  const line = { xy: Float64Array.of(...xy, xy[0]!, xy[1]!) };
  return { line, arc: arcLengths(line), round: perimeter(outline) };
}

/** The outline that a place is nearest to, and the place on it. */
export function ontoNearest(tracks: readonly Track[], at: Xy): { readonly track: Track; readonly at: Xy } | undefined {
  let best: { readonly track: Track; readonly at: Xy; readonly distance: number } | undefined;
  for (const track of tracks) {
    const { x, y, distance } = nearestOn(track.line, track.arc, ...at);
    if (!best || distance < best.distance) best = { track, at: [x, y], distance };
  }
  return best;
}

/** The place at a share of the way round. */
export const partWay = ({ line, arc, round }: Track, share: number): Xy => pointAt(line, arc, share * round);

/** Length along the outline between two places on it, the shorter way round, mm. */
export function betweenOnTrack({ line, arc, round }: Track, a: Xy, b: Xy): number {
  const apart = Math.abs(nearestOn(line, arc, ...a).s - nearestOn(line, arc, ...b).s);
  return Math.min(apart, round - apart);
}

const ways: Readonly<Record<ArrowKey, Xy>> = { ArrowUp: [0, 1], ArrowDown: [0, -1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] };

/** One step along the outline, the way the arrow points; where the outline runs square to the arrow, up and right go the way it is traced. */
export function stepOnTrack({ line, arc, round }: Track, at: Xy, key: ArrowKey, mm: number): Xy {
  const from = nearestOn(line, arc, ...at).s;
  const [tx, ty] = directionAt(line, arc, from);
  const [ax, ay] = ways[key];
  const along = tx * ax + ty * ay;
  const way = Math.abs(along) < 0.2 ? (key === "ArrowUp" || key === "ArrowRight" ? 1 : -1) : Math.sign(along);
  return pointAt(line, arc, (((from + way * mm) % round) + round) % round);
}

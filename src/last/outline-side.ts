import { hullOf } from "#plane/hull.ts";
import type { Outline } from "#plane/outline.ts";
import { moved, scaled, turned } from "./outline-place.ts";
import { extent, Profile } from "./outline-profile.ts";

export interface PlacedSide {
  /** x from the heel end (0) to the toe end parallel to the ground, y the height above it. */
  readonly outline: Outline;
  /** Mean distance in height from the silhouette it was laid on, mm: how surely it lies right. */
  readonly offMm: number;
}

/**
 * Lays an outline drawn round the last on its side upright on its ground, toe at greater x. Every long straight that the
 * outline can lie on is tried as ground, seen from either side, and turned so that the seat has the height it has in `like`, the
 * silhouette of the last as planned; the nearest to that silhouette is kept.
 */
export function placeSide(outline: Outline, like: Outline): PlacedSide {
  const model = new Profile(moved(like, -extent(like.xy, 0)[0], 0));
  let best: PlacedSide | undefined;
  for (const [dx, dy] of longStraights(outline.xy))
    for (const mirror of [1, -1] as const) {
      let now = grounded(scaled(turned(outline, dx, -dy), mirror, 1));
      for (let round = 0; round < 5; round++) now = seatLevel(now, model);
      const offMm = distance(new Profile(now), model);
      if (!best || offMm < best.offMm) best = { outline: now, offMm };
    }
  return best!;
}

/** Lowest point to y = 0, heel end to x = 0. */
function grounded(outline: Outline): Outline {
  return moved(outline, -extent(outline.xy, 0)[0], -extent(outline.xy, 1)[0]);
}

/** Turned about the tread so that the bottom under the seat has the height it has in the model. */
function seatLevel(outline: Outline, model: Profile): Outline {
  const [from, to] = extent(outline.xy, 0);
  const profile = new Profile(outline);
  let lift = 0;
  for (const share of [0.05, 0.07, 0.09, 0.11, 0.13]) lift += (model.lowAt(share * model.to) - profile.lowAt(from + share * (to - from))) / 5;
  const reach = 0.6 * (to - from);
  const long = Math.sqrt(reach * reach + lift * lift);
  return grounded(turned(outline, reach / long, -lift / long));
}

function distance(profile: Profile, model: Profile): number {
  let sum = 0;
  for (let k = 1; k < 50; k++) {
    const [x, at] = [(k / 50) * profile.to, (k / 50) * model.to];
    sum += Math.abs(profile.lowAt(x) - model.lowAt(at)) + Math.abs(profile.highAt(x) - model.highAt(at));
  }
  return sum / 98;
}

/** Directions (unit) of the edges of the convex hull that are longer than 0.3 of the whole, the hull walked counter-clockwise. */
function longStraights(xy: Float64Array): (readonly [number, number])[] {
  const hull = hullOf(xy);
  const [left, right] = extent(xy, 0);
  const [low, high] = extent(xy, 1);
  const least = 0.3 * Math.max(right - left, high - low);
  const out: (readonly [number, number])[] = [];
  hull.forEach(([x, y], i) => {
    const [nx, ny] = hull[(i + 1) % hull.length]!;
    const long = Math.sqrt((nx - x) ** 2 + (ny - y) ** 2);
    if (long >= least) out.push([(nx - x) / long, (ny - y) / long]);
  });
  return out.length > 0 ? out : [[1, 0]];
}

import { must } from "#base/bug.ts";
import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import type { Arcs } from "./arcs.ts";
import { arcNearest, curveLength, pointOn } from "#last/surface-curve.ts";
import { featherHalf, footAtX, type Half } from "./feather.ts";
import type { HeightMark } from "./lines.ts";

/**
 * The height of the topline at `behindSeat` mm along the axis from the seat point: a tape laid up from the feather line in the
 * plane square to the axis, as far as the topline.
 */
export function heightMark({ last, arcs }: { readonly last: Last; readonly arcs: Arcs }, half: Half, topline: SurfaceCurve, behindSeat: number): HeightMark {
  const x = last.landmarks.seatPoint[0] + behindSeat;
  const feather = featherHalf(last.feather, half);
  const foot = footAtX(feather, x);
  must(foot, "a height mark beyond the feather line");
  const at = onTopline(topline, x);
  const arc = arcs.from(foot.foot, 400);
  const heightMm = arcNearest(arc, at);
  const share = behindSeat / (topline.points[topline.points.length - 3]! - last.landmarks.seatPoint[0]);
  return { share, alongFeatherMm: foot.along, heightMm, foot: foot.foot, at: pointOn(arc, Math.min(heightMm, curveLength(arc))) };
}

/** Share of the way from the seat point to below the throat where the lowest place is looked for. */
const lookFrom = 0.15, lookTo = 0.85;
/** First and last distance of the places looked at, mm: multiples of these, so that the tapes laid for one line serve the next. */
const coarseMm = 8, fineMm = 1;

/** The lowest place of a half: the least height of the topline between heel and vamp wing, to about a millimetre along the last. */
export function lowestMark(board: { readonly last: Last; readonly arcs: Arcs }, half: Half, topline: SurfaceCurve): HeightMark {
  const flank = topline.points[topline.points.length - 3]! - board.last.landmarks.seatPoint[0];
  const at = (behindSeat: number) => heightMark(board, half, topline, behindSeat);
  let place = coarseMm * Math.ceil((lookFrom * flank) / coarseMm);
  let best = at(place);
  for (let next = place + coarseMm; next <= lookTo * flank; next += coarseMm) {
    const mark = at(next);
    if (mark.heightMm < best.heightMm) [best, place] = [mark, next];
  }
  for (let step = coarseMm / 2; step >= fineMm; step /= 2)
    for (const next of [place - step, place + step]) {
      const mark = at(next);
      if (mark.heightMm < best.heightMm) [best, place] = [mark, next];
    }
  return best;
}

/** Where the topline, coming from the back, crosses the plane at x. */
function onTopline({ points: p }: SurfaceCurve, x: number): Point3 {
  for (let i = 0; i + 5 < p.length; i += 3) {
    const x0 = p[i]!, x1 = p[i + 3]!;
    if (x0 <= x && x1 >= x && x1 > x0) {
      const t = (x - x0) / (x1 - x0);
      return [x, p[i + 1]! + t * (p[i + 4]! - p[i + 1]!), p[i + 2]! + t * (p[i + 5]! - p[i + 2]!)];
    }
  }
  // Past the throat: the last point is the nearest there is.
  const n = p.length;
  return [p[n - 3]!, p[n - 2]!, p[n - 1]!];
}

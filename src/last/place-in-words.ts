import { nearestOnRing } from "./centre-section.ts";
import { pointAtIndex } from "./closed-curve.ts";
import { medialSign, type Last, type Point3 } from "./last.ts";
import { distance } from "./vector.ts";

/** A place on the last in the words of the trade: which face, which part, how far from the feather line. */
export function placeInWords({ feather, landmarks, side, backCurve, centreRidge }: Last, p: Point3): string {
  const share = p[0] / landmarks.toePoint[0];
  const part = share < 0.05 ? "back" : share < 0.28 ? "seat" : share < 0.58 ? "waist" : share < 0.8 ? "joint" : "toe";
  const edge = pointAtIndex(feather.points, nearestOnRing(feather.points, p));
  const off = distance(edge, p);
  const from = `${off.toFixed(0)} mm from the feather line`;
  if (off < 3) return `on the feather line at the ${part}`;
  const inside = p[1] * medialSign(side) > 0;
  const half = Math.abs(p[1]) < 4 ? "on the centre line" : inside ? "on the inside" : "on the outside";
  if (p[2] < edge[2] + 0.1 * off) return `on the bottom at the ${part}, ${half}, ${from}`;
  const comb = Math.min(topOf(backCurve.points), topOf(centreRidge.points));
  if (p[2] > comb - 3) return `on the comb or its edge`;
  return `${half} at the ${part}, ${from}`;
}

const topOf = (points: Float64Array): number => points[points.length - 1]!;

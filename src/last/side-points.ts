import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { pointAtIndex } from "./closed-curve.ts";
import type { Landmarks, Point3 } from "./last.ts";

export type SidePoints = Pick<Landmarks, "jointMedial" | "jointLateral" | "seatMedial" | "seatLateral">;

/** Feather points farthest from the axis: the joints between 50 and 93 % of the toe point's x, the seat before 25 %. */
export function sidePoints(points: Float64Array, toeX: number, medial: 1 | -1, within: number): SidePoints {
  const joint = (sign: number): Point3 => farthestOut(points, [0.5 * toeX, 0.93 * toeX], sign, within);
  const seat = (sign: number): Point3 => farthestOut(points, [-Infinity, 0.25 * toeX], sign, within);
  return { jointMedial: joint(medial), jointLateral: joint(-medial), seatMedial: seat(medial), seatLateral: seat(-medial) };
}

/**
 * The point of greatest sign · y with x in a range. The line runs nearly along the axis there, so the place along it is taken from
 * the parabola through all points `within` mm of the greatest, not from one of them: on a rough scan that one may lie 5 mm off.
 */
function farthestOut(points: Float64Array, [fromX, toX]: readonly [number, number], sign: number, within: number): Point3 {
  const n = points.length / 3;
  const y = (i: number): number => sign * points[3 * ((i + n) % n) + 1]!;
  const x = (i: number): number => points[3 * ((i + n) % n)]!;
  let best = -1;
  for (let i = 0; i < n; i++) if (x(i) >= fromX && x(i) <= toX && (best < 0 || y(i) > y(best))) best = i;
  if (best < 0) throw new Refusal(finding("not-a-last", { why: "its bottom has no width where the joints should be" }));
  // A parabola takes three points.
  let [first, last] = [best - 1, best + 1];
  while (best - first < n / 8 && y(first - 1) > y(best) - within) first--;
  while (last - best < n / 8 && y(last + 1) > y(best) - within) last++;
  const top = parabolaTop(first - best, last - best, (k) => y(best + k));
  const p = pointAtIndex(points, (best + top + n) % n);
  return [Math.max(fromX, Math.min(toX, p[0])), p[1], p[2]];
}

/** Where the least-squares parabola through (k, value(k)), k = from … to, is greatest; 0 where it has no top in the range. */
export function parabolaTop(from: number, to: number, value: (k: number) => number): number {
  const middle = (from + to) / 2;
  const half = Math.max(1, (to - from) / 2);
  // On even steps 1, t and t² − mean(t²) are square to each other, so each factor is one division.
  let tt = 0;
  for (let k = from; k <= to; k++) tt += ((k - middle) / half) ** 2;
  const mean = tt / (to - from + 1);
  let [slope, bend, qq] = [0, 0, 0];
  for (let k = from; k <= to; k++) {
    const t = (k - middle) / half;
    const q = t * t - mean;
    slope += t * value(k);
    bend += q * value(k);
    qq += q * q;
  }
  if (!(bend < 0) || qq === 0) return 0;
  const top = middle - (half * (slope / tt)) / (2 * (bend / qq));
  return Math.max(from, Math.min(to, top));
}

import type { Comb } from "./comb.ts";
import type { Last, SurfaceCurve } from "./last.ts";
import { parabolaTop } from "./side-points.ts";

/** The back profile: how far it stands behind the seat point, at heights above it. */
export interface HeelCurve {
  readonly heightsMm: readonly number[];
  readonly behindMm: readonly number[];
  /** Where it stands out farthest: how far, and how high. */
  readonly bulgeMm: number;
  readonly bulgeHeightMm: number;
  /** How far it comes forward again from there to the upper end of the back. */
  readonly hookMm: number;
}

const heelStepMm = 10;

/** Heights every 10 mm from the seat point up to the upper end of the back. */
export function heelCurve({ backCurve, landmarks: { seatPoint } }: Last): HeelCurve {
  const { points, arc } = backCurve;
  const behind = (i: number): number => seatPoint[0] - points[3 * i]!;
  const last = arc.length - 1;
  const heightsMm: number[] = [];
  const behindMm: number[] = [];
  for (let height = heelStepMm; ; height += heelStepMm) {
    const at = firstAtHeight(backCurve, seatPoint[2] + height);
    if (at === undefined) break;
    const i = Math.floor(at);
    heightsMm.push(height);
    behindMm.push(behind(i) + (at - i) * (behind(Math.min(last, i + 1)) - behind(i)));
  }
  // The profile stands nearly upright at the bulge: its height is taken by a parabola through all within 0.3 mm of the farthest.
  let best = 0;
  for (let i = 1; i <= last; i++) if (behind(i) > behind(best)) best = i;
  let [from, to] = [best, best];
  while (from > 0 && behind(from - 1) > behind(best) - 0.3) from--;
  while (to < last && behind(to + 1) > behind(best) - 0.3) to++;
  const top = best + (to - from < 2 ? 0 : parabolaTop(from - best, to - best, (k) => behind(best + k)));
  const i = Math.min(Math.floor(top), last - 1);
  const z = points[3 * i + 2]! + (top - i) * (points[3 * i + 5]! - points[3 * i + 2]!);
  return { heightsMm, behindMm, bulgeMm: behind(best), bulgeHeightMm: z - seatPoint[2], hookMm: behind(best) - behind(last) };
}

/** Index with fraction at which a curve, from its start, first reaches a height. */
function firstAtHeight({ points, arc }: SurfaceCurve, z: number): number | undefined {
  for (let i = 1; i < arc.length; i++) {
    const [a, b] = [points[3 * i - 1]!, points[3 * i + 2]!];
    if (a < z && b >= z) return i - 1 + (z - a) / (b - a);
  }
  return undefined;
}

/** Height of the centre ridge above the toe point at a distance behind it, parallel to the ground; NaN where the ridge ends before. */
export function toeHeight({ centreRidge: { points, arc }, landmarks: { toePoint } }: Last, behindMm: number): number {
  const x = toePoint[0] - behindMm;
  for (let i = 1; i < arc.length; i++) {
    const [a, b] = [points[3 * i - 3]!, points[3 * i]!];
    if (a > x && b <= x) return points[3 * i - 1]! + ((points[3 * i + 2]! - points[3 * i - 1]!) * (a - x)) / (a - b) - toePoint[2];
  }
  return NaN;
}

/** Height of the comb on the centre plane, half way between its two ends, and its length from the one to the other. */
export function combOnCentre({ centreRidge, backCurve }: Last, { normal, level }: Comb): { readonly heightMm: number; readonly lengthMm: number } {
  const [front, back] = [endX(centreRidge), endX(backCurve)];
  const middle = (front + back) / 2;
  return { heightMm: (level - normal[0] * middle) / normal[2], lengthMm: front - back };
}

const endX = ({ points }: SurfaceCurve): number => points[points.length - 3]!;

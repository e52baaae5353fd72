import type { Sectioner } from "#mesh/section.ts";
import { centreRing, evenCurve, nearestOnRing, runOfRing } from "./centre-section.ts";
import type { FeatherLine, Point3, SurfaceCurve } from "./last.ts";
import { pointAt } from "./vector.ts";

/** The cut across the last at one x, divided at the feather line: over the top and along the bottom, both from the +y side to the −y side. */
export interface CrossSection {
  readonly x: number;
  readonly left: Point3;
  readonly right: Point3;
  readonly over: SurfaceCurve;
  readonly under: SurfaceCurve;
}

/** Steps along a cut, mm. */
const stepMm = 0.5;

/** Undefined where the cut meets no surface or no feather line. */
export function crossSection(cutter: Sectioner, feather: FeatherLine, x: number): CrossSection | undefined {
  const [left, right] = [featherAt(feather, x, 1), featherAt(feather, x, -1)];
  const { points } = centreRing(cutter.cut([x, 0, 0], [1, 0, 0]));
  if (!left || !right || points.length < 30) return undefined;
  const [a, b] = [nearestOnRing(points, left), nearestOnRing(points, right)];
  const [one, other] = [evenCurve(runOfRing(points, a, b, 1), stepMm), evenCurve(runOfRing(points, a, b, -1), stepMm)];
  return highest(one) > highest(other) ? { x, left, right, over: one, under: other } : { x, left, right, over: other, under: one };
}

function highest({ points }: SurfaceCurve): number {
  let top = -Infinity;
  for (let i = 2; i < points.length; i += 3) top = Math.max(top, points[i]!);
  return top;
}

/** Where the feather line crosses x, farthest out on one side (+1: +y). */
function featherAt({ points }: FeatherLine, x: number, sign: 1 | -1): Point3 | undefined {
  const n = points.length / 3;
  let best: Point3 | undefined;
  for (let i = 0; i < n; i++) {
    const [a, b] = [pointAt(points, i), pointAt(points, (i + 1) % n)];
    if (a[0] === b[0] || a[0] > x === b[0] > x) continue;
    const t = (x - a[0]) / (b[0] - a[0]);
    const p: Point3 = [x, a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
    if (p[1] * sign > 0 && (!best || p[1] * sign > best[1] * sign)) best = p;
  }
  return best;
}

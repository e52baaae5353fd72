import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Sectioner } from "#mesh/section.ts";
import { centreRing, evenCurve, nearestOnRing, runOfRing, smoothCurve, type CentreRing } from "./centre-section.ts";
import { findComb, type Comb } from "./comb.ts";
import type { Point3, SurfaceCurve } from "./last.ts";
import { distance, dot, mix, pointAt } from "./vector.ts";

/** The three named parts of the section with y = 0. */
export interface CentreCurves {
  readonly centreRidge: SurfaceCurve;
  readonly backCurve: SurfaceCurve;
  readonly bottomCentre: SurfaceCurve;
  readonly findings: readonly Finding[];
}

/**
 * Cuts the last along y = 0 and divides the cut at toe point, seat point and the two ends of the comb. Where the comb is missing
 * the ridge and the back end at the rim of the gap; where the top is round, at the highest point.
 * @param noiseMm roughness of the surface
 */
export function centreCurves(cutter: Sectioner, seat: Point3, toe: Point3, noiseMm: number): CentreCurves {
  const ring = centreRing(cutter.cut([0, 0, 0], [0, 1, 0]));
  if (ring.points.length < 30) throw new Refusal(finding("not-a-last", { why: "it has no surface along its middle" }));
  const a = nearestOnRing(ring.points, seat);
  const b = nearestOnRing(ring.points, toe);
  const way = meanHeight(runOfRing(ring.points, a, b, 1)) < meanHeight(runOfRing(ring.points, a, b, -1)) ? 1 : -1;
  // The upper run from the toe to the seat, on the ring the other way round than the bottom.
  const upper = runOfRing(ring.points, b, a, way);
  const bottom = runOfRing(ring.points, a, b, way);
  const comb = findComb(cutter.mesh, 0.3 + 2 * noiseMm);
  const [ridgeEnd, backEnd] = topEnds(upper, ring, comb, 0.05 + noiseMm);
  const findings = gapFinding(ring);
  const told = (run: readonly Point3[]): SurfaceCurve => (noiseMm > 0 ? smoothCurve(evenCurve(run), 3) : evenCurve(run));
  return {
    centreRidge: told(cutUpTo(upper, ridgeEnd)),
    backCurve: told(cutUpTo([...upper].reverse(), upper.length - 1 - backEnd)),
    bottomCentre: told(bottom),
    findings,
  };
}

function meanHeight(run: readonly Point3[]): number {
  let sum = 0;
  let length = 0;
  for (let i = 1; i < run.length; i++) {
    const d = distance(run[i - 1]!, run[i]!);
    sum += (d * (run[i - 1]![2] + run[i]![2])) / 2;
    length += d;
  }
  return sum / length;
}

/** Places (index with fraction) on the run from toe over the top to seat where the ridge ends and where the back begins. */
function topEnds(upper: readonly Point3[], ring: CentreRing, comb: Comb | undefined, near: number): readonly [number, number] {
  if (comb) {
    const below = (i: number): number => comb.level - near - dot(comb.normal, upper[i]!);
    const first = firstCrossing(below, 0, upper.length, 1);
    const last = firstCrossing(below, upper.length - 1, upper.length, -1);
    if (first !== undefined && last !== undefined && last > first) return [first, last];
  }
  if (ring.gap && ring.gap.length > 15) {
    const rim = pointAt(ring.points, ring.gap.from);
    const at = upper.reduce((best, p, i) => (distance(p, rim) < distance(upper[best]!, rim) ? i : best), 0);
    const next = at + 1 < upper.length && distance(upper[at]!, upper[at + 1]!) > ring.gap.length * 0.9 ? at + 1 : at - 1;
    if (upper[at]![2] > 30) return [Math.min(at, next), Math.max(at, next)];
  }
  const highest = upper.reduce((best, p, i) => (p[2] > upper[best]![2] ? i : best), 0);
  return [highest, highest];
}

/** First index with fraction, from `start` by `step`, at which `below` falls to zero. */
function firstCrossing(below: (i: number) => number, start: number, n: number, step: 1 | -1): number | undefined {
  for (let i = start; i + step >= 0 && i + step < n; i += step) {
    const [a, b] = [below(i), below(i + step)];
    if (a > 0 && b <= 0) return i + (step * a) / (a - b);
  }
  return undefined;
}

function cutUpTo(run: readonly Point3[], index: number): Point3[] {
  const i = Math.min(Math.floor(index), run.length - 1);
  const out = run.slice(0, i + 1);
  if (index > i) out.push(mix(run[i]!, run[i + 1]!, index - i));
  return out;
}

/** A gap low on the section hides part of a length that is measured along it; one at the comb does not. */
function gapFinding({ points, gap }: CentreRing): Finding[] {
  if (!gap || gap.length < 8) return [];
  let top = -Infinity;
  for (let i = 2; i < points.length; i += 3) top = Math.max(top, points[i]!);
  const at = pointAt(points, gap.from);
  return at[2] < 0.6 * top ? [finding("gap-on-centre", { lengthMm: gap.length }, at)] : [];
}

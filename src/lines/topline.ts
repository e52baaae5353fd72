import { must } from "#base/bug.ts";
import type { Point3 } from "#last/last.ts";
import type { Forme, Xy } from "./forme.ts";

/** Ends and lowest place of one half of the topline on the drawing plane, with the directions in which it passes them (unit length). */
export interface HalfPlan {
  readonly back: Xy;
  readonly backDirection: Xy;
  readonly lowest: Xy;
  readonly lowestDirection: Xy;
  readonly throat: Xy;
  readonly throatDirection: Xy;
  readonly throatRadiusMm: number;
}

/**
 * One half of the topline as two cubic Bézier arcs on the drawing plane, back → lowest → throat. Square to the back and to the
 * centre, at rest at the lowest place, curvature continuous there, and with the asked radius at the throat: the curvature of
 * a cubic at its end is (2/3)·d/a², a the handle's length and d the distance of the other arm's control point from the tangent.
 * Returns points x0 y0 … about `step` mm apart, both ends included.
 */
export function halfTopline(plan: HalfPlan, step: number): Float64Array {
  const frontChord = distance(plan.lowest, plan.throat), backChord = distance(plan.back, plan.lowest);
  const throatHandle = (lowestHandle: number) => {
    const control = along(plan.lowest, plan.lowestDirection, lowestHandle);
    return Math.sqrt((2 / 3) * offLine(control, plan.throat, plan.throatDirection) * plan.throatRadiusMm);
  };
  // The flank stays nearly straight as long as the front handle takes most of the way that the throat's rounding leaves free.
  const front = 0.5 * frontChord;
  const throat = Math.min(throatHandle(front), 0.9 * frontChord);
  const throatControl = along(plan.throat, plan.throatDirection, -throat);
  const backHandle = 0.4 * backChord;
  const backControl = along(plan.back, plan.backDirection, backHandle);
  const ratio = offLine(backControl, plan.lowest, plan.lowestDirection) / offLine(throatControl, plan.lowest, plan.lowestDirection);
  const wanted = front * Math.sqrt(ratio);
  const rear = Math.min(0.6 * backChord, Math.max(0.25 * backChord, wanted));
  const rearPart = bezier(plan.back, backControl, along(plan.lowest, plan.lowestDirection, -rear), plan.lowest, step);
  const frontPart = bezier(plan.lowest, along(plan.lowest, plan.lowestDirection, front), throatControl, plan.throat, step);
  return Float64Array.from([...rearPart, ...frontPart.slice(2)]);
}

const along = (p: Xy, d: Xy, by: number): Xy => [p[0] + by * d[0], p[1] + by * d[1]];
const distance = (a: Xy, b: Xy): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
/** Distance of a point from the line through `on` in unit direction d. */
const offLine = (p: Xy, on: Xy, d: Xy): number => Math.abs((p[0] - on[0]) * d[1] - (p[1] - on[1]) * d[0]);

function bezier(a: Xy, b: Xy, c: Xy, d: Xy, step: number): number[] {
  const length = distance(a, b) + distance(b, c) + distance(c, d);
  const count = Math.max(8, Math.ceil(length / step));
  const out: number[] = [];
  for (let i = 0; i <= count; i++) {
    const t = i / count, s = 1 - t;
    const wa = s * s * s, wb = 3 * s * s * t, wc = 3 * s * t * t, wd = t * t * t;
    out.push(wa * a[0] + wb * b[0] + wc * c[0] + wd * d[0], wa * a[1] + wb * b[1] + wc * c[1] + wd * d[1]);
  }
  return out;
}

/** Lifts plane points onto the last; the ends are given, since they lie on the forme's own edges. */
export function liftLine(forme: Forme, flat: Float64Array): { readonly points: Float64Array; readonly outsideAt: number | undefined } {
  const n = flat.length / 2;
  must(n > 2, "a line of two points");
  const points = new Float64Array(3 * n);
  for (let i = 1; i + 1 < n; i++) {
    const p = forme.toLast([flat[2 * i]!, flat[2 * i + 1]!]);
    if (!p) return { points, outsideAt: i };
    points.set(p, 3 * i);
  }
  return { points, outsideAt: undefined };
}

/** The point of the last under the drawn half about 8 mm before the throat. */
export function pointBeforeThroat(forme: Forme, flat: Float64Array): Point3 | undefined {
  const n = flat.length;
  const end: Xy = [flat[n - 2]!, flat[n - 1]!];
  for (let i = n - 4; i >= 0; i -= 2) {
    const at: Xy = [flat[i]!, flat[i + 1]!];
    if (distance(at, end) > 8) return forme.toLast(at);
  }
  return undefined;
}

/**
 * Radius of the line on the last at the throat, from a point either side and the direction of the centre line there (unit length,
 * toward the heel): the bow's height along the centre against half its width. The bend of the surface across the centre does not count.
 */
export function bowRadius(a: Point3 | undefined, throat: Point3, b: Point3 | undefined, heelward: Point3): number | undefined {
  if (!a || !b) return undefined;
  let height = 0, width = 0;
  for (let d = 0; d < 3; d++) {
    height += 0.5 * (a[d]! + b[d]! - 2 * throat[d]!) * heelward[d]!;
    width += (a[d]! - b[d]!) ** 2;
  }
  return height > 1e-6 ? (0.25 * width + height * height) / (2 * height) : undefined;
}

import { leastWithin } from "#last/golden-section.ts";
import type { Point3 } from "#last/last.ts";
import { curveLength, pointOn } from "#last/surface-curve.ts";
import type { Lines } from "#lines/lines.ts";
import type { Sectioner } from "#mesh/section.ts";
import { hullOf } from "#plane/hull.ts";

/** How far the strap's plane may lean out of the upright, as the tangent of the angle: 45 degrees to the toe or the heel. */
const mostLean = 1;
/** Steps of the search: the lean is then known to a hundredth. */
const steps = 10;

/** Where a strap begins and ends on the last, and how long it is between. */
export interface StrapWay {
  readonly inner: Point3;
  readonly outer: Point3;
  readonly lengthMm: number;
}

/**
 * The way of a strap over the instep, from the inner topline to the outer one, both at the same length behind the throat: the shortest a
 * tape can go, which lies in a plane and bridges hollows. Nothing where the topline is shorter than that.
 */
export function strapWay(lines: Lines, cutter: Sectioner, behindThroatMm: number): StrapWay | undefined {
  const ends = [lines.toplineMedial, lines.toplineLateral].map((curve) => {
    const at = curveLength(curve) - behindThroatMm;
    return at > 0 ? pointOn(curve, at) : undefined;
  });
  const [inner, outer] = ends;
  if (!inner || !outer) return undefined;
  const across = unit(minus(outer, inner));
  const up = unit(squareTo([0, 0, 1], across));
  const forward = cross(across, up);
  const length = (lean: number): number => tapeBetween(cutter, inner, outer, across, unit([0, 1, 2].map((d) => up[d]! + lean * forward[d]!) as unknown as Point3));
  // The length has one least value as the tape is slid over the instep.
  return { inner, outer, lengthMm: leastWithin(length, mostLean, steps).value };
}

/** Length of a tape in the plane of `across` and `up`, from `inner` over all that stands above the chord to `outer`. */
function tapeBetween(cutter: Sectioner, inner: Point3, outer: Point3, across: Point3, up: Point3): number {
  const flat: number[] = [];
  const put = (p: Point3): void => {
    const d = minus(p, inner);
    flat.push(dot(d, across), dot(d, up));
  };
  put(inner);
  put(outer);
  for (const { points } of cutter.cut(inner, cross(across, up)))
    for (let i = 0; i < points.length; i += 3) {
      const p: Point3 = [points[i]!, points[i + 1]!, points[i + 2]!];
      if (dot(minus(p, inner), up) > 0) put(p);
    }
  return overTheTop(hullOf(Float64Array.from(flat)), Math.sqrt(dot(minus(outer, inner), minus(outer, inner))));
}

/** The hull's perimeter without the chord, which is its lower side. */
function overTheTop(hull: readonly (readonly [number, number])[], chordMm: number): number {
  let round = 0;
  for (let i = 0; i < hull.length; i++) {
    const [p, q] = [hull[i]!, hull[(i + 1) % hull.length]!];
    round += Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2);
  }
  return hull.length < 3 ? chordMm : round - chordMm;
}

const minus = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point3, b: Point3): Point3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: Point3): Point3 => {
  const size = Math.sqrt(dot(a, a));
  return [a[0] / size, a[1] / size, a[2] / size];
};
const squareTo = (a: Point3, axis: Point3): Point3 => {
  const along = dot(a, axis);
  return [a[0] - along * axis[0], a[1] - along * axis[1], a[2] - along * axis[2]];
};

/**
 * Controls of a cubic B-spline over 0 … 1 from one number at each of three or more equally spaced knots; the first and last number are
 * met exactly, the others approached. Curvature is continuous, and the curve swings no more often than the list of
 * numbers it is made from, so that a smooth list gives a smooth last.
 * Source: de Boor, A Practical Guide to Splines (variation diminishing property).
 */
export function splineControls(values: readonly number[]): Float64Array {
  const n = values.length;
  const v = (i: number): number => values[i]!;
  return Float64Array.from([2 * v(0) - v(1), ...values, 2 * v(n - 1) - v(n - 2)]);
}

/** The four controls, from `first` on, that bear on a place and their weights; worked out once for all splines of a form. */
export interface SplinePlace {
  readonly first: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** Where `share` (0 … 1, held at its ends) lies among the knots of splines with that many spans. */
export function splinePlace(spans: number, share: number): SplinePlace {
  const at = Math.max(0, Math.min(1, share)) * spans;
  const first = Math.min(spans - 1, Math.floor(at));
  const t = at - first;
  const u = 1 - t;
  return { first, a: (u * u * u) / 6, b: (3 * t * t * t - 6 * t * t + 4) / 6, c: (3 * u * u * u - 6 * u * u + 4) / 6, d: (t * t * t) / 6 };
}

/** Value of a spline given by its controls (spans + 3 of them). */
export function splineValue(controls: Float64Array, { first, a, b, c, d }: SplinePlace): number {
  return a * controls[first]! + b * controls[first + 1]! + c * controls[first + 2]! + d * controls[first + 3]!;
}

import { must } from "#base/bug.ts";
import { arcLengths } from "./along.ts";
import type { Outline, Polyline } from "./outline.ts";
import { SmoothingSpline } from "./smoothing-spline.ts";

export interface FairOptions {
  /** How far the fair curve may lie from any point of the line, mm. */
  readonly toleranceMm?: number;
  /** Greatest distance of the points handed back, mm. */
  readonly stepMm?: number;
}

/**
 * Fair curve through a faceted or slightly noisy open line: the smoothest cubic spline that stays within the tolerance of
 * every point. Ends are kept exactly, so corners between fair curves stay corners. Method: docs/method/fair-curve.md.
 */
export function fairLine(line: Polyline, options: FairOptions = {}): Polyline {
  const { toleranceMm = 0.05, stepMm = 0.75 } = options;
  const clean = withoutRepeats(line);
  if (clean.xy.length < 8) return clean;
  const spline = smoothestWithin(clean, toleranceMm);
  return { xy: spline.sample(0, spline.length, stepMm) };
}

/** Fair closed curve; starts at the place of the outline's first point, within the tolerance. */
export function fairLoop(outline: Outline, options: FairOptions = {}): Outline {
  const { toleranceMm = 0.05, stepMm = 0.75 } = options;
  const { xy } = withoutRepeats(outline);
  const n = xy.length / 2;
  must(n >= 6, "a closed curve needs six points");
  // Fitted over a loop with a third more on either side; far from its ends the natural end conditions are not felt.
  const lap = Math.ceil(n / 3);
  const wrapped = new Float64Array(2 * (n + 2 * lap + 1));
  for (let k = 0; k <= n + 2 * lap; k++) {
    const from = 2 * ((((k - lap) % n) + n) % n);
    wrapped[2 * k] = xy[from]!;
    wrapped[2 * k + 1] = xy[from + 1]!;
  }
  const spline = smoothestWithin({ xy: wrapped }, toleranceMm);
  const points = spline.sample(spline.knots[lap]!, spline.knots[lap + n]!, stepMm);
  return { xy: points.slice(0, points.length - 2) };
}

/** Share of the tolerance that the spline may use; the rest is for the chords between the points handed back. */
const share = 0.9;

/** Largest stiffness whose curve keeps within the tolerance of each point, to 1 %. */
function smoothestWithin(line: Polyline, toleranceMm: number): SmoothingSpline {
  const within = share * toleranceMm;
  const spline = new SmoothingSpline(line.xy, arcLengths(line));
  let low = 0;
  let high = 1e-3;
  // The deviation grows with the stiffness; beyond 1e12 mm³ the curve is a straight line for every size of shoe.
  while (high < 1e12 && spline.fit(high) <= within) {
    low = high;
    high *= 8;
  }
  for (let k = 0; k < 40 && high > 1.01 * low; k++) {
    const middle = low === 0 ? high / 8 : Math.sqrt(low * high);
    if (spline.fit(middle) <= within) low = middle;
    else high = middle;
    if (high < 1e-12) break;
  }
  spline.fit(low);
  return spline;
}

/** Drops points that lie within a micrometre of the one before. */
function withoutRepeats({ xy }: Polyline): Polyline {
  const out: number[] = [];
  for (let i = 0; i < xy.length; i += 2) {
    const n = out.length;
    if (n > 0) {
      const dx = xy[i]! - out[n - 2]!;
      const dy = xy[i + 1]! - out[n - 1]!;
      if (dx * dx + dy * dy < 1e-6) {
        // The last point of a line is an end that must be kept: it takes the place of its near neighbour.
        if (i + 2 === xy.length && n > 2) out.splice(n - 2, 2, xy[i]!, xy[i + 1]!);
        continue;
      }
    }
    out.push(xy[i]!, xy[i + 1]!);
  }
  return { xy: Float64Array.from(out) };
}

import { must } from "#base/bug.ts";
import { arcLengths } from "./along.ts";
import { bendPatterns, type BendPattern } from "./bend-pattern.ts";
import { besideLine } from "./beside.ts";
import { EvenLine } from "./even-line.ts";
import { leastChangeOfBend } from "./fair-program.ts";
import type { Outline, Polyline } from "./outline.ts";
import { finely } from "./refine.ts";
import { SmoothingSpline } from "./smoothing-spline.ts";

export interface FairOptions {
  /** How far the fair curve may lie from any point of the line, mm. */
  readonly toleranceMm?: number;
  /** Greatest distance of the points handed back, mm. */
  readonly stepMm?: number;
}

/**
 * Fair curve through a faceted or slightly noisy open line: of all that stay within the tolerance of every point and bend to and fro
 * no more often than they must, the one that changes its bend least. Ends are kept exactly, so corners between fair curves stay
 * corners. Method: docs/method/fair-curve.md.
 */
export function fairLine(line: Polyline, options: FairOptions = {}): Polyline {
  const { toleranceMm = 0.05, stepMm = 0.75 } = options;
  const clean = withoutRepeats(line);
  const { xy } = clean;
  if (xy.length < 8) return clean;
  const arc = arcLengths(clean);
  const through = new SmoothingSpline(xy, arc);
  through.fit(throughMm ** 4);
  const total = arc[arc.length - 1]!;
  const start = new EvenLine(through.evenly(0, total, Math.max(leastPoints, Math.ceil(total / (2 * stepMm)) + 1)), false);
  const fair = fairest(start, xy, arc, toleranceMm);
  if (!fair) return { xy: smoothestWithin(clean, toleranceMm).sample(0, total, stepMm) };
  const out = finely(fair, stepMm);
  out.set(xy.subarray(0, 2), 0);
  out.set(xy.subarray(xy.length - 2), out.length - 2);
  return { xy: out };
}

/** Fair closed curve; starts at the place of the outline's first point, within the tolerance. */
export function fairLoop(outline: Outline, options: FairOptions = {}): Outline {
  const { toleranceMm = 0.05, stepMm = 0.75 } = options;
  const { xy } = withoutRepeats(outline);
  const n = xy.length / 2;
  must(n >= 6, "a closed curve needs six points");
  // Drawn through over a loop with a third more on either side; far from its ends the natural end conditions are not felt.
  const lap = Math.ceil(n / 3);
  const wrapped = new Float64Array(2 * (n + 2 * lap + 1));
  for (let k = 0; k <= n + 2 * lap; k++) {
    const from = 2 * ((((k - lap) % n) + n) % n);
    wrapped[2 * k] = xy[from]!;
    wrapped[2 * k + 1] = xy[from + 1]!;
  }
  const through = new SmoothingSpline(wrapped, arcLengths({ xy: wrapped }));
  through.fit(throughMm ** 4);
  const [from, to] = [through.knots[lap]!, through.knots[lap + n]!];
  const points = through.evenly(from, to, Math.max(leastPoints, Math.ceil((to - from) / (2 * stepMm)) + 1));
  const start = new EvenLine(points.slice(0, points.length - 2), true);
  const arc = through.knots.subarray(lap, lap + n + 1).map((s) => s - from);
  const fair = fairest(start, xy, arc, toleranceMm);
  if (fair) return { xy: finely(fair, stepMm) };
  const within = smoothestWithin({ xy: wrapped }, toleranceMm).sample(from, to, stepMm);
  return { xy: within.slice(0, within.length - 2) };
}

/** Width of the spline that the line is first drawn through with, mm: shorter than its points stand apart on a shoe. */
const throughMm = 2;
const leastPoints = 9;
/** Bows up to this many tolerances are straightened where the tolerance allows: half a bow lies on either side of the straight line. */
const straightened = 2;

/**
 * What it may cost to straighten bows, as the length of line that would lie at the edge of its room for it, mm. Bows of the sort
 * that the room is for cost under 70; one that goes only by a crook elsewhere costs thousands.
 */
const straightenedForMm = 100;

/** The fairest line beside the given points that keeps the tolerance; undefined where none of this step does. */
function fairest(start: EvenLine, xy: Float64Array, arc: Float64Array, toleranceMm: number): EvenLine | undefined {
  const roomMm = share * toleranceMm;
  const free = leastChangeOfBend(start, besideLine(start, xy, arc), roomMm)();
  if (!free) return undefined;
  const drawn = start.moved(free.u);
  const turns = Float64Array.from(drawn.bends(), ({ bend }) => bend / drawn.step);
  const patterns = bendPatterns(drawn.closed ? turns : turns.subarray(1, turns.length - 1), drawn.step, drawn.closed, straightened * toleranceMm);
  const leastChange = leastChangeOfBend(drawn, besideLine(drawn, xy, arc), roomMm);
  const asIs = leastChange(whole(patterns[0]!, drawn));
  if (!asIs) return drawn;
  let best = asIs;
  const most = asIs.value + (straightenedForMm * roomMm * roomMm) / (2 * drawn.step);
  // The simplest way of bending that the room allows: each needs more than the one before, so it is found by halving.
  let [low, high] = [1, patterns.length - 1];
  for (let k = high; low <= high; k = (low + high) >> 1) {
    const simpler = leastChange(whole(patterns[k]!, drawn), most);
    if (simpler) {
      best = simpler;
      low = k + 1;
    } else high = k - 1;
  }
  return drawn.moved(best.u);
}

/** The pattern with the ends of an open line, which do not bend. */
function whole(pattern: BendPattern, { closed, count }: EvenLine): BendPattern {
  if (closed) return pattern;
  const out = new Int8Array(count);
  out.set(pattern, 1);
  return out;
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

import { bendChanges } from "#plane/curvature.ts";
import { fairLine, fairLoop } from "#plane/fair.ts";
import type { Outline, Polyline } from "#plane/outline.ts";

/**
 * How often a good edge changes its bend, at most: round the bottom two hollows at the waists, so four; a square toe's flat front
 * and the swing before either corner may add two (our own limit, from clean lasts).
 */
export const mostBends = 6;

/** Tolerances of the fair line, mm, the least first. The widest is less than a scriber's line and a knife's wander together. */
const tolerances = [0.05, 0.075, 0.11, 0.16, 0.22, 0.3] as const;

/** A lasting edge is trimmed after lasting, so it may be moved farther, which evens the hollows that a margin growing to the toe makes. */
const lastingTolerances = [0.05, 0.11, 0.22, 0.42, 0.85, 1.2] as const;

/** The fair line of an edge: within 0.05 mm where that runs even, else with as much more room as it takes, to 0.3 mm. */
export function evenLine(line: Polyline, within: readonly number[] = tolerances): Polyline {
  return firstEven(within.map((toleranceMm) => () => fairLine(line, { toleranceMm })), bends);
}

/** The same for a closed outline. */
export function evenLoop(outline: Outline): Outline {
  return firstEven(tolerances.map((toleranceMm) => () => fairLoop(outline, { toleranceMm })), (fair) => bends(around(fair)));
}

function firstEven<T>(makers: readonly (() => T)[], count: (fair: T) => number): T {
  let best: { readonly fair: T; readonly bends: number } | undefined;
  for (const make of makers) {
    const fair = make();
    const found = count(fair);
    if (!best || found < best.bends) best = { fair, bends: found };
    if (found <= mostBends) break;
  }
  return best!.fair;
}

/** A lasting edge as it is where it runs even, else its fair line. */
export function evenedLasting(line: Polyline): Polyline {
  return bends(line) <= mostBends ? line : evenLine(line, lastingTolerances);
}

/** Changes of bend with every bow counted; flatter than a radius of 10 m, which rises 0.1 mm over the length of a hand, is straight. */
const bends = (line: Polyline): number => bendChanges(line, 1e-4, 0.75);

/** On a cut edge bows of less than a tenth of a scriber's line are left out, mm: folded tips and straight run-outs to a corner bring some. */
const leastBowMm = 0.02;
const seenBends = (line: Polyline): number => bendChanges(line, undefined, undefined, leastBowMm);

/** Changes of bend on an outline: the most on any of its edges between corners, or round the whole where it has none. */
export function bendsOf(outline: Outline): number {
  const corners = cornersOf(outline);
  if (corners.length === 0) return seenBends(around(outline));
  return corners.reduce((most, from, k) => Math.max(most, seenBends(partOf(outline, from, corners[(k + 1) % corners.length]!))), 0);
}

/** Cosine of 20 degrees: points of an edge stand less than a millimetre apart, so that a bend of 3 mm radius turns less at each. */
const cornerCosine = 0.94;

function cornersOf({ xy }: Outline): readonly number[] {
  const n = xy.length / 2;
  const found: number[] = [];
  for (let i = 0; i < n; i++) {
    const [a, b] = [(i + n - 1) % n, (i + 1) % n];
    const [px, py, qx, qy] = [xy[2 * i]! - xy[2 * a]!, xy[2 * i + 1]! - xy[2 * a + 1]!, xy[2 * b]! - xy[2 * i]!, xy[2 * b + 1]! - xy[2 * i + 1]!];
    if (px * qx + py * qy < cornerCosine * Math.sqrt((px * px + py * py) * (qx * qx + qy * qy))) found.push(i);
  }
  return found;
}

function partOf({ xy }: Outline, from: number, to: number): Polyline {
  const n = xy.length / 2;
  const count = ((to - from + n - 1) % n) + 2;
  return { xy: Float64Array.from({ length: 2 * count }, (_, i) => xy[2 * ((from + (i >> 1)) % n) + (i % 2)]!) };
}

/** Once round and 10 mm more, so that the place where it closes is looked at too. */
function around(outline: Outline): Polyline {
  const { xy } = outline;
  return { xy: Float64Array.of(...xy, ...xy.subarray(0, Math.min(xy.length, 28))) };
}

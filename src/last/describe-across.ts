import type { Comb } from "./comb.ts";
import type { CrossSection } from "./cross-section.ts";
import type { Point3, SurfaceCurve } from "./last.ts";
import { dot, pointAt } from "./vector.ts";

/** One wall of a cross-section, mm. */
export interface Wall {
  /** Along the surface from the feather line up to where the wall ends. */
  readonly surfaceMm: number;
  /** The same straight up. */
  readonly heightMm: number;
  /** How far the wall bellies out beyond the feather line. */
  readonly overhangMm: number;
  readonly endsAt: "comb edge" | "crest";
}

/** The bottom across, mm. */
export interface BottomAcross {
  /** From feather line to feather line, across the axis. */
  readonly widthMm: number;
  /** Greatest distance of the bottom from the straight line between its two edges: above it (hollow) positive, below it (round) negative. */
  readonly hollowMm: number;
  /** The same under the axis, y = 0. */
  readonly hollowAtAxisMm: number;
}

/** Both walls of a cut, +y side first. */
export function wallsOf({ left, right, over }: CrossSection, comb: Comb | undefined): readonly [Wall, Wall] {
  const fromRight = reversed(over);
  const edges = comb && onComb(over, comb) ? ([edgeOf(over, comb), edgeOf(fromRight, comb)] as const) : undefined;
  const crest = edges ? undefined : crestOf(over);
  const wall = (foot: Point3, run: SurfaceCurve, top: { readonly at: number; readonly z: number }, sign: 1 | -1): Wall => ({
    surfaceMm: top.at,
    heightMm: top.z - foot[2],
    overhangMm: overhang(run, top.at, foot, sign),
    endsAt: edges ? "comb edge" : "crest",
  });
  const total = over.arc[over.arc.length - 1]!;
  return [wall(left, over, edges?.[0] ?? crest!, 1), wall(right, fromRight, edges?.[1] ?? { at: total - crest!.at, z: crest!.z }, -1)];
}

/** Whether the cut passes over the comb for more than 5 mm. */
function onComb({ points, arc }: SurfaceCurve, comb: Comb): boolean {
  let count = 0;
  for (let i = 0; i < arc.length; i++) if (dot(comb.normal, pointAt(points, i)) > comb.level - 0.5) count++;
  return (count * arc[arc.length - 1]!) / (arc.length - 1) > 5;
}

/**
 * Where a wall, coming from its foot, reaches the plane of the comb: carried on straight from 1.5 and 0.5 mm below it, for an edge
 * is never quite sharp and the comb never quite flat.
 */
function edgeOf({ points, arc }: SurfaceCurve, { normal, level }: Comb): { readonly at: number; readonly z: number } {
  const below = (i: number): number => level - dot(normal, pointAt(points, i));
  const reach = (gap: number): { readonly at: number; readonly p: Point3 } => {
    for (let i = 1; i < arc.length; i++) {
      const [a, b] = [below(i - 1), below(i)];
      if (a <= gap || b > gap) continue;
      const t = (a - gap) / (a - b);
      const [p, q] = [pointAt(points, i - 1), pointAt(points, i)];
      return { at: arc[i - 1]! + t * (arc[i]! - arc[i - 1]!), p: [p[0], p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])] };
    }
    return { at: 0, p: pointAt(points, 0) };
  };
  const [far, near] = [reach(1.5), reach(0.5)];
  const on = near.at - far.at;
  return { at: near.at + on / 2, z: near.p[2] + (near.p[2] - far.p[2]) / 2 };
}

/** Drops below the top at which the cut is as wide as can be told apart from roughness, mm. */
const crestDropsMm = [0.2, 0.4, 0.6, 0.8, 1, 1.2] as const;

/**
 * Highest place of a cut. The top is nearly level and lopsided, so the middles between its two sides at several drops are carried on
 * by a least-squares line (over the root of the drop, that is over the width) to no drop at all.
 */
function crestOf({ points, arc }: SurfaceCurve): { readonly at: number; readonly z: number } {
  const z = (i: number): number => points[3 * i + 2]!;
  let best = 0;
  for (let i = 1; i < arc.length; i++) if (z(i) > z(best)) best = i;
  const side = (step: 1 | -1, level: number): number => {
    let i = best;
    while (i + step > 0 && i + step < arc.length - 1 && z(i + step) > level) i += step;
    const [a, b] = [z(i), z(i + step)];
    return arc[i]! + (arc[i + step]! - arc[i]!) * (a > b ? (a - level) / (a - b) : 0);
  };
  const middles = crestDropsMm.map((drop) => (side(1, z(best) - drop) + side(-1, z(best) - drop)) / 2);
  const widths = crestDropsMm.map((drop) => Math.sqrt(drop));
  return { at: atZero(widths, middles), z: z(best) };
}

/** Value at 0 of the least-squares line through (x, y). */
function atZero(xs: readonly number[], ys: readonly number[]): number {
  const mean = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0) / v.length;
  const [mx, my] = [mean(xs), mean(ys)];
  const slope = xs.reduce((sum, x, i) => sum + (x - mx) * (ys[i]! - my), 0) / xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
  return my - slope * mx;
}

function overhang({ points, arc }: SurfaceCurve, upTo: number, foot: Point3, sign: 1 | -1): number {
  let out = 0;
  for (let i = 0; i < arc.length && arc[i]! <= upTo; i++) out = Math.max(out, sign * (points[3 * i + 1]! - foot[1]));
  return out;
}

function reversed({ points, arc }: SurfaceCurve): SurfaceCurve {
  const n = arc.length;
  const out = new Float64Array(3 * n);
  for (let i = 0; i < n; i++) out.set(points.subarray(3 * i, 3 * i + 3), 3 * (n - 1 - i));
  return { points: out, arc: arc.map((_, i) => arc[n - 1]! - arc[n - 1 - i]!) };
}

/** Width and hollow of the bottom in one cut. */
export function bottomOf({ left, right, under: { points, arc } }: CrossSection): BottomAcross {
  const over = (i: number): number => {
    const t = (points[3 * i + 1]! - right[1]) / (left[1] - right[1]);
    return points[3 * i + 2]! - (right[2] + t * (left[2] - right[2]));
  };
  let [hollowMm, hollowAtAxisMm, nearest] = [0, 0, Infinity];
  for (let i = 0; i < arc.length; i++) {
    if (Math.abs(over(i)) > Math.abs(hollowMm)) hollowMm = over(i);
    if (Math.abs(points[3 * i + 1]!) < nearest) {
      nearest = Math.abs(points[3 * i + 1]!);
      hollowAtAxisMm = over(i);
    }
  }
  return { widthMm: left[1] - right[1], hollowMm, hollowAtAxisMm };
}

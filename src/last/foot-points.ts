import type { Sectioner } from "#mesh/section.ts";
import { toeTips } from "./foot-toes.ts";
import { planLength } from "./girth.ts";
import type { Point3, Side } from "./last.ts";
import { sub, unit } from "./vector.ts";

/** Named places of a foot that its shape alone tells, mm, in its standing frame. */
export interface FootPoints {
  /** Hindmost place of the heel. */
  readonly heel: Point3;
  /** Where the heel turns under: farthest back-and-down at 45 degrees, in the upright plane through the heel. */
  readonly lowerHeel: Point3;
  /** Foremost place of the foot. */
  readonly front: Point3;
  /** Tips from the big toe outward; undefined where the five do not stand apart. */
  readonly toes: readonly Point3[] | undefined;
  /** Farthest out on each side of the forepart, square to the foot's axis (heel to second toe; to the middle of the front without it). */
  readonly innermost: Point3;
  readonly outermost: Point3;
}

/** Below this height all is foot, above it may be leg; as a share of the length. */
const ankle = 0.17;

export function footPoints(cutter: Sectioner, side: Side): FootPoints {
  const { positions } = cutter.mesh;
  const length = planLength(cutter.mesh);
  // Medial is +y on a right foot.
  const outward = side === "right" ? -1 : 1;
  const low = (i: number): boolean => positions[i + 2]! < ankle * length;
  const front = farthest(positions, (i) => (low(i) ? positions[i]! : -Infinity));
  const toes = toeTips(cutter, length, halfBreadth(positions), outward);
  const ahead = toes ? toes[1]! : front;
  // The axis ends in the heel, and the heel is hindmost along the axis: twice settles both.
  const first = hindmost(positions, low, [1, 0, 0]);
  const heel = hindmost(positions, low, unit([ahead[0] - first[0], ahead[1] - first[1], 0]));
  const axis = unit(sub(ahead, heel));
  const across = (i: number, sign: number): number => sign * (axis[0] * positions[i + 1]! - axis[1] * positions[i]!);
  const widest = (sign: number, from: number, to: number): Point3 =>
    farthest(positions, (i) => (low(i) && positions[i]! > from * length && positions[i]! < to * length ? across(i, sign) : -Infinity));
  return { heel, lowerHeel: turnUnder(cutter, heel), front, toes, innermost: widest(-outward, 0.6, 0.85), outermost: widest(outward, 0.55, 0.75) };
}

/** The vertex of which a value is greatest; index is that of its x. */
function farthest(p: Float64Array, value: (i: number) => number): Point3 {
  let best = 0;
  let most = -Infinity;
  for (let i = 0; i < p.length; i += 3) {
    const v = value(i);
    if (v > most) [most, best] = [v, i];
  }
  return [p[best]!, p[best + 1]!, p[best + 2]!];
}

/** How deep a slice of the heel's back counts as hindmost: it is nearly flat there, and one vertex of it says little. */
const heelSliceMm = 3;

/** Hindmost place of the heel along a level axis: at the middle, sideways and in height, of the slice of its back. */
function hindmost(p: Float64Array, low: (i: number) => boolean, [ax, ay]: Point3): Point3 {
  const behind = (i: number): number => -ax * p[i]! - ay * p[i + 1]!;
  const last = farthest(p, (i) => (low(i) ? behind(i) : -Infinity));
  const back = -ax * last[0] - ay * last[1];
  let [u0, u1, z0, z1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < p.length; i += 3) {
    if (!low(i) || behind(i) < back - heelSliceMm) continue;
    const u = ax * p[i + 1]! - ay * p[i]!;
    [u0, u1, z0, z1] = [Math.min(u0, u), Math.max(u1, u), Math.min(z0, p[i + 2]!), Math.max(z1, p[i + 2]!)];
  }
  const u = (u0 + u1) / 2;
  return [-ax * back - ay * u, ax * u - ay * back, (z0 + z1) / 2];
}

function halfBreadth(p: Float64Array): number {
  let most = 0;
  for (let i = 1; i < p.length; i += 3) most = Math.max(most, Math.abs(p[i]!));
  return most;
}

function turnUnder(cutter: Sectioner, heel: Point3): Point3 {
  let best = heel;
  for (const { points } of cutter.cut(heel, [0, 1, 0]))
    for (let i = 0; i < points.length; i += 3) if (-points[i]! - points[i + 2]! > -best[0] - best[2]) best = [points[i]!, points[i + 1]!, points[i + 2]!];
  return best;
}

/** Which foot, by two signs: the foremost toe lies medially, and the sole is raised medially between heel and ball. */
export function footSide(cutter: Sectioner): { readonly side: Side; readonly agree: boolean } {
  const { positions } = cutter.mesh;
  const length = planLength(cutter.mesh);
  const half = halfBreadth(positions);
  const front = farthest(positions, (i) => (positions[i + 2]! < ankle * length ? positions[i]! : -Infinity));
  const raised = [0.4, 0.45, 0.5].reduce((sum, share) => sum + soleHeight(cutter, share * length, 0.45 * half) - soleHeight(cutter, share * length, -0.45 * half), 0);
  const side = (medial: number): Side => (medial > 0 ? "right" : "left");
  return { side: side(raised), agree: side(raised) === side(front[1]) };
}

/** Lowest place of the foot at an x and y. */
function soleHeight(cutter: Sectioner, x: number, y: number): number {
  let low = Infinity;
  for (const { points, closed } of cutter.cut([x, 0, 0], [1, 0, 0])) {
    for (let i = closed ? 0 : 3, j = closed ? points.length - 3 : 0; i < points.length; j = i, i += 3) {
      const [a, b] = [points[j + 1]!, points[i + 1]!];
      if (a > y !== b > y) low = Math.min(low, points[j + 2]! + ((points[i + 2]! - points[j + 2]!) * (y - a)) / (b - a));
    }
  }
  return Number.isFinite(low) ? low : 0;
}

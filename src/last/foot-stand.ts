import { finding, type Finding } from "#base/findings.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { planeAxes, Sectioner } from "#mesh/section.ts";
import { meshIntoFrame, pointsIntoFrame, type Axes } from "./axes.ts";
import { findComb, type Comb } from "./comb.ts";
import { planLength } from "./girth.ts";
import { leastWithin } from "./golden-section.ts";
import type { Placement, Point3 } from "./last.ts";
import { placementOf } from "./placement.ts";
import { findPose, poseLyingOn } from "./pose.ts";
import { guessUnit } from "./unit.ts";
import { add, dot, scale, unit } from "./vector.ts";

/** A foot as it stands: mm, z up from the ground, x from heel to toes along the smallest rectangle round it seen from above, y to the left. */
export interface StandingFoot {
  readonly mesh: Mesh;
  readonly placement: Placement;
  /** What tells what is level: where the leg was cut off straight, an axis of the file, or the ground on which the foot would rest. */
  readonly level: "cut" | "file axis" | "rest";
  readonly findings: readonly Finding[];
}

/**
 * Stands a scanned foot up. A leg cut straight across tells what is level, for scans are trimmed along the ground they stood on.
 * Without one the file's own axis does, when one is near upright, and else the foot is let down until it rests under its middle.
 */
export function standFoot(scan: Mesh): StandingFoot {
  const pose = findPose(scan);
  const units = guessUnit(pose.length);
  const lying = mmIn(pose.axes, scan, units.unitPerMm);
  const cut = straightCut(lying);
  const axis = cut ? undefined : fileAxis(pose.axes);
  const up = cut ?? axis ?? restUp(lying);
  const { axes } = poseLyingOn(lying, scale(up, -1));
  const mesh = meshIntoFrame(axes, lying);
  const findings = [finding("foot-unit-read", { unit: units.unit, lengthMm: planLength(mesh) }), ...(cut ? [] : [axis ? finding("foot-level-from-axis", {}) : finding("foot-level-from-rest", {})])];
  return { mesh, placement: placementOf(pose.axes, units, axes), level: cut ? "cut" : axis ? "file axis" : "rest", findings };
}

function mmIn(axes: Axes, scan: Mesh, unitPerMm: number): Mesh {
  return { positions: pointsIntoFrame(axes, scan.positions).map((v) => v / unitPerMm), triangles: scan.triangles };
}

/** A cut top as good as its whole cross-section just below is flat; a dome is flat only in its middle. */
const cutShare = 0.7;
/** A cut leaning more than this was not made along the ground. */
const mostLean = 0.9; // cosine of 26 degrees

/** An axis of the file leaning less than this in the pose found is taken to be upright; the pose is right to some 16 degrees. */
const nearAxis = 0.94; // cosine of 20 degrees

function straightCut(lying: Mesh): Point3 | undefined {
  const comb = findComb(lying, 0.4);
  if (!comb || comb.normal[2] < mostLean) return undefined;
  return comb.areaMm2 > cutShare * areaBelow(lying, comb) ? comb.normal : undefined;
}

/** Area of the cross-section 3 mm under the plane of a cut, mm². */
function areaBelow(mesh: Mesh, { normal, level }: Comb): number {
  const { u, v } = planeAxes(normal);
  const at = scale(normal, level - 3);
  return new Sectioner(mesh).cut(at, normal).reduce((most, { points }) => {
    let twice = 0;
    for (let i = 0, j = points.length - 3; i < points.length; j = i, i += 3) {
      const [p, q]: [Point3, Point3] = [[points[j]!, points[j + 1]!, points[j + 2]!], [points[i]!, points[i + 1]!, points[i + 2]!]];
      twice += dot(p, u) * dot(q, v) - dot(q, u) * dot(p, v);
    }
    return Math.max(most, Math.abs(twice) / 2);
  }, 0);
}

/** The file's own axis that points up in the pose found, when it is near: scans of feet are saved with one axis upright. */
function fileAxis({ x, y, z }: Axes): Point3 | undefined {
  for (const k of [0, 1, 2] as const) if (Math.abs(z[k]) > nearAxis) return scale([x[k], y[k], z[k]], Math.sign(z[k]));
  return undefined;
}

/** Steepest plane looked at in one round, as a slope (27 degrees), and steps of each search: they settle it to 10⁻⁵. */
const steepest = 0.5;
const steps = 24;

/** Three times over, since what lies under the middle shifts while the foot is let down. */
function restUp(lying: Mesh): Point3 {
  let up: Point3 = [0, 0, 1];
  for (let round = 0; round < 3; round++) up = settled(lying, up);
  return up;
}

/**
 * Up of the plane on which a body rests that is let down under its middle: of all planes under it the one highest at the middle,
 * z = a x + b y + c. The depth below zero there is convex in a and b: golden section in the one within golden section in the other.
 */
function settled(lying: Mesh, up: Point3): Point3 {
  const { axes, length } = poseLyingOn(lying, scale(up, -1));
  const p = pointsIntoFrame(axes, lying.positions);
  const low = underside(p);
  const middle = middleOfFoot(p, length);
  const depth = (a: number, b: number): number => {
    let c = Infinity;
    for (let i = 0; i < low.length; i += 3) c = Math.min(c, low[i + 2]! - a * low[i]! - b * low[i + 1]!);
    return -(a * middle[0] + b * middle[1] + c);
  };
  const acrossAt = (a: number): { readonly at: number; readonly value: number } => leastWithin((b) => depth(a, b), steepest, steps);
  const a = leastWithin((slope) => acrossAt(slope).value, steepest, steps).at;
  const b = acrossAt(a).at;
  return unit(add(axes.z, add(scale(axes.x, -a), scale(axes.y, -b))));
}

/** The lowest point of each square of 6 mm, x y z …: what can touch the ground. */
function underside(p: Float64Array): Float64Array {
  const lowest = new Map<number, number>();
  for (let i = 0; i < p.length; i += 3) {
    const key = Math.floor(p[i]! / 6) * 1000 + Math.floor(p[i + 1]! / 6);
    const known = lowest.get(key);
    if (known === undefined || p[i + 2]! < p[known + 2]!) lowest.set(key, i);
  }
  return Float64Array.from([...lowest.values()].flatMap((i) => [p[i]!, p[i + 1]!, p[i + 2]!]));
}

/** Middle of the foot itself, without toes and leg: mean of the vertices from 15 to 75 % of the length and under 28 % of it. */
function middleOfFoot(p: Float64Array, length: number): Point3 {
  let sum: Point3 = [0, 0, 0];
  let n = 0;
  for (let i = 0; i < p.length; i += 3) {
    if (p[i]! < 0.15 * length || p[i]! > 0.75 * length || p[i + 2]! > 0.28 * length) continue;
    sum = add(sum, [p[i]!, p[i + 1]!, p[i + 2]!]);
    n++;
  }
  return n > 0 ? scale(sum, 1 / n) : [0.45 * length, 0, 0];
}

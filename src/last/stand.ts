import { asinClamped } from "#base/angle.ts";
import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Sectioner } from "#mesh/section.ts";
import { axesFrom, intoFrame, outOfFrame, pointsIntoFrame, type Axes } from "./axes.ts";
import { axisEnds } from "./axis.ts";
import { centreRing, nearestOnRing, runOfRing } from "./centre-section.ts";
import { pointAtIndex } from "./closed-curve.ts";
import { findComb } from "./comb.ts";
import type { Point3 } from "./last.ts";
import { restingUp } from "./rest.ts";
import { add, dot, scale, sub, unit } from "./vector.ts";

/** The last's own frame, told in the coordinates of the mesh it was found on, and what is doubtful about it. */
export interface Stand {
  readonly axes: Axes;
  readonly findings: readonly Finding[];
}

/** Place of the tread under the joint, and of the level part of the seat, as shares of the seat-to-toe length: ends of chords. */
const treadChord = [0.667, 0.767] as const;
const seatChord = [0.06, 0.17] as const;

/**
 * Stands a last up (mesh with z roughly up, mm): x from seat to toe point, z as it stands at its own heel pitch, lowest point at 0.
 * The pitch is that of a level comb, when the last has one and so stands on its tread; else that in which the seat lies level
 * and the tread touches under the joint. Where both ways can be told and differ much, that is said. What has no feather edge, a foot
 * or a very worn last, stands as it comes to rest on flat ground.
 */
export function standUp(cutter: Sectioner, feather: Float64Array, noiseMm: number, hasEdge: boolean): Stand {
  const bottom = hasEdge ? onItsBottom(cutter, feather) : placed(cutter, feather, restingUp(cutter.mesh, [0, 0, 1]));
  const comb = findComb(cutter.mesh, 0.3 + 2 * noiseMm);
  const onComb = comb && placed(cutter, feather, comb.normal);
  const findings: Finding[] = [];
  let axes = bottom.axes;
  if (onComb === undefined) {
    findings.push(finding("comb-missing", {}));
  } else {
    const pitchDegrees = angleIn(onComb.axes, bottom.axes, "x");
    const rollDegrees = angleIn(onComb.axes, bottom.axes, "y");
    // A comb cut slanting, a hole filled aslant or a shin cut off is no level; a true one differs by less than this.
    if (Math.abs(pitchDegrees) < 2 && Math.abs(rollDegrees) < 2.5) axes = onComb.axes;
    else if (hasEdge) findings.push(finding("pitch-doubtful", { degrees: Math.max(Math.abs(pitchDegrees), Math.abs(rollDegrees)), heelHeightMm: bottom.heelHeight }));
  }
  return { axes: onGround(cutter, axes), findings };
}

interface Placed {
  readonly axes: Axes;
  readonly heelHeight: number;
}

/** Axes with z as given and x along the axis of the feather line, origin at the seat point. */
function placed(cutter: Sectioner, feather: Float64Array, up: Point3): Placed {
  const flat = pointsIntoFrame(axesFrom([0, 0, 0], up, [1, 0, 0]), feather);
  const ends = axisEnds(flat, [1, 0, 0]);
  const seat = pointAtIndex(feather, ends.seat);
  const toe = pointAtIndex(feather, ends.toe);
  const axes = axesFrom(seat, up, sub(toe, seat));
  return { axes, heelHeight: -lowest(cutter, axes) };
}

/** Tilts until the seat is level and the tread lies under the joint, and until both sides of the feather are level across. */
function onItsBottom(cutter: Sectioner, feather: Float64Array): Placed {
  let up: Point3 = [0, 0, 1];
  let result = placed(cutter, feather, up);
  for (let round = 0; round < 5; round++) {
    const { axes } = result;
    const pitch = bottomSlope(cutter, axes, feather);
    const roll = featherRoll(pointsIntoFrame(axes, feather));
    // A bottom that rises toward x by `pitch` is level when up leans back by it.
    up = unit(add(axes.z, add(scale(axes.x, -pitch), scale(axes.y, -roll))));
    result = placed(cutter, feather, up);
  }
  return result;
}

/** Rise of the bottom along x that should be none: mean of the chords at seat and tread. */
function bottomSlope(cutter: Sectioner, axes: Axes, feather: Float64Array): number {
  const toe = intoFrame(axes, pointAtIndex(feather, axisEnds(pointsIntoFrame(axes, feather), [1, 0, 0]).toe));
  const profile = bottomRun(cutter, axes, outOfFrame(axes, toe)).map((p) => intoFrame(axes, p));
  const chord = ([from, to]: readonly [number, number]): number => (heightAt(profile, to * toe[0]) - heightAt(profile, from * toe[0])) / ((to - from) * toe[0]);
  return (chord(treadChord) + chord(seatChord)) / 2;
}

/** The section in the axis plane from the seat point (the axes' origin) along the bottom to the toe point. */
function bottomRun(cutter: Sectioner, axes: Axes, toe: Point3): Point3[] {
  const { points } = centreRing(cutter.cut(axes.origin, axes.y));
  if (points.length < 9) throw new Refusal(finding("not-a-last", { why: "it has no surface along its middle" }));
  const a = nearestOnRing(points, axes.origin);
  const b = nearestOnRing(points, toe);
  const runs = ([1, -1] as const).map((direction) => runOfRing(points, a, b, direction));
  const level = (run: readonly Point3[]): number => run.reduce((sum, p) => sum + dot(axes.z, p), 0) / run.length;
  return level(runs[0]!) < level(runs[1]!) ? runs[0]! : runs[1]!;
}

function heightAt(profile: readonly Point3[], x: number): number {
  for (let i = 1; i < profile.length; i++) {
    const [a, b] = [profile[i - 1]!, profile[i]!];
    if (a[0] <= x && b[0] >= x && b[0] > a[0]) return a[2] + ((b[2] - a[2]) * (x - a[0])) / (b[0] - a[0]);
  }
  return profile.reduce((best, p) => (Math.abs(p[0] - x) < Math.abs(best[0] - x) ? p : best))[2];
}

/** Rise across (+y) of the feather line where both sides are at like heights: seat, and the forepart before the joint. */
function featherRoll(points: Float64Array): number {
  let toeX = 0;
  for (let i = 0; i < points.length; i += 3) toeX = Math.max(toeX, points[i]!);
  const sum = [0, 0, 0, 0]; // y and z on +y, y and z on −y
  const count = [0, 0];
  for (let i = 0; i < points.length; i += 3) {
    const share = points[i]! / toeX;
    if (!((share > 0.08 && share < 0.13) || (share > 0.74 && share < 0.86))) continue;
    const k = points[i + 1]! > 0 ? 0 : 1;
    sum[2 * k] = sum[2 * k]! + points[i + 1]!;
    sum[2 * k + 1] = sum[2 * k + 1]! + points[i + 2]!;
    count[k] = count[k]! + 1;
  }
  if (count[0] === 0 || count[1] === 0) return 0;
  return (sum[1]! / count[0]! - sum[3]! / count[1]!) / (sum[0]! / count[0]! - sum[2]! / count[1]!);
}

/** Angle in degrees by which b's up leans against a's, seen along the other level axis. */
function angleIn(a: Axes, b: Axes, lean: "x" | "y"): number {
  return (asinClamped(dot(b.z, a[lean])) * 180) / Math.PI;
}

/** Height of the lowest vertex along z over the axes' origin. */
function lowest(cutter: Sectioner, { origin, z }: Axes): number {
  const p = cutter.mesh.positions;
  const base = dot(origin, z);
  let low = Infinity;
  for (let i = 0; i < p.length; i += 3) low = Math.min(low, p[i]! * z[0] + p[i + 1]! * z[1] + p[i + 2]! * z[2]);
  return low - base;
}

/** Moves the origin straight down to the ground. */
function onGround(cutter: Sectioner, axes: Axes): Axes {
  return { ...axes, origin: add(axes.origin, scale(axes.z, lowest(cutter, axes))) };
}


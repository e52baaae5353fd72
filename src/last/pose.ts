import type { Mesh } from "#mesh/mesh.ts";
import { axesFrom, type Axes } from "./axes.ts";
import type { Point3 } from "./last.ts";
import { sampleSurface, type Samples } from "./samples.ts";
import { add, cross, dot, pointAt, scale, unit } from "./vector.ts";

/** How a scan lies, before anything on it is measured. Lengths in the scan's own unit. Right to a few degrees. */
export interface Pose {
  /** z up, x toward the toe, origin at the hindmost and lowest extent on the middle of the width. */
  readonly axes: Axes;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** Height of the heel half over that of the toe half, as a share of the length; about 0.2 on a last, 0 on a box. */
  readonly fall: number;
  /** The best likeness less the next best that lies otherwise; near 0 when two ways of lying are as good. */
  readonly margin: number;
}

/** Cosine of the cone about a direction within which a surface counts as looking that way: 32 degrees. */
const facing = 0.85;
/** Share of the largest extent within which a surface counts as lying on the ground. */
const nearGround = 0.12;

/**
 * Which way is down and where is the toe: down is where most of the surface lies on a plane and the top falls from one end to
 * the other. A last on its side also has a broad face down, but its top then does not fall.
 */
export function findPose(mesh: Mesh): Pose {
  const samples = sampleSurface(mesh, 2500);
  const candidates = broadFaces(samples).map((down) => poseOn(samples, down));
  candidates.sort((a, b) => b.likeness - a.likeness);
  const best = candidates[0]!;
  const next = candidates.find((c) => dot(c.axes.z, best.axes.z) < 0.7);
  return { ...best, margin: next ? best.likeness - next.likeness : best.likeness };
}

/** The pose of a scan of which it is known what is down: toe and long axis found as in {@link findPose}. */
export function poseLyingOn(mesh: Mesh, down: Point3): Pose {
  return { ...poseOn(sampleSurface(mesh, 2500), unit(down)), margin: 1 };
}

/** Directions in which the most surface lies on a plane, best first, no two within 45 degrees. */
function broadFaces(s: Samples): Point3[] {
  const scored = cubeDirections(8).map((d) => ({ d, area: groundArea(s, d) }));
  scored.sort((a, b) => b.area - a.area);
  const chosen: Point3[] = [];
  for (const { d } of scored) {
    if (chosen.length === 6) break;
    if (chosen.every((c) => dot(c, d) < 0.7)) chosen.push(d);
  }
  return chosen.map((d) => settle(s, d));
}

/** Directions spread over the sphere: a grid of n × n on each face of a cube. */
function cubeDirections(n: number): Point3[] {
  const out: Point3[] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const a = (2 * i + 1) / n - 1;
      const b = (2 * j + 1) / n - 1;
      for (const w of [-1, 1]) out.push(unit([w, a, b]), unit([a, w, b]), unit([a, b, w]));
    }
  return out;
}

function support({ corners: p }: Samples, d: Point3): Range {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < p.length; i += 3) {
    const h = p[i]! * d[0] + p[i + 1]! * d[1] + p[i + 2]! * d[2];
    if (h < low) low = h;
    if (h > high) high = h;
  }
  return [low, high];
}

/** Visits the samples that look along `down` and lie near the ground in that pose; `share` 0 on it, 1 where near ends. */
function eachOnGround(s: Samples, down: Point3, visit: (i: number, share: number) => void): void {
  const high = support(s, down)[1];
  const near = nearGround * extent(s);
  for (let i = 0; i < s.count; i++) {
    const k = 3 * i;
    if (s.normals[k]! * down[0] + s.normals[k + 1]! * down[1] + s.normals[k + 2]! * down[2] < facing) continue;
    const share = (high - s.points[k]! * down[0] - s.points[k + 1]! * down[1] - s.points[k + 2]! * down[2]) / near;
    if (share < 1) visit(i, share);
  }
}

function groundArea(s: Samples, down: Point3): number {
  let n = 0;
  eachOnGround(s, down, () => n++);
  return n * s.areaEach;
}

/** Turns a direction to the mean of what lies on the ground there, the nearer to it the more. */
function settle(s: Samples, from: Point3): Point3 {
  let down = from;
  for (let round = 0; round < 8; round++) {
    let sum: Point3 = [0, 0, 0];
    eachOnGround(s, down, (i, share) => (sum = add(sum, scale(pointAt(s.normals, i), (1 - share) ** 2))));
    if (dot(sum, sum) > 0) down = unit(sum);
  }
  return down;
}

const extent = (s: Samples): number => {
  let best = 0;
  for (const d of [[1, 0, 0], [0, 1, 0], [0, 0, 1]] as const) {
    const [low, high] = support(s, d);
    best = Math.max(best, high - low);
  }
  return best;
};

/** The pose with `down` to the ground, toe where the top is lower, and how much like a last it lies. */
function poseOn(s: Samples, down: Point3): Omit<Pose, "margin"> & { readonly likeness: number } {
  const up = scale(down, -1);
  const long = longAxis(s, up);
  const forward = profile(s, axesFrom([0, 0, 0], up, long));
  const axes0 = axesFrom([0, 0, 0], up, forward.fall >= 0 ? long : scale(long, -1));
  const { box, fall, unevenness } = profile(s, axes0);
  const [x, y, z] = box;
  const origin = add(scale(axes0.x, x[0]), add(scale(axes0.y, (y[0] + y[1]) / 2), scale(axes0.z, z[0])));
  const length = x[1] - x[0];
  const share = groundArea(s, down) / (s.areaEach * s.count);
  const width = (y[1] - y[0]) / length;
  // Weighed so that lasts, feet and shoes in every way of lying keep apart; our own figures, no source.
  const likeness = 1.3 * share + 2 * Math.min(fall, 0.18) - unevenness - 2 * Math.max(0, width - 0.42);
  return { axes: { ...axes0, origin }, length, width: y[1] - y[0], height: z[1] - z[0], fall, likeness };
}

/** Long side of the smallest rectangle round the shape seen along `up`: tried in steps of 0.2 degrees about the axis of spread. */
function longAxis(s: Samples, up: Point3): Point3 {
  const spread = spreadAxis(s, up);
  const across = cross(up, spread);
  const tried = (k: number): { axis: Point3; area: number } => {
    const axis = unit(add(spread, scale(across, k * 0.0035)));
    const [a, b] = [support(s, axis), support(s, cross(up, axis))];
    return { axis, area: (a[1] - a[0]) * (b[1] - b[0]) };
  };
  let best = tried(0);
  for (let k = 1; k <= 60; k++)
    for (const next of [tried(k), tried(-k)]) if (next.area < best.area) best = next;
  return best.axis;
}

function squareTo(up: Point3): readonly [Point3, Point3] {
  const a = unit(Math.abs(up[0]) < 0.7 ? cross(up, [1, 0, 0]) : cross(up, [0, 1, 0]));
  return [a, cross(up, a)];
}

/** Direction of the largest spread square to `up`: the larger eigenvector of the 2 × 2 covariance. */
function spreadAxis(s: Samples, up: Point3): Point3 {
  const [a, b] = squareTo(up);
  let [su, sv, suu, suv, svv] = [0, 0, 0, 0, 0];
  for (let i = 0; i < s.count; i++) {
    const p = pointAt(s.points, i);
    const u = dot(p, a);
    const v = dot(p, b);
    su += u;
    sv += v;
    suu += u * u;
    suv += u * v;
    svv += v * v;
  }
  const n = s.count;
  const xx = suu / n - (su / n) ** 2;
  const xy = suv / n - (su / n) * (sv / n);
  const yy = svv / n - (sv / n) ** 2;
  const half = (xx - yy) / 2;
  const root = Math.sqrt(half * half + xy * xy);
  const [c, d] = half >= 0 ? [half + root, xy] : [xy, root - half];
  return c === 0 && d === 0 ? a : unit(add(scale(a, c), scale(b, d)));
}

const bins = 12;

type Range = readonly [low: number, high: number];

/** Bounds along x, y, z, fall of the top from heel to toe and unevenness of the ground side, both as shares of length. */
function profile(s: Samples, axes: Axes): { box: readonly [Range, Range, Range]; fall: number; unevenness: number } {
  const box = [support(s, axes.x), support(s, axes.y), support(s, axes.z)] as const;
  const [x0, x1] = box[0];
  const length = x1 - x0;
  const top = new Float64Array(bins).fill(-Infinity);
  const ground = new Float64Array(bins).fill(Infinity);
  for (let i = 0; i < s.count; i++) {
    const p = pointAt(s.points, i);
    const bin = Math.min(bins - 1, Math.floor(((dot(p, axes.x) - x0) / length) * bins));
    const z = dot(p, axes.z);
    top[bin] = Math.max(top[bin]!, z);
    ground[bin] = Math.min(ground[bin]!, z);
  }
  const mean = (v: Float64Array, from: number, to: number): number => {
    let sum = 0;
    let n = 0;
    for (let i = from; i < to; i++) {
      if (!Number.isFinite(v[i]!)) continue;
      sum += v[i]!;
      n++;
    }
    return n > 0 ? sum / n : 0;
  };
  const level = mean(ground, 1, bins - 1);
  let rough = 0;
  for (let i = 1; i < bins - 1; i++) if (Number.isFinite(ground[i]!)) rough += Math.abs(ground[i]! - level) / (bins - 2);
  return {
    box,
    fall: (mean(top, 1, 5) - mean(top, bins - 5, bins - 1)) / length,
    unevenness: rough / length,
  };
}

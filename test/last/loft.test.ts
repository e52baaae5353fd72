// The lofted form as a surface: closed, even, sharp at the feather line, without bumps. Limits are our own unless a source is named.
import { expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import type { Last, SurfaceCurve } from "#last/last.ts";
import { Path } from "#last/loft-path.ts";
import { splineControls, splinePlace } from "#last/loft-spline.ts";
import { toeShapes, type ToeShape } from "#last/measured.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { parts } from "#mesh/topology.ts";

const toes = toeShapes;
const lasts = new Map<ToeShape, Last>();
function lastOf(toe: ToeShape): Last {
  const last = lasts.get(toe) ?? lastFromMeasures({ ...demoMeasurements, toe }, toe, unwatched);
  lasts.set(toe, last);
  return last;
}

const corner = ({ positions: p, triangles: t }: Mesh, h: number): [number, number, number] => [p[3 * t[h]!]!, p[3 * t[h]! + 1]!, p[3 * t[h]! + 2]!];
function normalOf(mesh: Mesh, t: number): [number, number, number] {
  const [a, b, c] = [corner(mesh, 3 * t), corner(mesh, 3 * t + 1), corner(mesh, 3 * t + 2)];
  const [u, v] = [b.map((x, i) => x - a[i]!), c.map((x, i) => x - a[i]!)] as [number[], number[]];
  const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
  const long = Math.hypot(...n);
  return n.map((x) => x / long) as [number, number, number];
}

test.each(toes)("%s: closed, one piece, a ball in topology (Euler–Poincaré), facing outward", (toe) => {
  const { mesh } = lastOf(toe);
  const all = parts(mesh);
  expect(all.length).toBe(1);
  expect(all[0]!.loops).toBe(0);
  expect(all[0]!.euler).toBe(2);
  // Volume by the divergence theorem: positive when triangles face outward; a woman's last of this size holds some 0.7 l (synthetic lasts: 0.72).
  let six = 0;
  for (let t = 0; t < triangleCount(mesh); t++) {
    const [a, b, c] = [corner(mesh, 3 * t), corner(mesh, 3 * t + 1), corner(mesh, 3 * t + 2)];
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  expect(six / 6e6).toBeGreaterThan(0.6);
  expect(six / 6e6).toBeLessThan(0.85);
});

test.each(toes)("%s: triangles are even", (toe) => {
  const { mesh } = lastOf(toe);
  expect(triangleCount(mesh)).toBeLessThan(60_000);
  const edges: number[] = [];
  let narrow = 0;
  for (let t = 0; t < triangleCount(mesh); t++) {
    const p = [0, 1, 2].map((k) => corner(mesh, 3 * t + k));
    const long = [0, 1, 2].map((k) => Math.hypot(...[0, 1, 2].map((i) => p[(k + 1) % 3]![i]! - p[k]![i]!)));
    edges.push(...long);
    const s = (long[0]! + long[1]! + long[2]!) / 2;
    const area = Math.sqrt(s * (s - long[0]!) * (s - long[1]!) * (s - long[2]!));
    // Least height against longest side: 0.87 in an even triangle.
    if ((2 * area) / Math.max(...long) ** 2 < 0.35) narrow++;
  }
  edges.sort((a, b) => a - b);
  expect(edges[edges.length >> 1]).toBeGreaterThan(1.7);
  expect(edges[edges.length >> 1]).toBeLessThan(2.2);
  expect(edges[edges.length - 1]).toBeLessThan(4);
  expect(narrow / triangleCount(mesh)).toBeLessThan(0.004);
});

test.each(toes)("%s: the feather line runs along edges and is a sharp ridge all the way round", (toe) => {
  const { mesh, feather } = lastOf(toe);
  const vertexAt = new Map<string, number>();
  for (let v = 0; v < mesh.positions.length / 3; v++) vertexAt.set(mesh.positions.subarray(3 * v, 3 * v + 3).join(), v);
  const sides = new Map<string, number[]>();
  mesh.triangles.forEach((a, h) => {
    const b = mesh.triangles[h % 3 === 2 ? h - 2 : h + 1]!;
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    sides.set(key, [...(sides.get(key) ?? []), Math.floor(h / 3)]);
  });
  const n = feather.points.length / 3;
  const ids = Array.from({ length: n }, (_, i) => vertexAt.get(feather.points.subarray(3 * i, 3 * i + 3).join()) ?? -1);
  expect(Math.min(...ids)).toBeGreaterThan(-1);
  for (let i = 0; i < n; i++) {
    const [a, b] = [ids[i]!, ids[(i + 1) % n]!];
    const pair = sides.get(a < b ? `${a} ${b}` : `${b} ${a}`);
    expect(pair?.length, `between feather points ${i} and ${i + 1}`).toBe(2);
    const [p, q] = pair!.map((t) => normalOf(mesh, t)) as [[number, number, number], [number, number, number]];
    const turn = (Math.acos(p[0] * q[0] + p[1] * q[1] + p[2] * q[2]) * 180) / Math.PI;
    expect(turn, `degrees at feather point ${i}`).toBeGreaterThan(40);
    // One side looks down (the bottom), the other out.
    expect(Math.min(p[2], q[2])).toBeLessThan(-0.85);
  }
});

/** Curvature of a curve in the plane y = 0 by three points `reach` steps apart; positive where it is hollow seen from above or behind. */
function bends({ points, arc }: SurfaceCurve, from: number, to: number, reach: number): number[] {
  const out: number[] = [];
  for (let i = reach; i < arc.length - reach; i++) {
    if (arc[i]! < from || arc[i]! > to) continue;
    const [x0, z0, x1, z1, x2, z2] = [i - reach, i, i + reach].flatMap((k) => [points[3 * k]!, points[3 * k + 2]!]) as [number, number, number, number, number, number];
    const cross = (x1 - x0) * (z2 - z1) - (z1 - z0) * (x2 - x1);
    out.push((2 * cross) / (Math.hypot(x1 - x0, z1 - z0) * Math.hypot(x2 - x1, z2 - z1) * Math.hypot(x2 - x0, z2 - z0)));
  }
  return out;
}
const signChanges = (v: readonly number[]): number => v.filter((x, i) => i > 0 && x > 0 !== v[i - 1]! > 0).length;

test.each(toes)("%s: the ridge has no bumps: round over the toe, hollow over the vamp, round at the cone at most", (toe) => {
  const { centreRidge } = lastOf(toe);
  const whole = centreRidge.arc[centreRidge.arc.length - 1]!;
  const bent = bends(centreRidge, 12, whole - 12, 8);
  expect(signChanges(bent)).toBeLessThanOrEqual(3);
  // The bend changes slowly: no kink between neighbouring millimetres.
  const jumps = bent.slice(1).map((b, i) => Math.abs(b - bent[i]!));
  expect(Math.max(...jumps)).toBeLessThan(0.01);
});

test("the back is a heel curve: it stands out behind the seat point and tucks in toward the comb", () => {
  const { backCurve } = lastOf("round");
  const x = Array.from(backCurve.arc, (_, i) => backCurve.points[3 * i]!);
  const out = x.indexOf(Math.min(...x));
  expect(-x[out]!).toBeGreaterThan(2.5);
  expect(-x[out]!).toBeLessThan(7);
  expect(backCurve.arc[out]!).toBeGreaterThan(10);
  expect(backCurve.arc[out]!).toBeLessThan(32);
  expect(x[x.length - 1]!).toBeGreaterThan(2);
  expect(signChanges(bends(backCurve, 4, backCurve.arc[backCurve.arc.length - 1]! - 4, 4))).toBeLessThanOrEqual(1);
});

test("the crest leans to the inside and the inside of the waist is hollower than the outside", () => {
  const { mesh, feather, landmarks } = lastOf("round");
  const at = landmarks.vampPoint[0];
  let top = [0, 0, -Infinity];
  for (let v = 0; v < mesh.positions.length; v += 3)
    if (Math.abs(mesh.positions[v]! - at) < 1.5 && mesh.positions[v + 2]! > top[2]!) top = [...mesh.positions.subarray(v, v + 3)];
  expect(top[1]!).toBeGreaterThan(1);
  const waist = Array.from({ length: feather.points.length / 3 }, (_, i) => feather.points.subarray(3 * i, 3 * i + 3)).filter((p) => Math.abs(p[0]! - 0.45 * landmarks.toePoint[0]) < 3);
  const width = (sign: number): number => Math.max(...waist.map((p) => sign * p[1]!));
  expect(width(1)).toBeLessThan(width(-1) - 2);
});

test("splines: weights add up to one, straight lists stay straight, ends are met", () => {
  const straight = splineControls([3, 5, 7, 9, 11]);
  const bent = splineControls([2, 9, 4, 7]);
  const value = (controls: Float64Array, spans: number, share: number): number => {
    const { first, a, b, c, d } = splinePlace(spans, share);
    expect(a + b + c + d).toBeCloseTo(1, 14);
    return a * controls[first]! + b * controls[first + 1]! + c * controls[first + 2]! + d * controls[first + 3]!;
  };
  for (const share of [0, 0.13, 0.5, 0.77, 1]) expect(value(straight, 4, share)).toBeCloseTo(3 + 8 * share, 12);
  expect(value(bent, 3, 0)).toBeCloseTo(2, 14);
  expect(value(bent, 3, 1)).toBeCloseTo(7, 14);
});

test("paths: a quarter circle of radius 10 is 5π long and cut into even steps", () => {
  const quarter = (out: Float64Array, at: number, q: number): void => {
    const angle = ((q * q) * Math.PI) / 2; // uneven in q on purpose
    out.set([10 * Math.cos(angle), 10 * Math.sin(angle), 0], 3 * at);
  };
  const path = new Path(quarter, 400);
  expect(path.length).toBeCloseTo(5 * Math.PI, 3);
  const shares = path.evenShares(8);
  shares.forEach((q, i) => expect(q * q).toBeCloseTo(i / 8, 2));
});

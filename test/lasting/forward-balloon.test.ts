import { describe, expect, test } from "vitest";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { neoHookean } from "#leather/neo-hookean.ts";

interface Ball {
  readonly corners: readonly (readonly [number, number, number])[];
  readonly points: readonly (readonly number[])[];
}

/** An octahedron each face of which is cut into n² triangles, drawn out on to the ball of radius 1; corners counter-clockwise from outside. */
function ballOf(n: number): Ball {
  const points: number[][] = [], known = new Map<string, number>(), corners: [number, number, number][] = [];
  const at = (i: number, j: number, k: number): number => {
    const key = `${i} ${j} ${k}`, size = Math.sqrt(i * i + j * j + k * k);
    if (!known.has(key)) known.set(key, points.push([i / size, j / size, k / size]) - 1);
    return known.get(key)!;
  };
  for (const sx of [1, -1])
    for (const sy of [1, -1])
      for (const sz of [1, -1]) {
        const place = (i: number, j: number): number => at(sx * i, sy * j, sz * (n - i - j));
        const add = (a: number, b: number, c: number) => corners.push(sx * sy * sz > 0 ? [a, b, c] : [a, c, b]);
        for (let i = 0; i < n; i++)
          for (let j = 0; i + j < n; j++) {
            add(place(i + 1, j), place(i, j + 1), place(i, j));
            if (i + j + 2 <= n) add(place(i + 1, j + 1), place(i, j + 1), place(i + 1, j));
          }
      }
  return { corners, points };
}

const minus = (a: readonly number[], b: readonly number[]): [number, number, number] => [a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!];
const cross = (u: readonly number[], v: readonly number[]): [number, number, number] => [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
const size = (u: readonly number[]): number => Math.sqrt(u[0]! ** 2 + u[1]! ** 2 + u[2]! ** 2);

/** A balloon of μ t = 1 N/mm and radius 20 mm blown up with a pressure, N/mm². @returns stretch of its radius, mean over its area */
function blownUp(pressure: number, n: number): number {
  const { corners, points } = ballOf(n), radius = 20;
  // Every triangle lies flat by itself; all that meet at a point are sewn together there.
  const vertices = corners.flat(), first = new Map<number, number>(), taped: number[] = [];
  vertices.forEach((p, v) => (first.has(p) ? taped.push(first.get(p)!, v) : first.set(p, v)));
  const flat = Float64Array.from(corners.flatMap((corner) => {
    const [a, b, c] = corner.map((p) => points[p]!.map((q) => radius * q)) as [number[], number[], number[]];
    const u = minus(b, a), v = minus(c, a), long = size(u);
    return [0, 0, long, 0, (u[0] * v[0] + u[1] * v[1] + u[2] * v[2]) / long, size(cross(u, v)) / long];
  }));
  const start = Float64Array.from(vertices.flatMap((p) => points[p]!.map((q) => 1.02 * radius * q)));
  const sheet = new LeatherSheet({ sheet: { triangles: Uint32Array.from(vertices, (_, v) => v), flat, taped: Uint32Array.from(taped) }, law: neoHookean(1), bend: 0 }, start);
  let x: Float64Array = start, moved = Infinity;
  for (let round = 0; round < 30 && moved > 1e-6; round++) {
    // Pressure acts square to each triangle as it lies now, a third of it on each corner.
    for (let t = 0; t < corners.length; t++) {
      const [a, b, c] = [0, 3, 6].map((k) => Array.from(x.subarray(9 * t + k, 9 * t + k + 3))) as [number[], number[], number[]];
      const push = cross(minus(b, a), minus(c, a)).map((d) => (pressure * d) / 6);
      for (let k = 0; k < 3; k++) sheet.load.set(push, 9 * t + 3 * k);
    }
    expect(sheet.settle({ toleranceMm: 1e-7, residualN: 1e-8 }).settled).toBe(true);
    const now = sheet.positions();
    moved = now.reduce((most, v, i) => Math.max(most, Math.abs(v - x[i]!)), 0);
    x = now;
  }
  expect(moved).toBeLessThan(1e-6);
  const { most, least } = sheet.strains();
  let before = 0, after = 0;
  for (let t = 0; t < corners.length; t++) {
    const area = (flat[6 * t + 2]! * flat[6 * t + 5]!) / 2;
    before += area;
    after += area * most[t]! * least[t]!;
  }
  return Math.sqrt(after / before);
}

// A ball of rubber that keeps its volume: p R₀/(μ t₀) = 2 (λ⁻¹ − λ⁻⁷) (ME-08; Treloar, The Physics of Rubber Elasticity; from memory).
describe("a balloon", () => {
  const asked = 1.1, pressure = (2 * (1 / asked - 1 / asked ** 7)) / 20;
  const [coarse, fine, finer] = [4, 8, 16].map((n) => Math.abs(blownUp(pressure, n) - asked)) as [number, number, number];

  test("the pressure is the one that is quoted", () => expect(pressure * 20).toBeCloseTo(0.7918656, 6));
  test("blown up by it, it is a tenth larger", () => expect(finer).toBeLessThan(5e-4));
  test("with edges half as long it comes four times as near", () => {
    expect(coarse / fine).toBeGreaterThan(3.5);
    expect(fine / finer).toBeGreaterThan(3.5);
  });
});

import { describe, expect, it } from "vitest";
import { flatten } from "#flatten/flatten.ts";
import { InverseSheet, type InverseInput, type RowPull } from "#lasting/inverse/inverse-sheet.ts";
import type { Law } from "#leather/law.ts";
import { neoHookean } from "#leather/neo-hookean.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { flatOfCap } from "../support/cap-bvp.ts";
import { capMesh, gridMesh } from "../support/formula-surfaces.ts";

const leather = new ToeLaw({ along: 40, across: 20, bias: 18, poisson: 0.4, toe: 0.02, early: 0.2 });
const alike = new ToeLaw({ along: 30, across: 30, bias: 30, poisson: 0.3, toe: 0.02, early: 0.2 });

const solve = (mesh: Mesh, input: Omit<InverseInput, "positions">) => new InverseSheet(mesh.positions.length / 3, mesh.triangles).run({ positions: mesh.positions, ...input });

/** Rows of the rim of a grid with so many columns and rows, counter-clockwise: bottom, right, top, left. */
function gridRows(columns: number, rows: number) {
  const at = (c: number, r: number): number => r * (columns + 1) + c, row = (n: number, of: (k: number) => number) => Uint32Array.from({ length: n + 1 }, (_, k) => of(k));
  return { bottom: row(columns, (k) => at(k, 0)), right: row(rows, (k) => at(columns, k)), top: row(columns, (k) => at(columns - k, rows)), left: row(rows, (k) => at(0, rows - k)) };
}
const pulled = (vertices: Uint32Array, perMm: number): RowPull => ({ vertices, perMm: new Float64Array(vertices.length).fill(perMm) });
const uniform = (values: Float64Array): number => Math.max(...values) - Math.min(...values);

/** A strip round a cylinder: `angle` rad of it along s, so broad along t. */
const strip = (R: number, angle: number, width: number, columns: number, rows: number): Mesh => gridMesh((s, t) => [R * Math.sin(s * angle), width * t, R * Math.cos(s * angle)], columns, rows);
const unrolled = (R: number, { positions }: Mesh): Float64Array => Float64Array.from({ length: (2 * positions.length) / 3 }, (_, i) => (i % 2 === 1 ? positions[3 * ((i - 1) / 2) + 1]! : R * Math.atan2(positions[3 * (i / 2)]!, positions[3 * (i / 2) + 2]!)));

describe("inverse of a plane sheet", () => {
  // Patch test (Irons; MacNeal and Harder 1985): one state of stress is met exactly by any mesh.
  it("shrinks alike everywhere under pulls alike on each side, to 1e-10", () => {
    const mesh = gridMesh((s, t) => [60 * s + 3 * Math.sin(9 * t) * s * (1 - s), 40 * t + 2 * t * (1 - t) * Math.sin(7 * s + 1), 0], 6, 4);
    const start = Float64Array.from({ length: (2 * mesh.positions.length) / 3 }, (_, i) => mesh.positions[3 * (i >> 1) + (i % 2)]!);
    const { bottom, right, top, left } = gridRows(6, 4);
    for (const exact of [true, false]) {
      const found = solve(mesh, { start, law: leather, exact, frame: { from: 0, origin: 6 }, pulls: [pulled(bottom, 0.5), pulled(top, 0.5), pulled(right, 1.2), pulled(left, 1.2)], toleranceMm: 1e-11 });
      expect(found.settled).toBe(true);
      expect(uniform(found.stretchMax)).toBeLessThan(1e-10);
      expect(uniform(found.stretchMin)).toBeLessThan(1e-10);
      expect(Math.max(...found.pressure.map(Math.abs))).toBeLessThan(1e-10);
      // Forces per lasted width of that state are the pulls: σ₁ = λ₁ S₁ / λ₂.
      const [l1, l2] = [found.stretchMax[0]!, found.stretchMin[0]!], out = new Float64Array(9);
      leather.into(out, (l1 * l1 - 1) / 2, (l2 * l2 - 1) / 2, 0);
      expect((l1 * out[0]!) / l2).toBeCloseTo(1.2, 9);
      expect((l2 * out[1]!) / l1).toBeCloseTo(0.5, 9);
    }
  });
});

describe("inverse of a strip on a cylinder", () => {
  // Neo-Hookean strip, μ = 1, λ = 1.2: nominal 1.2 − 1.2⁻² = 0.5055556 per flat width, 0.9128709 as broad (checks table ME-05; formula of any text on rubber).
  it("is as long and as broad as a rubber strip that was pulled along", () => {
    const R = 40, angle = 1, mesh = strip(R, angle, 20, 24, 10), { right, left } = gridRows(24, 10);
    const perLasted = 0.5055556 / 0.9128709;
    const { stretchMax, stretchMin, settled } = solve(mesh, { start: unrolled(R, mesh), law: neoHookean(1), frame: { from: 0, origin: 24 }, pulls: [pulled(right, perLasted), pulled(left, perLasted)], toleranceMm: 1e-8 });
    expect(settled).toBe(true);
    expect(Math.max(...stretchMax.map((l) => Math.abs(l - 1.2)))).toBeLessThan(1e-6);
    expect(Math.max(...stretchMin.map((l) => Math.abs(l - 0.9128709)))).toBeLessThan(1e-6);
  });

  // Pressure of a rope or a strip round a post, p = T/R (Laplace; checks table ME-04: T 2 N/mm, R 40: 0.05 N/mm²).
  it("presses with T/R", () => {
    const R = 40, angle = 1.2, mesh = strip(R, angle, 20, 40, 8), { right, left } = gridRows(40, 8);
    const { pressure } = solve(mesh, { start: unrolled(R, mesh), law: alike, frame: { from: 0, origin: 40 }, pulls: [pulled(right, 2), pulled(left, 2)] });
    expect(Math.abs(pressure[4 * 41 + 20]! / 0.05 - 1)).toBeLessThan(0.02);
  });

  // Euler and Eytelwein: T₂/T₁ = e^{μθ}; checks table ME-01: (0.3, 90°) 1.601978, (0.2, 180°) 1.874456, (0.3, 180°) 2.566332.
  it.each([[0.3, 90, 1.601978], [0.2, 180, 1.874456], [0.3, 180, 2.566332]])("with friction %f over %i° balances at a ratio of pulls of %f, to 1 percent", (share, degrees, ratio) => {
    const R = 40, angle = (degrees * Math.PI) / 180, columns = Math.round(0.7 * degrees), mesh = strip(R, angle, 16, columns, 8), { right, left } = gridRows(columns, 8);
    const { positions: p } = mesh, along = Float64Array.from(p, (_, i) => (i % 3 === 0 ? p[i + 2]! / R : i % 3 === 1 ? 0 : -p[i - 2]! / R));
    const leftOver = (t2: number): number => solve(mesh, { start: unrolled(R, mesh), law: neoHookean(30), frame: { from: 0, origin: columns }, friction: { share, along }, pulls: [pulled(right, t2), pulled(left, 1)], toleranceMm: 1e-6 }).balance.alongN;
    // What is left over grows evenly with the pull: two trials and one step of the secant.
    const [a, b] = [1.3, 3], [fa, fb] = [leftOver(a), leftOver(b)], first = a - (fa * (b - a)) / (fb - fa), ff = leftOver(first);
    const found = first - (ff * (b - first)) / (fb - ff);
    expect(Math.abs(found / ratio - 1)).toBeLessThan(0.01);
  });
});

describe("inverse of a cap", () => {
  const R = 40, alpha = Math.PI / 3;
  function cap(rings: number, law: Law, polar: boolean) {
    const mesh = capMesh(R, 60, rings), count = mesh.triangles.length / 3, first = 1 + 3 * rings * (rings - 1);
    const rim = Uint32Array.from({ length: 6 * rings + 1 }, (_, k) => first + (k % (6 * rings)));
    const core = rings / 3, middle = (t: number, i: number): number => [0, 1, 2].reduce((sum, c) => sum + mesh.positions[3 * mesh.triangles[3 * t + c]! + i]!, 0);
    const away = Float64Array.from({ length: count }, (_, t) => Math.hypot(middle(t, 0), middle(t, 1)));
    const material = polar ? { laws: [alike, law], of: Uint8Array.from({ length: count }, (_, t) => (t < 6 * core * core ? 0 : 1)) } : law;
    const axes = polar ? { axes: { cos: away.map((a, t) => middle(t, 0) / a), sin: away.map((a, t) => middle(t, 1) / a) } } : {};
    const found = solve(mesh, { start: flatten(mesh).uv, law: material, ...axes, frame: { from: 0, origin: first }, pulls: [pulled(rim, 1)], normals: mesh.positions.map((x) => x / R) });
    const radius = Array.from(rim.subarray(1), (v) => Math.hypot(found.uv[2 * v]! - found.uv[0]!, found.uv[2 * v + 1]! - found.uv[1]!));
    const truth = flatOfCap({ law, radial: "first", R, pull: 1, alpha, ...(polar && { core: { to: alpha / 3, law: alike } }) });
    return { found, truth, off: Math.max(...radius.map((r) => Math.abs(r - truth.radius))) };
  }

  // Independent one-dimensional solution: test/support/cap-bvp.ts.
  it.each([["alike in all ways", alike, false], ["of rubber", neoHookean(10), false], ["stiff along the radius, soft round", leather, true]] as const)("comes within 0.01 mm of the one-dimensional solution at 11,000 triangles: %s", (_, law, polar) => {
    const { off, found } = cap(42, law, polar);
    expect(found.settled).toBe(true);
    expect(found.exact).toBe(true);
    expect(off).toBeLessThan(0.01);
  });

  it("comes nearer with the square of the edge length, or nearly", () => {
    const [coarse, middle, fine] = [cap(12, leather, true).off, cap(24, leather, true).off, cap(48, leather, true).off];
    expect(coarse / middle).toBeGreaterThan(3);
    expect(middle / fine).toBeGreaterThan(3);
  });

  // Checks table ME-04: 2T/R on a sphere.
  it("presses as the tension there says, within 2 percent", () => {
    const { found, truth } = cap(30, alike, false), { t1, t2, pressure } = truth.at(1e-3);
    expect(pressure).toBeCloseTo((t1 + t2) / R, 12);
    expect(Math.abs(found.pressure[0]! / pressure - 1)).toBeLessThan(0.02);
  });
});

describe("inverse seen otherwise", () => {
  const bowl = (sign: 1 | -1): Mesh => gridMesh((s, t) => [50 * s, sign * (40 * t + 4 * s * s), 9 * Math.sin(2 * s + 1) + 6 * t * t], 10, 8);
  const rows = gridRows(10, 8), pulls = [pulled(rows.bottom, 0.4), pulled(rows.right, 0.9), pulled(rows.left, 0.7)];
  const input = { frame: { from: 40, origin: 49 }, pulls, law: leather } as const;

  it("is the mirror image for the mirror image, its law mirrored with it", () => {
    const right = bowl(1), left = bowl(-1), turned: Mesh = { positions: left.positions, triangles: left.triangles.map((_, k, t) => t[k - (k % 3) + [0, 2, 1][k % 3]!]!) };
    const a = solve(right, { ...input, start: flatten(right).uv }), b = solve(turned, { ...input, mirrored: true, start: flatten(turned).uv });
    for (let i = 0; i < a.uv.length; i++) expect(b.uv[i]).toBeCloseTo(i % 2 === 0 ? a.uv[i]! : -a.uv[i]!, 9);
    expect(a.steps.map(({ moveMm }) => moveMm)).toEqual(b.steps.map(({ moveMm }) => moveMm));
  });

  it("is the same wherever the last stands", () => {
    const mesh = bowl(1), start = flatten(mesh).uv;
    const p = mesh.positions, there = Float64Array.from(p, (_, i) => [0.36 * p[i]! + 0.48 * p[i + 1]! - 0.8 * p[i + 2]! + 7, -0.8 * p[i - 1]! + 0.6 * p[i]! - 20, 0.48 * p[i - 2]! + 0.64 * p[i - 1]! + 0.6 * p[i]! + 3][i % 3]!);
    const a = solve(mesh, { ...input, start, toleranceMm: 1e-10 }), b = solve({ ...mesh, positions: there }, { ...input, start, toleranceMm: 1e-10 });
    for (let i = 0; i < a.uv.length; i++) expect(b.uv[i]).toBeCloseTo(a.uv[i]!, 8);
  });
});

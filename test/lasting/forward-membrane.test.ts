import { describe, expect, test } from "vitest";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { rotated } from "#leather/combined.ts";
import { neoHookean } from "#leather/neo-hookean.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { flatGrid, largest } from "../support/sheets-on-forms.ts";
import { gridMesh } from "../support/formula-surfaces.ts";

const numbers = { along: 60, across: 30, bias: 28, poisson: 0.4, toe: 0.03, early: 0.25 };

/** A flat place carried by x ↦ F x into a plane that is turned in space. */
const carried = (flat: Float64Array, [a, b, c, d]: readonly number[]): Float64Array =>
  Float64Array.from({ length: (flat.length / 2) * 3 }, (_, k) => {
    const v = Math.floor(k / 3), x = a! * flat[2 * v]! + b! * flat[2 * v + 1]!, y = c! * flat[2 * v]! + d! * flat[2 * v + 1]!;
    return [0.6 * x + 5, 0.8 * x, y][k % 3]!;
  });

// MacNeal and Harder 1985, A proposed standard set of problems to test finite element accuracy (ME-13): plate 0.24 × 0.12 with inner
// nodes (.04 .02) (.18 .03) (.16 .08) (.08 .08); here in mm · 1000. Closed form: a homogeneous stretch is at rest inside, whatever the law.
describe("patch test on MacNeal and Harder's plate", () => {
  const flat = Float64Array.from([0, 0, 240, 0, 240, 120, 0, 120, 40, 20, 180, 30, 160, 80, 80, 80]);
  const triangles = Uint32Array.from([0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7, 4, 5, 6, 4, 6, 7]);
  const held = Uint32Array.of(0, 1, 2, 3);
  const law = rotated(new ToeLaw(numbers), 0.8, 0.6);

  test.each([[[1.05, 0, 0, 1.02]], [[1.08, 0.03, 0.01, 1.04]], [[1.02, 0.05, 0.05, 1.06]]])("inner nodes come back to F x = %j", (f) => {
    const exact = carried(flat, f), start = exact.map((v, i) => (i < 12 ? v : v + 3 * Math.sin(7 * i)));
    const sheet = new LeatherSheet({ sheet: { triangles, flat, held }, law, bend: 0 }, start);
    const rest = sheet.settle({ toleranceMm: 1e-6, residualN: 1e-11 });
    expect(rest.settled).toBe(true);
    expect(largest(sheet.positions().map((v, i) => v - exact[i]!))).toBeLessThan(1e-9);
    // Every triangle bears what the law says of E = (FᵀF − 1)/2.
    const [a, b, c, d] = f, out = new Float64Array(9);
    law.into(out, 0.5 * (a! * a! + c! * c! - 1), 0.5 * (b! * b! + d! * d! - 1), a! * b! + c! * d!);
    const { tension } = sheet.strains();
    for (let k = 0; k < tension.length; k++) expect(Math.abs(tension[k]! - out[k % 3]!)).toBeLessThan(1e-10 * Math.max(1, Math.abs(out[k % 3]!)));
  });

  test("axes of each triangle that say the same turn give the same", () => {
    const exact = carried(flat, [1.05, 0.02, 0, 1.03]);
    const axes = Float64Array.from({ length: (2 * triangles.length) / 3 }, (_, k) => (k % 2 === 0 ? 0.8 : 0.6));
    const one = new LeatherSheet({ sheet: { triangles, flat, held }, law, bend: 0 }, exact).strains();
    const each = new LeatherSheet({ sheet: { triangles, flat, held }, law: new ToeLaw(numbers), axes, bend: 0 }, exact).strains();
    expect(largest(one.pull.map((v, t) => v - each.pull[t]!))).toBeLessThan(1e-12);
  });
});

// A strip 20 mm wide, drawn evenly at both ends, which are free to get narrower. Closed form: along alone bears, so that
// W′ = k (early + (1 − early)(1 − toe/√(e² + toe²))) e, force per width λ W′; across e₂ = −ν e.
test.each([5, 12, 30])("a strip of leather drawn with %d N", (force) => {
  const grid = { columns: 10, rows: 4 };
  const flat = flatGrid((s, t) => [100 * s, 20 * t], grid);
  const { triangles } = gridMesh((s, t) => [s, t, 0], grid.columns, grid.rows);
  const start = carried(flat, [1, 0, 0, 1]);
  const row = (c: number) => [0, 1, 2, 3, 4].map((r) => r * 11 + c);
  const sheet = new LeatherSheet({ sheet: { triangles, flat, held: Uint32Array.of(27) }, law: new ToeLaw(numbers), bend: 0 }, start);
  for (const [column, way] of [[0, -1], [10, 1]] as const) row(column).forEach((v, r) => sheet.load.set([0.6, 0.8, 0].map((d) => (way * d * force * (r % 4 === 0 ? 1 : 2)) / 8), 3 * v));
  expect(sheet.settle({ toleranceMm: 1e-7, residualN: 1e-9 }).settled).toBe(true);
  const { along, across } = sheet.strains();
  const stretch = along[0]!, e = 0.5 * (stretch * stretch - 1);
  const secant = numbers.along * (numbers.early + (1 - numbers.early) * (1 - numbers.toe / Math.sqrt(e * e + numbers.toe ** 2)));
  expect(stretch * secant * e).toBeCloseTo(force / 20, 8);
  expect(largest(along.map((v) => v - stretch))).toBeLessThan(1e-8);
  expect(largest(across.map((v) => v - Math.sqrt(1 - 2 * numbers.poisson * e)))).toBeLessThan(1e-8);
});

// Neo-Hookean, incompressible, plane stress, μ = 1 per thickness (ME-05, ME-06, ME-07; Treloar, The Physics of Rubber Elasticity; from
// memory): nominal λ − λ⁻², λ − λ⁻⁵, λ − λ⁻³; true = nominal · λ over the thickness in space.
describe("neo-Hookean rows by the element", () => {
  const square = { triangles: Uint32Array.of(0, 1, 2, 0, 2, 3), flat: Float64Array.of(0, 0, 1, 0, 1, 1, 0, 1) };
  const state = (a: number, b: number) => new LeatherSheet({ sheet: square, law: neoHookean(1), bend: 0 }, carried(square.flat, [a, 0, 0, b])).strains();

  test.each([[1.2, 0.5055556], [1.1, 0.2735537]])("uniaxial λ = %d: nominal %d", (stretch, nominal) => {
    const across = 1 / Math.sqrt(stretch), { pull, pullAcross } = state(stretch, across);
    expect(pull[0]! * across).toBeCloseTo(nominal, 6);
    expect(pullAcross[0]!).toBeCloseTo(0, 10);
  });
  test("equibiaxial λ = 1.1: nominal 0.4790787", () => expect(state(1.1, 1.1).pull[0]! * 1.1).toBeCloseTo(0.4790787, 6));
  test("pure shear λ = 1.2: nominal 0.6212963", () => expect(state(1.2, 1).pull[0]!).toBeCloseTo(0.6212963, 6));
});

// A thread alone: N/2 (λ − 1)² per length, so force N (λ − 1).
test("a tape in an edge bears its share", () => {
  const flat = Float64Array.of(0, 0, 50, 0, 25, 40), triangles = Uint32Array.of(0, 1, 2);
  const sheet = new LeatherSheet({ sheet: { triangles, flat, held: Uint32Array.of(0, 2) }, law: new ToeLaw({ ...numbers, along: 1e-9, across: 1e-9, bias: 1e-9 }), bend: 0, bars: { pairs: Uint32Array.of(0, 1), stiffness: 600 } }, Float64Array.of(0, 0, 0, 50, 0, 0, 25, 40, 0));
  sheet.load.set([6, 0, 0], 3);
  expect(sheet.settle({ toleranceMm: 1e-6, residualN: 1e-7 }).settled).toBe(true);
  expect(sheet.positions()[3]!).toBeCloseTo(50.5, 4);
  expect(sheet.barForces()[0]!).toBeCloseTo(6, 5);
});

test("a sheet pulled beyond what it bears says where it tears", () => {
  const flat = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10), triangles = Uint32Array.of(0, 1, 2, 0, 2, 3);
  const sheet = new LeatherSheet({ sheet: { triangles, flat, held: Uint32Array.of(0, 3) }, law: new ToeLaw(numbers), bend: 0, breakStretch: 1.4 }, carried(flat, [1, 0, 0, 1]));
  for (const v of [1, 2]) sheet.load.set([300, 400, 0], 3 * v);
  const end = sheet.settle();
  expect(end.settled).toBe(false);
  expect(end.why?.what).toBe("torn");
  expect(sheet.positions().every((v) => Number.isFinite(v))).toBe(true);
});

test("a sheet that nothing holds says that it is being drawn away, and how far it is", () => {
  const flat = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10), triangles = Uint32Array.of(0, 1, 2, 0, 2, 3);
  const sheet = new LeatherSheet({ sheet: { triangles, flat }, law: new ToeLaw(numbers), bend: 0 }, carried(flat, [1, 0, 0, 1]));
  sheet.load.set([3, 4, 0], 6);
  const { settled, why, steps } = sheet.settle({ farthestMm: 30 });
  expect(settled).toBe(false);
  expect(why?.what).toBe("away");
  if (why?.what !== "away") return;
  // A step goes 4 mm at most.
  expect(why.byMm).toBeGreaterThan(30);
  expect(why.byMm).toBeLessThan(34 + 1e-9);
  expect(steps).toBeLessThan(20);
});

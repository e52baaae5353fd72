import { describe, expect, test } from "vitest";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { linearLaw } from "#leather/toe-law.ts";
import { ChebyshevNet } from "../support/chebyshev-net.ts";
import { gridMesh } from "../support/formula-surfaces.ts";
import { flatGrid } from "../support/sheets-on-forms.ts";
import { sphereForm } from "../support/sphere-form.ts";

const radius = 50;
/** Half the cloth's side over the radius: its corners come down to 81 degrees from the pole. */
const half = 0.9;
const net = new ChebyshevNet();
const [stiff, slip] = [20000, 0.02];
/** Threads both ways that hardly stretch, and hardly anything that keeps them square: 1/G = 4/k₄₅ − 2/k. */
const law = linearLaw({ along: stiff, across: stiff, bias: 4 / (1 / slip + 2 / stiff), poisson: 0 });

/** A square cloth of `cells` × `cells` × 2 triangles laid on a ball, its middle threads on great circles. @returns largest errors: places on the middle threads and the diagonal in mm, stretch along them; largest and mean error of the cosine of the angle between them */
function laidOn(cells: number) {
  const grid = { columns: cells, rows: cells };
  const place = (s: number, t: number) => [radius * half * (2 * s - 1), radius * half * (2 * t - 1)] as const;
  const flat = flatGrid(place, grid);
  // From a place that is wrong by up to 6 mm.
  const { triangles, positions } = gridMesh((s, t) => {
    const [x, y] = place(s, t), r = Math.sqrt(x * x + y * y), polar = (0.9 * r) / radius;
    return r === 0 ? [0, 0, radius] : [(radius * Math.sin(polar) * x) / r, (radius * Math.sin(polar) * y) / r, radius * Math.cos(polar)];
  }, cells, cells);
  const id = (row: number, column: number): number => row * (cells + 1) + column;
  const middle = Array.from({ length: cells + 1 }, (_, k) => k);
  const guided = {
    vertices: Uint32Array.from([...middle.map((k) => id(cells / 2, k)), ...middle.map((k) => id(k, cells / 2))]),
    across: Float64Array.from([...middle.flatMap(() => [0, 1, 0]), ...middle.flatMap(() => [1, 0, 0])]),
  };
  const sheet = new LeatherSheet({ sheet: { triangles, flat, guided }, law, bend: 0, form: sphereForm(radius), formStiffness: 500, press: 0.05, guideStiffness: 5000 }, positions);
  expect(sheet.settle({ toleranceMm: 1e-6, residualN: 1e-6 }).settled).toBe(true);
  const x = sheet.positions(), { shear, along, across } = sheet.strains();
  const fromPole = (v: number): number => radius * Math.atan2(Math.sqrt(x[3 * v]! ** 2 + x[3 * v + 1]! ** 2), x[3 * v + 2]!);
  let places = 0, worst = 0, mean = 0;
  for (let k = cells / 2; k <= cells; k++) {
    const s = flat[2 * id(k, k)]! / radius;
    places = Math.max(places, Math.abs(fromPole(id(cells / 2, k)) - radius * s), Math.abs(fromPole(id(k, k)) - radius * net.diagonal(s)));
  }
  // Both triangles of a cell together stand for its middle.
  for (let cell = 0; cell < cells * cells; cell++) {
    const [u, v] = place(((cell % cells) + 0.5) / cells, (Math.floor(cell / cells) + 0.5) / cells);
    const off = Math.abs((shear[2 * cell]! + shear[2 * cell + 1]!) / 2 - Math.cos(net.angle(u / radius, v / radius)));
    [worst, mean] = [Math.max(worst, off), mean + off / (cells * cells)];
  }
  const stretch = [...along, ...across].reduce((most, l) => Math.max(most, Math.abs(l - 1)), 0);
  return { places, worst, mean, stretch };
}

// The limit of leather that does not stretch: a woven cloth that is sheared on to a ball (source: see ChebyshevNet).
describe("a cloth of threads that do not stretch on a ball", () => {
  const [coarse, fine, finer] = [laidOn(8), laidOn(16), laidOn(32)];

  test("the truth: the series has ended, its differential equation holds, and threads are sheared by 45 degrees at the corner", () => {
    expect(net.lastTerm(half * half)).toBeLessThan(1e-16);
    const f = (z: number) => net.angle(1, z), h = 1e-3;
    for (const z of [0.1, 0.5, 0.8]) expect((f(z + h) - f(z - h)) / (2 * h) + (z * (f(z + h) - 2 * f(z) + f(z - h))) / (h * h)).toBeCloseTo(-Math.sin(f(z)), 6);
    expect(Math.PI / 2 - f(half * half)).toBeCloseTo(0.78176, 4);
  });
  test("lies where the net has it, with 2,048 triangles", () => {
    expect(finer.places).toBeLessThan(0.02);
    expect(finer.worst).toBeLessThan(1e-3);
    expect(finer.mean).toBeLessThan(1e-4);
    expect(finer.stretch).toBeLessThan(2e-5);
  });
  test("with edges half as long it comes four times as near", () => {
    expect(coarse.places / fine.places).toBeGreaterThan(4);
    expect(fine.places / finer.places).toBeGreaterThan(4);
    expect(coarse.mean / fine.mean).toBeGreaterThan(4);
    expect(fine.mean / finer.mean).toBeGreaterThan(3.9);
  });
});

import { describe, expect, test } from "vitest";
import type { Mesh } from "#mesh/mesh.ts";
import { diskOf } from "#flatten/disk.ts";
import { Flattener, flatten } from "#flatten/flatten.ts";
import { NewtonSystem } from "#flatten/newton-system.ts";
import { RimBarrier } from "#flatten/rim-barrier.ts";
import { rimCrosses } from "#flatten/rim-contacts.ts";
import { denseOf } from "../support/dense.ts";
import { gridMesh, pumpCounts, pumpShell } from "../support/formula-surfaces.ts";

/** A strip that climbs like a spiral ramp of so many turns between two radii: nearly developable, so that it unrolls over itself. */
function ramp(turns: number, inner: number, outer: number, columns: number, rows: number): Mesh {
  const climb = 15;
  return gridMesh((s, t) => {
    const [angle, radius] = [-2 * Math.PI * turns * s, inner + (outer - inner) * t];
    return [radius * Math.cos(angle), radius * Math.sin(angle), climb * turns * s];
  }, columns, rows);
}

/** Largest number of triangles that hold one point, asked at the middle of every triangle: 1 for a map that is one-to-one there. */
function mostLayers(uv: Float64Array, triangles: Uint32Array): number {
  const side = (i: number, j: number, x: number, y: number) => (uv[2 * j]! - uv[2 * i]!) * (y - uv[2 * i + 1]!) - (uv[2 * j + 1]! - uv[2 * i + 1]!) * (x - uv[2 * i]!);
  let most = 0;
  for (let k = 0; k < triangles.length; k += 3) {
    const [x, y] = [0, 1].map((d) => (uv[2 * triangles[k]! + d]! + uv[2 * triangles[k + 1]! + d]! + uv[2 * triangles[k + 2]! + d]!) / 3) as [number, number];
    let layers = 0;
    for (let q = 0; q < triangles.length; q += 3) {
      const [a, b, c] = [triangles[q]!, triangles[q + 1]!, triangles[q + 2]!];
      if (side(a, b, x, y) >= 0 && side(b, c, x, y) >= 0 && side(c, a, x, y) >= 0) layers++;
    }
    most = Math.max(most, layers);
  }
  return most;
}

describe("pieces that would lie over themselves", () => {
  test.each([
    ["a horseshoe of 1.1 turns", 1.1, 40, 70, 60, 6],
    ["a spiral of 1.8 turns", 1.8, 40, 70, 90, 6],
    ["a spiral of 2.6 turns", 2.6, 40, 60, 130, 4],
  ] as const)("%s comes to lie in one layer", (_, turns, inner, outer, columns, rows) => {
    const mesh = ramp(turns, inner, outer, columns, rows);
    const { uv, keptApart, flipped, steps, stretchMax } = flatten(mesh);
    expect(keptApart).toBe(true);
    expect(flipped).toBe(0);
    expect(mostLayers(uv, mesh.triangles)).toBe(1);
    expect(rimCrosses(diskOf(uv.length / 2, mesh.triangles).rim, uv)).toBe(false);
    expect(steps.at(-1)!.moveMm).toBeLessThan(0.01);
    expect(Math.max(...stretchMax)).toBeLessThan(1.2); // a spiral can open by bending in the plane, it need not be squeezed into a ring
  });

  test("without being kept apart that horseshoe has two layers: its sector is longer than a full turn", () => {
    const mesh = ramp(1.1, 40, 70, 60, 6);
    const over = new Float64Array((2 * mesh.positions.length) / 3);
    for (let i = 0; i < over.length / 2; i++) over.set([mesh.positions[3 * i]!, mesh.positions[3 * i + 1]!], 2 * i);
    expect(mostLayers(over, mesh.triangles)).toBe(2);
    expect(rimCrosses(diskOf(over.length / 2, mesh.triangles).rim, over)).toBe(true);
  });

  test.each([["0.9 turns", ramp(0.9, 40, 70, 60, 6)], ["a pump's shell", pumpShell(2000)]])("%s needs nothing and is told so", (_, mesh) => {
    expect(flatten(mesh).keptApart).toBe(false);
  });

  test("finer meshes come to one energy, the error falling with the square of the edge", () => {
    const [coarse, middle, fine] = [1, 2, 4].map((k) => flatten(ramp(1.15, 40, 70, 40 * k, 6 * k)).energy) as [number, number, number];
    expect(coarse).toBeGreaterThan(middle);
    expect(Math.abs(fine - middle)).toBeLessThan(0.3 * (coarse - middle));
    expect(Math.abs(fine - middle)).toBeLessThan(0.05 * (fine - 4));
  });

  test("left and right come out as mirror images to the last bit", () => {
    const mesh = ramp(1.3, 40, 70, 60, 6);
    const image = { positions: mesh.positions.map((x, i) => (i % 3 === 1 ? 0 - x : x)), triangles: mesh.triangles.slice() };
    for (let k = 0; k < image.triangles.length; k += 3) image.triangles.set([mesh.triangles[k]!, mesh.triangles[k + 2]!, mesh.triangles[k + 1]!], k);
    expect(flatten(image).uv).toEqual(flatten(mesh).uv.map((x, i) => (i % 2 === 1 ? 0 - x : x)));
  });

  test("a tie that pulls the heel ends through each other is held up where they touch", () => {
    const mesh = pumpShell(2000);
    const tie = (weight: number) => flatten(mesh, { ties: [{ a: 0, b: pumpCounts(2000)[0]!, targetMm: 0, weight }] });
    const [weak, strong] = [tie(0.01), tie(1)];
    expect(weak.keptApart).toBe(false);
    expect(strong.keptApart).toBe(true);
    expect(mostLayers(strong.uv, mesh.triangles)).toBe(1);
    expect(strong.flipped).toBe(0);
  });

  test("a piece that may lap is left lying over itself", () => {
    const mesh = ramp(1.1, 40, 70, 60, 6);
    const { uv, keptApart, energy } = flatten(mesh, { mayLap: true });
    expect(keptApart).toBe(false);
    expect(mostLayers(uv, mesh.triangles)).toBe(2);
    expect(energy).toBeLessThan(flatten(mesh).energy);
  });

  test("started from the result it stays there", () => {
    const mesh = ramp(1.3, 40, 70, 60, 6);
    const kept = new Flattener(mesh.positions.length / 3, mesh.triangles);
    const first = kept.run(mesh.positions);
    const again = kept.run(mesh.positions, { start: first.uv });
    expect(again.keptApart).toBe(true);
    expect(again.steps.length).toBeLessThan(first.steps.length);
    expect(Math.abs(again.energy - first.energy)).toBeLessThan(1e-6);
  });
});

test("the push between parts of the rim by differences of its energy", () => {
  // A strip 60 mm long, bent to a ring in the plane whose ends nearly meet.
  const surface = gridMesh((s, t) => [60 * s, 20 * t, 0], 12, 4);
  const { rim, pattern } = diskOf(surface.positions.length / 3, surface.triangles);
  const held: number[] = [];
  const barrier = new RimBarrier(rim, surface.positions, 1e6, new NewtonSystem(pattern), held);
  const uv = new Float64Array(2 * (surface.positions.length / 3));
  for (let i = 0; i < uv.length / 2; i++) {
    const [s, t] = [surface.positions[3 * i]! / 60, surface.positions[3 * i + 1]!];
    const angle = (2 * Math.PI - 0.02) * s;
    uv.set([(30 - t + 0.3 * s) * Math.cos(angle), (30 - t) * Math.sin(angle)], 2 * i);
  }
  expect(barrier.energy(uv)).toBeGreaterThan(0);
  expect(barrier.energy(uv)).toBeLessThan(1);
  const system = barrier.systemAt(uv);
  const gradient = new Float64Array(uv.length);
  const values = new Float64Array(system.pattern.valueCount);
  barrier.addDerivativesInto(gradient, values, system.pattern, uv);
  const size = Math.max(...gradient.map(Math.abs));
  expect(size).toBeGreaterThan(0);
  for (let i = 0; i < uv.length; i++) {
    const [more, less] = [uv.slice(), uv.slice()];
    more[i]! += 1e-6;
    less[i]! -= 1e-6;
    expect(Math.abs((barrier.energy(more) - barrier.energy(less)) / 2e-6 - gradient[i]!)).toBeLessThan(1e-6 * size);
  }
  // Its Hessian is a sum of squares.
  const dense = denseOf(system.pattern, values);
  for (let trial = 0; trial < 20; trial++) {
    const x = Float64Array.from(uv, (_, i) => Math.sin(7 * i + trial));
    expect(dense.reduce((sum, row, i) => sum + x[i]! * row.reduce((s, v, j) => s + v * x[j]!, 0), 0)).toBeGreaterThanOrEqual(0);
  }
});

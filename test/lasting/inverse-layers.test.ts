import { expect, test } from "vitest";
import { flatten } from "#flatten/flatten.ts";
import { InverseSheet } from "#lasting/inverse/inverse-sheet.ts";
import { sumOf } from "#leather/combined.ts";
import type { Law } from "#leather/law.ts";
import { ToeLaw, thicker } from "#leather/toe-law.ts";
import { largest } from "../support/sheets-on-forms.ts";
import { capMesh } from "../support/formula-surfaces.ts";

const rings = 8;
const numbers = { along: 40, across: 20, bias: 18, poisson: 0.4, toe: 0.02, early: 0.25 };
const { positions, triangles } = capMesh(60, 20, rings);
const rim = Array.from({ length: 6 * rings }, (_, k) => 1 + 3 * rings * (rings - 1) + k);
const ring = Uint32Array.from([...rim, rim[0]!]);
const start = flatten({ positions, triangles }).uv;

function flatOf(law: Law): Float64Array {
  const pulls = [{ vertices: ring, perMm: new Float64Array(ring.length).fill(1) }];
  return new InverseSheet(positions.length / 3, triangles).run({ positions, start, law, frame: { from: 0, origin: rim[0]! }, pulls, toleranceMm: 1e-8 }).uv;
}

test("every layer of a sheet bears: two like layers are one of twice the thickness", () => {
  const one = flatOf(new ToeLaw(numbers)), two = flatOf(sumOf([new ToeLaw(numbers), new ToeLaw(numbers)])), thick = flatOf(new ToeLaw(thicker(numbers, 2)));
  expect(largest(two.map((x, i) => x - thick[i]!))).toBeLessThan(1e-6);
  expect(largest(two.map((x, i) => x - one[i]!))).toBeGreaterThan(0.1);
});

test("layers askew to both sides bear alike: the flat is the same on either side of their middle", () => {
  const turn = (degrees: number): Law => new ToeLaw(numbers).turned(Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180));
  const uv = flatOf(sumOf([turn(30), turn(-30)]));
  // The rim's vertex k lies across the middle from vertex 6 rings − k.
  const off = rim.slice(1).map((v, k) => {
    const other = rim[rim.length - 1 - k]!;
    return Math.max(Math.abs(uv[2 * v]! - uv[2 * other]!), Math.abs(uv[2 * v + 1]! + uv[2 * other + 1]!));
  });
  expect(largest(off)).toBeLessThan(1e-6);
});

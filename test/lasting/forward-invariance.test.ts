import { describe, expect, test } from "vitest";
import { Cancelled } from "#base/watch.ts";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { gathering } from "#leather/gathering.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Ground } from "#wrap/ground.ts";
import { capMesh } from "../support/formula-surfaces.ts";
import { largest } from "../support/sheets-on-forms.ts";

const law = gathering(new ToeLaw({ along: 60, across: 30, bias: 28, poisson: 0.4, toe: 0.03, early: 0.25 }), -0.04);
const disk = capMesh(50, 45, 9), dome = capMesh(50, 80, 40);
/** Flat with the arcs' lengths, so that its rim must gather. */
const flat = Float64Array.from({ length: (disk.positions.length / 3) * 2 }, (_, k) => {
  const v = Math.floor(k / 2), x = disk.positions[3 * v]!, y = disk.positions[3 * v + 1]!, r = Math.sqrt(x * x + y * y);
  return r === 0 ? 0 : ((k % 2 === 0 ? x : y) / r) * 50 * Math.atan2(r, disk.positions[3 * v + 2]!);
});
const rim = Array.from({ length: 54 }, (_, k) => disk.positions.length / 3 - 54 + k);

/** Laid on, then drawn down to one side against friction, and tacked there. */
function drawn({ positions, triangles }: Mesh, uv: Float64Array, ground: Mesh, turn: (v: readonly [number, number, number]) => readonly number[]): Float64Array {
  const sheet = new LeatherSheet({ sheet: { triangles, flat: uv }, law, bend: 2, form: new Ground(ground), press: 0.01 }, positions);
  expect(sheet.settle({ toleranceMm: 1e-7, residualN: 1e-7 }).settled).toBe(true);
  sheet.friction = 0.3;
  sheet.begin();
  rim.forEach((v, k) => k < 8 && sheet.load.set(turn([0.3, 0.1, -0.8]), 3 * v));
  expect(sheet.settle({ toleranceMm: 1e-7, residualN: 1e-7 }).settled).toBe(true);
  return sheet.positions();
}

// Coulomb's law leaves the place of a point that sticks open within its slip; which points stick while the sheet comes to rest may hang on
// the last digit. So: a tenth of the usual tolerance.
describe("a disk drawn to one side of a dome", () => {
  const here = drawn(disk, flat, dome, (v) => v);

  test("mirrored it lies mirrored", () => {
    const mirrored = ({ positions, triangles }: Mesh): Mesh => ({
      positions: positions.map((v, i) => (i % 3 === 1 ? 0 - v : v)),
      triangles: triangles.map((_, k) => triangles[k - (k % 3) + ((3 - (k % 3)) % 3)]!),
    });
    const image = drawn(mirrored(disk), flat.map((v, i) => (i % 2 === 1 ? 0 - v : v)), mirrored(dome), ([x, y, z]) => [x, 0 - y, z]);
    expect(largest(image.map((v, i) => v - (i % 3 === 1 ? -1 : 1) * here[i]!))).toBeLessThan(1e-3);
  });

  test("moved and turned as a whole it lies the same", () => {
    const turn = ([x, y, z]: readonly [number, number, number]) => [0.6 * x - 0.8 * y, 0.48 * x + 0.36 * y - 0.8 * z, 0.64 * x + 0.48 * y + 0.6 * z] as const;
    const moved = (p: Float64Array): Float64Array => p.map((_, i) => turn([p[i - (i % 3)]!, p[i - (i % 3) + 1]!, p[i - (i % 3) + 2]!])[i % 3]! + [300, -20, 7][i % 3]!);
    const there = drawn({ positions: moved(disk.positions), triangles: disk.triangles }, flat, { positions: moved(dome.positions), triangles: dome.triangles }, turn);
    expect(largest(there.map((v, i) => v - moved(here)[i]!))).toBeLessThan(1e-3);
  });

  test("the same input gives the same bytes", () => expect(drawn(disk, flat, dome, (v) => v)).toEqual(here));

  test("it tells each step and stops when it is told to", () => {
    const sheet = new LeatherSheet({ sheet: { triangles: disk.triangles, flat }, law, bend: 2, form: new Ground(dome), press: 0.01 }, disk.positions);
    let told = 0;
    expect(() =>
      sheet.settle({
        watch: () => {
          if (++told === 2) throw new Cancelled();
        },
      }),
    ).toThrow(Cancelled);
    expect(sheet.positions().every((v) => Number.isFinite(v))).toBe(true);
  });
});

import { expect, test } from "vitest";
import { diskOf } from "#flatten/disk.ts";
import { middlePins } from "#flatten/pins.ts";
import { adjacencyOf } from "#solve/adjacency.ts";
import { gridMesh, pumpShell } from "../support/formula-surfaces.ts";

const pinsOf = ({ positions, triangles }: { positions: Float64Array; triangles: Uint32Array }) => {
  const { vertices, pattern, rim } = diskOf(positions.length / 3, triangles);
  return middlePins(adjacencyOf(vertices, pattern.low, pattern.high), rim);
};

test("on a long strip the pins lie on its two long sides, half-way along", () => {
  const strip = gridMesh((s, t) => [100 * s, 10 * t, 0], 40, 4);
  const [a, b] = pinsOf(strip);
  const rowOf = (i: number) => Math.floor(i / 41);
  expect(new Set([rowOf(a), rowOf(b)])).toEqual(new Set([0, 4]));
  for (const i of [a, b]) expect(Math.abs((i % 41) - 20)).toBeLessThanOrEqual(3);
});

test("on a pump shell they are toe and throat", () => {
  const shell = pumpShell(4000);
  for (const i of pinsOf(shell)) {
    const [x, y] = [shell.positions[3 * i]!, shell.positions[3 * i + 1]!];
    expect(Math.abs(y)).toBeLessThan(25);
    expect(x).toBeGreaterThan(160); // toe at 250, throat at 172, heel at 0
  }
});

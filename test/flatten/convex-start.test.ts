import { describe, expect, test } from "vitest";
import { convexMap } from "#flatten/convex-start.ts";
import { flatten } from "#flatten/flatten.ts";
import { middlePins } from "#flatten/pins.ts";
import { principalStretches } from "#flatten/principal.ts";
import { adjacencyOf } from "#solve/adjacency.ts";
import { conformalOf, kernelOf } from "../support/flat-kernel.ts";
import { gridMesh } from "../support/formula-surfaces.ts";

const eggBox = gridMesh((s, t) => [100 * s, 100 * t, 20 * Math.sin(31 * s + 7 * t) * Math.cos(29 * t - 5 * s)], 40, 40);
const horn = gridMesh((s, t) => {
  const [x, y] = [s - 0.5, t - 0.5];
  return [100 * x, 100 * y, 100 * Math.exp(-30 * (x * x + y * y)) * (1 + 0.5 * Math.sin(20 * x) * Math.cos(17 * y))];
}, 40, 40);

describe.each([["an egg box", eggBox], ["a crooked horn", horn]])("%s, on which the conformal start folds", (_, mesh) => {
  const { disk, frames } = kernelOf(mesh);
  const foldsIn = (uv: Float64Array) => principalStretches(frames, disk.triangles, uv).flipped;

  test("folds there, so that another start is needed", () => {
    const [a, b] = middlePins(adjacencyOf(disk.vertices, disk.pattern.low, disk.pattern.high), disk.rim);
    expect(foldsIn(conformalOf(mesh, a, b, 100))).toBeGreaterThan(0);
  });

  test.each([["cotangents", false], ["plain weights", true]] as const)("the convex map with %s has no fold, and its rim goes once round a circle", (_weights, plain) => {
    const uv = convexMap(disk, frames, mesh.positions, plain);
    expect(foldsIn(uv)).toBe(0);
    // Tutte's condition on the rim: strictly convex, once round.
    const radius = Math.sqrt(frames.area / Math.PI);
    let turned = 0;
    disk.rim.forEach((i, k) => {
      const j = disk.rim[(k + 1) % disk.rim.length]!;
      expect(Math.hypot(uv[2 * i]!, uv[2 * i + 1]!)).toBeCloseTo(radius, 9);
      const turn = Math.atan2(uv[2 * i]! * uv[2 * j + 1]! - uv[2 * i + 1]! * uv[2 * j]!, uv[2 * i]! * uv[2 * j]! + uv[2 * i + 1]! * uv[2 * j + 1]!);
      expect(turn).toBeGreaterThan(0);
      turned += turn;
    });
    expect(turned).toBeCloseTo(2 * Math.PI, 9);
  });

  test("lies flat from it without a fold, and comes to rest", () => {
    const { flipped, steps, energy } = flatten(mesh);
    expect(flipped).toBe(0);
    expect(steps.at(-1)!.moveMm).toBeLessThan(0.01);
    expect(energy).toBeLessThan(8);
  });
});

test("inner vertices of the convex map with plain weights lie in the mean of their neighbours", () => {
  const { disk, frames } = kernelOf(eggBox);
  const uv = convexMap(disk, frames, eggBox.positions, true);
  const rim = new Set(disk.rim);
  const { start, list } = adjacencyOf(disk.vertices, disk.pattern.low, disk.pattern.high);
  for (let i = 0; i < disk.vertices; i++) {
    if (rim.has(i)) continue;
    const around = [...list.subarray(start[i]!, start[i + 1]!)];
    for (const d of [0, 1]) expect(uv[2 * i + d]).toBeCloseTo(around.reduce((sum, j) => sum + uv[2 * j + d]!, 0) / around.length, 10);
  }
});

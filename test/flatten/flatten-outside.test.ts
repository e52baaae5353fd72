import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { weld } from "#mesh/weld.ts";
import { diskOf } from "#flatten/disk.ts";
import { flatten } from "#flatten/flatten.ts";
import { rimCrosses } from "#flatten/rim-contacts.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";

// Surfaces that nobody here made; sources and licences beside them in ../shared/data/README.md.
const read = (name: string): Mesh => weld(readScan(name, sharedBytes("surfaces", name)).mesh, 1e-6);

/** Scaled to 100 mm along x, so that the tolerance in millimetres means the same for all. */
function sized({ positions, triangles }: Mesh): Mesh {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 3) [low, high] = [Math.min(low, positions[i]!), Math.max(high, positions[i]!)];
  return { positions: positions.map((x) => (100 * x) / (high - low)), triangles };
}

describe.skipIf(!hasShared)("surfaces from outside", () => {
  test.each([
    ["nefertiti.stl", 9],
    ["nefertiti_half.stl", 9],
    ["nefertiti_fine.stl", 9],
    ["mountain.obj", 20],
    ["cube_no_bottom.obj", 20],
    ["hand_lowres.obj", 200], // a glove with five deep fingers, stretched up to five times: the true Hessian stays indefinite for long
  ])("%s lies flat without a fold and in one layer", (name, most) => {
    const mesh = sized(read(name));
    const { uv, steps, flipped, energy } = flatten(mesh);
    expect(flipped).toBe(0);
    expect(rimCrosses(diskOf(uv.length / 2, mesh.triangles).rim, uv)).toBe(false);
    expect(energy).toBeGreaterThanOrEqual(4);
    expect(energy).toBeLessThan(20);
    expect(steps.length).toBeLessThanOrEqual(most);
    expect(steps.at(-1)!.moveMm).toBeLessThan(0.01);
  });

  test.each([["torus.obj", "surface-closed"], ["plane_holes.obj", "surface-with-holes"]])("%s is refused", (name, code) => {
    const mesh = read(name);
    expect(() => flatten(mesh)).toThrow(Refusal);
    try {
      flatten(mesh);
    } catch (error) {
      expect((error as Refusal).finding.code).toBe(code);
    }
  });
});

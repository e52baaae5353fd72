import { describe, expect, test } from "vitest";
import type { Mesh } from "#mesh/mesh.ts";
import { Flattener, flatten } from "#flatten/flatten.ts";
import { pumpShell } from "../support/formula-surfaces.ts";
import { flatArea, flatDistance } from "../support/flat-kernel.ts";

const shell = pumpShell(2000);
const terms = (mesh: Mesh) => {
  const count = mesh.positions.length / 3;
  return {
    edges: { a: new Uint32Array([count - 2, count - 3]), b: new Uint32Array([count - 1, count - 2]), weight: new Float64Array([0.1, 0.1]) },
    ties: [{ a: 0, b: count - 1, targetMm: 120, weight: 0.2 }],
  };
};

/** The mirror image, its triangles turned round and begun at another corner. */
function mirrored({ positions, triangles }: Mesh, begin: number): Mesh {
  const image = positions.map((x, i) => (i % 3 === 1 ? 0 - x : x));
  const round = triangles.slice();
  for (let k = 0; k < round.length; k += 3) for (let e = 0; e < 3; e++) round[k + e] = triangles[k + ((begin + 3 - e) % 3)]!;
  return { positions: image, triangles: round };
}

describe("left and right", () => {
  test.each([0, 1, 2])("the mirror image lies flat as the mirror image, to the last bit (first corner %d)", (begin) => {
    const image = mirrored(shell, begin);
    const right = flatten(shell, terms(shell));
    const left = flatten(image, terms(image));
    expect(left.uv).toEqual(right.uv.map((x, i) => (i % 2 === 1 ? 0 - x : x)));
    expect(left.stretchMax).toEqual(right.stretchMax);
    expect(left.stretchMin).toEqual(right.stretchMin);
    expect(left.energy).toBe(right.energy);
    expect(flatArea(right.uv, shell.triangles)).toBeGreaterThan(0);
    expect(flatArea(left.uv, image.triangles)).toBeGreaterThan(0);
  });

  test("the same input gives the same bytes, also from a kept Flattener", () => {
    const kept = new Flattener(shell.positions.length / 3, shell.triangles);
    const first = kept.run(shell.positions);
    kept.run(pumpShell(2000, 1.02).positions.slice(0, shell.positions.length), { start: first.uv });
    expect(kept.run(shell.positions)).toEqual(first);
    expect(flatten(shell)).toEqual(first);
  });
});

test("a moved and turned shell lies flat the same", () => {
  const [c, s] = [0.6, 0.8];
  const moved = shell.positions.slice();
  for (let i = 0; i < moved.length; i += 3) {
    const [x, y, z] = [shell.positions[i]!, shell.positions[i + 1]!, shell.positions[i + 2]!];
    moved.set([c * x - s * y + 300, s * (c * x + 0) + c * c * y - s * z - 200, s * s * x + s * c * y + c * z + 50], i);
  }
  const here = flatten(shell, { toleranceMm: 1e-7 });
  const there = flatten({ positions: moved, triangles: shell.triangles }, { toleranceMm: 1e-7 });
  for (const from of [0, 500]) for (let i = 0; i < here.uv.length / 2; i += 7) expect(Math.abs(flatDistance(here.uv, from, i) - flatDistance(there.uv, from, i))).toBeLessThan(1e-6);
});

// A last scanned as a shell: an outer and an inner wall that meet in a lip round an open mouth at the comb. What is measured on its outer
// wall is held against the solid last it was made from. Invented fixtures.
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Measures } from "#last/last.ts";
import { placeRepairs } from "#last/place-repairs.ts";
import { area } from "#mesh/area.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { boundaryLoops, neighbours, nextCorner } from "#mesh/neighbours.ts";
import { vertexNormals } from "#mesh/normals.ts";
import { outerWall } from "#mesh/repair/outer-wall.ts";
import { keepTriangles } from "#mesh/weld.ts";

const solid = lastFromMeasures(demoMeasurements, "made", unwatched);
const top = solid.mesh.positions.reduce((most, v, i) => (i % 3 === 2 ? Math.max(most, v) : most), -Infinity);
/** The made last without its comb. */
const open = keepTriangles(solid.mesh, (t) => [0, 1, 2].some((k) => solid.mesh.positions[3 * solid.mesh.triangles[3 * t + k]! + 2]! < top - 0.01));

/** Outer wall, the same moved inward by `thick` and turned over, and a level lip between their edges. */
function shell(outer: Mesh, thick: number): Mesh {
  const normals = vertexNormals(outer);
  const { positions: p, triangles } = outer;
  const n = p.length / 3;
  const inner = p.map((v, i) => v - thick * normals[i]!);
  const faces = [...triangles];
  for (let t = 0; t < triangles.length; t += 3) faces.push(n + triangles[t]!, n + triangles[t + 2]!, n + triangles[t + 1]!);
  for (const loop of boundaryLoops(neighbours(outer).twin))
    for (const h of loop) {
      const [a, b] = [triangles[h]!, triangles[nextCorner(h)]!];
      faces.push(b, a, n + a, b, n + a, n + b);
      inner[3 * a + 2] = p[3 * a + 2]!;
    }
  return { positions: Float64Array.from([...p, ...inner]), triangles: Uint32Array.from(faces) };
}

describe("a shell with an open mouth", () => {
  test.each([1.5, 3])("%d mm thick: the outer wall is kept, the mouth closed, and it measures as the solid last", (thick) => {
    const scan = shell(open, thick);
    const { mesh, repairs } = cleanScan(scan, unwatched);
    expect(repairs.map((r) => r.code)).toEqual(["outer-wall-kept", "big-hole-closed"]);
    expect(Math.abs(area(mesh) / area(solid.mesh) - 1)).toBeLessThan(0.01);
    const last = lastFromScan(mesh, { name: "shell", scanned: scan, side: "right" }, unwatched);
    const measured = lastFromScan(solid.mesh, { name: "solid", side: "right" }, unwatched);
    const off = (key: keyof Measures): number => Math.abs(last.measures[key] - measured.measures[key]);
    for (const key of ["stickLength", "lastLength", "ballWidth", "seatWidth", "heelHeight", "toeSpring"] as const) expect(off(key), key).toBeLessThan(0.3);
    for (const key of ["jointGirth", "waistGirth", "instepGirth", "heelGirth"] as const) expect(off(key), key).toBeLessThan(0.7);
    expect(explain(placeRepairs(repairs, last)[1]!)).toContain("A hole on the comb or its edge");
  });

  test("turned inside out and in metres it is the same", () => {
    const { positions, triangles } = shell(open, 3);
    const { repairs } = cleanScan({ positions: positions.map((v) => v / 1000), triangles: triangles.slice().reverse() }, unwatched);
    expect(repairs.map((r) => r.code)).toEqual(["mesh-turned", "outer-wall-kept", "big-hole-closed"]);
  });
});

test("a solid last has no inner wall, nor has a plate, which sees out on all sides", () => {
  expect(outerWall(solid.mesh, 300)).toBeUndefined();
  const plate = Float64Array.from([0, 0, 0, 100, 0, 0, 100, 50, 0, 0, 50, 0, 0, 0, 1, 100, 0, 1, 100, 50, 1, 0, 50, 1]);
  const faces = Uint32Array.from([0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7]);
  expect(outerWall({ positions: plate, triangles: faces }, 112)).toBeUndefined();
});

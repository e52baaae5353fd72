// Writes surfaces, their conformal start and our flattening for the outside check of the energy:
// `tsx crosscheck/flatten-export.ts FOLDER` makes FOLDER/flatten.json.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Mesh } from "#mesh/mesh.ts";
import { Dirichlet } from "#flatten/dirichlet.ts";
import { diskOf } from "#flatten/disk.ts";
import { Flattener } from "#flatten/flatten.ts";
import { framesOf } from "#flatten/frames.ts";
import { conformalMap } from "#flatten/lscm.ts";
import { NewtonSystem } from "#flatten/newton-system.ts";
import { middlePins } from "#flatten/pins.ts";
import { adjacencyOf } from "#solve/adjacency.ts";
import { capMesh, pumpShell } from "../test/support/formula-surfaces.ts";

/** The conformal start as the flattening makes it, turned as the mesh is. */
function startOf({ positions, triangles }: Mesh): Float64Array {
  const disk = diskOf(positions.length / 3, triangles);
  const dirichlet = new Dirichlet(disk);
  const frames = framesOf(positions, disk.triangles);
  const [a, b] = middlePins(adjacencyOf(disk.vertices, disk.pattern.low, disk.pattern.high), disk.rim);
  const apart = Math.hypot(...[0, 1, 2].map((i) => positions[3 * a + i]! - positions[3 * b + i]!));
  const uv = conformalMap(new NewtonSystem(disk.pattern), dirichlet, frames, a, b, apart)!;
  dirichlet.scaleToBestInto(frames, uv);
  return disk.turned ? uv.map((x, i) => (i % 2 === 1 ? -x : x)) : uv;
}

/** Median of 5 cold runs, set-up included, ms; the first ones warm the engine up. */
function medianMs(work: () => void): number {
  const times = Array.from({ length: 8 }, () => {
    const before = performance.now();
    work();
    return performance.now() - before;
  });
  return times.slice(3).sort((a, b) => a - b)[2]!;
}

const cases: readonly (readonly [string, Mesh])[] = [
  ["pump shell, 5k triangles", pumpShell(5000)],
  ["pump shell, 20k triangles", pumpShell(20000)],
  ["cap of 80 degrees, 10k triangles", capMesh(40, 80, 40)],
];
const results = cases.map(([name, mesh]) => {
  const cold = () => new Flattener(mesh.positions.length / 3, mesh.triangles).run(mesh.positions);
  const { uv, energy, steps } = cold();
  return { name, positions: [...mesh.positions], triangles: [...mesh.triangles], start: [...startOf(mesh)], uv: [...uv], energy, steps: steps.length, ms: medianMs(cold) };
});
writeFileSync(join(process.argv[2]!, "flatten.json"), JSON.stringify(results));

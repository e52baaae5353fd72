// Writes surfaces, their conformal start and our flattening for the outside check of the energy:
// `tsx crosscheck/flatten-export.ts FOLDER` makes FOLDER/flatten.json.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { Flattener } from "#flatten/flatten.ts";
import { theCases } from "./flatten-cases.ts";

/** Median of 5 cold runs, set-up included, ms; the first ones warm the engine up. */
function medianMs(work: () => void): number {
  const times = Array.from({ length: 8 }, () => {
    const before = performance.now();
    work();
    return performance.now() - before;
  });
  return times.slice(3).sort((a, b) => a - b)[2]!;
}

const results = theCases().map(({ name, mesh, heel }) => {
  const made = () => new Flattener(mesh.positions.length / 3, mesh.triangles);
  const cold = () => made().run(mesh.positions);
  const { uv, energy, steps, flipped } = cold();
  return { name, heel, positions: [...mesh.positions], triangles: [...mesh.triangles], start: [...made().start(mesh.positions)], uv: [...uv], energy, flipped, steps: steps.length, ms: medianMs(cold) };
});
writeFileSync(join(process.argv[2]!, "flatten.json"), JSON.stringify(results));

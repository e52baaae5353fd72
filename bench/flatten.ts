// Times of laying a pump-like shell flat, made by formula: cold with set-up, and warm after the girth grew by 3 %.
// Run by `npm run bench -- flatten`. Milliseconds: best (… worst; best of the processor's time) of three medians of five.
import type { Mesh } from "#mesh/mesh.ts";
import { Flattener } from "#flatten/flatten.ts";
import { pumpShell } from "../test/support/formula-surfaces.ts";
import { growth, shown, timed } from "./support/timing.ts";

const sizes = [5_000, 10_000, 20_000, 50_000, 100_000];
const wider = (mesh: Mesh): Float64Array => mesh.positions.map((x, i) => (i % 3 === 0 ? x : 1.03 * x));

// Warm the engine up on a small mesh before anything is measured.
for (let k = 0; k < 12; k++) new Flattener(pumpShell(3000).positions.length / 3, pumpShell(3000).triangles).run(pumpShell(3000).positions);

console.log("triangles  set-up and cold           of that set-up            warm (3 % of girth)       steps  last move mm       energy");
const cold: number[] = [];
const coldProcessor: number[] = [];
for (const size of sizes) {
  const mesh = pumpShell(size);
  const vertices = mesh.positions.length / 3;
  const kept = new Flattener(vertices, mesh.triangles);
  const flat = kept.run(mesh.positions);
  const after = wider(mesh);
  const whole = timed(() => new Flattener(vertices, mesh.triangles).run(mesh.positions));
  const setUp = timed(() => new Flattener(vertices, mesh.triangles));
  const warm = timed(() => kept.run(after, { start: flat.uv }));
  const warmSteps = kept.run(after, { start: flat.uv }).steps;
  cold.push(whole.best);
  coldProcessor.push(whole.processor);
  console.log(
    `${String(mesh.triangles.length / 3).padStart(9)}  ${shown(whole)}${shown(setUp)}${shown(warm)}${flat.steps.length} / ${warmSteps.length}  ${flat.steps.at(-1)!.moveMm.toFixed(5)} / ${warmSteps.at(-1)!.moveMm.toFixed(5)}  ${flat.energy.toFixed(6)}`,
  );
}
console.log(`growth of the cold time, 5k to 100k: n^${growth(sizes, cold).toFixed(2)}, by the processor's time n^${growth(sizes, coldProcessor).toFixed(2)} (aim: at most 1.3)`);

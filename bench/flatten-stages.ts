// What the parts of laying a shell flat cost and how they grow from 5k to 100k triangles; factor and solve also as the ratio of
// the twins, compiled and in TypeScript. Run by `npm run bench -- stages`. Milliseconds of the processor: best of three medians of five.
import { Dirichlet } from "#flatten/dirichlet.ts";
import { diskOf } from "#flatten/disk.ts";
import { flatten } from "#flatten/flatten.ts";
import { framesOf } from "#flatten/frames.ts";
import { adjacencyOf } from "#solve/adjacency.ts";
import { Cholesky } from "#solve/cholesky.ts";
import { CompiledCholesky } from "#solve/compiled-cholesky.ts";
import { planFronts } from "#solve/front-plan.ts";
import { minimumDegreeOrder } from "#solve/minimum-degree.ts";
import { pumpShell } from "../test/support/formula-surfaces.ts";
import { growth, timed } from "./support/timing.ts";

const sizes = [5_000, 10_000, 20_000, 50_000, 100_000];
const rows = new Map<string, number[]>();
const note = (stage: string, value: number): void => void (rows.get(stage) ?? rows.set(stage, []).get(stage)!).push(value);

for (const size of sizes) {
  const mesh = pumpShell(size);
  const vertices = mesh.positions.length / 3;
  const disk = diskOf(vertices, mesh.triangles);
  const { pattern, triangles } = disk;
  const graph = adjacencyOf(vertices, pattern.low, pattern.high);
  const plan = planFronts(pattern);
  const frames = framesOf(mesh.positions, triangles);
  const dirichlet = new Dirichlet(disk);
  const uv = flatten(mesh).uv.map((x, i) => (disk.turned && i % 2 === 1 ? -x : x));
  const gradient = new Float64Array(2 * vertices);
  const values = new Float64Array(pattern.valueCount);
  const assemble = (): void => {
    gradient.fill(0);
    values.fill(0);
    dirichlet.addDerivativesInto(gradient, values, frames, uv, true);
  };
  assemble();
  // The free motions are held by a weak spring on every vertex.
  for (let i = 0; i < vertices; i++) for (const e of [0, 3]) values[4 * i + e]! += 1e-9;
  const kept = values.slice();
  const [compiled, plain] = [new CompiledCholesky(pattern, plan), new Cholesky(pattern, plan)];
  const out = new Float64Array(2 * vertices);
  note("neighbours and rim", timed(() => diskOf(vertices, mesh.triangles)).processor);
  note("order of elimination", timed(() => minimumDegreeOrder(graph)).processor);
  note("order and fronts", timed(() => planFronts(pattern)).processor);
  note("memory and kernels", timed(() => new CompiledCholesky(pattern, plan)).processor);
  note("frames", timed(() => framesOf(mesh.positions, triangles)).processor);
  note("assembly", timed(assemble).processor);
  note("factor, compiled", timed(() => compiled.factor(kept)).processor);
  note("factor, TypeScript", timed(() => plain.factor(kept)).processor);
  note("solve, compiled", timed(() => compiled.solveInto(out, gradient)).processor);
  note("solve, TypeScript", timed(() => plain.solveInto(out, gradient)).processor);
  note("energy", timed(() => dirichlet.energy(frames, uv)).processor);
  note("(Mflop)", plan.flops / 1e6);
  note("(thousand entries)", plan.factorEntries / 1e3);
}

console.log(`${"triangles".padEnd(24)}${sizes.map((s) => String(s).padStart(9)).join("")}   growth`);
for (const [stage, times] of rows) console.log(`${stage.padEnd(24)}${times.map((t) => t.toFixed(1).padStart(9)).join("")}   n^${growth(sizes, times).toFixed(2)}`);
const ratios = ["factor", "solve"].map((what) => `${what} ${rows.get(`${what}, TypeScript`)!.map((t, k) => (t / rows.get(`${what}, compiled`)![k]!).toFixed(1)).join(" ")}`);
console.log(`TypeScript against compiled, times: ${ratios.join("; ")}`);

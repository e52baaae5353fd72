// Times of the flattening on a pump-like shell made by formula. Run by `npm run bench -- flatten`.
// Milliseconds, medians of 5 after the engine is warm: best (… worst; best of the processor's time) of three such medians.
import type { Mesh } from "#mesh/mesh.ts";
import { Flattener } from "#flatten/flatten.ts";
import { BlockPattern } from "#solve/block-pattern.ts";
import { Cholesky } from "#solve/cholesky.ts";
import { CompiledCholesky } from "#solve/compiled-cholesky.ts";
import { planFronts } from "#solve/front-plan.ts";
import { pumpShell } from "../test/support/formula-surfaces.ts";

interface Timing {
  readonly best: number;
  readonly worst: number;
  /** Best median of the processor's time; on a shared machine nearer to a quiet one's. */
  readonly processor: number;
}

const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

function medians(work: () => unknown): Timing {
  work();
  const rounds = Array.from({ length: 3 }, () => {
    const times = Array.from({ length: 5 }, () => {
      const [wall, processor] = [performance.now(), processorMs()];
      work();
      return [performance.now() - wall, processorMs() - processor] as const;
    });
    return [0, 1].map((k) => times.map((t) => t[k]!).sort((a, b) => a - b)[2]!);
  });
  const [wall, processor] = [0, 1].map((k) => rounds.map((r) => r[k]!).sort((a, b) => a - b));
  return { best: wall![0]!, worst: wall![2]!, processor: processor![0]! };
}

const shown = ({ best, worst, processor }: Timing): string => `${best.toFixed(1)} (… ${worst.toFixed(1)}; ${processor.toFixed(0)})`.padEnd(26);

/** A graph Laplacian with two unknowns a vertex: the pattern of a Newton step, positive definite. */
function laplacian(mesh: Mesh): { pattern: BlockPattern; values: Float64Array } {
  const size = mesh.positions.length / 3;
  const pattern = new BlockPattern(size, 2);
  for (let k = 0; k < mesh.triangles.length; k += 3) for (let e = 0; e < 3; e++) pattern.slot(mesh.triangles[k + e]!, mesh.triangles[k + ((e + 1) % 3)]!);
  const values = new Float64Array(pattern.valueCount);
  for (let k = 0; k < pattern.pairCount; k++) {
    values.set([-1, -0.3, 0.2, -1], 4 * (size + k));
    for (const i of [pattern.low[k]!, pattern.high[k]!]) for (const d of [0, 3]) values[4 * i + d]! += 1.31;
  }
  for (let i = 0; i < size; i++) for (const d of [0, 3]) values[4 * i + d]! += 0.01;
  return { pattern, values };
}

const sizes = [5_000, 10_000, 20_000, 50_000];
const wider = (mesh: Mesh): Float64Array => mesh.positions.map((x, i) => (i % 3 === 0 ? x : 1.03 * x));

// Warm the engine up on a small mesh before anything is measured.
for (let k = 0; k < 12; k++) new Flattener(pumpShell(3000).positions.length / 3, pumpShell(3000).triangles).run(pumpShell(3000).positions);

console.log("triangles  set-up and cold           of that set-up            warm (3 % of girth)       steps  last move mm       energy");
const cold: number[] = [];
for (const size of sizes) {
  const mesh = pumpShell(size);
  const vertices = mesh.positions.length / 3;
  const kept = new Flattener(vertices, mesh.triangles);
  const flat = kept.run(mesh.positions);
  const after = wider(mesh);
  const whole = medians(() => new Flattener(vertices, mesh.triangles).run(mesh.positions));
  const setUp = medians(() => new Flattener(vertices, mesh.triangles));
  const warm = medians(() => kept.run(after, { start: flat.uv }));
  const warmSteps = kept.run(after, { start: flat.uv }).steps;
  cold.push(whole.best);
  console.log(
    `${String(mesh.triangles.length / 3).padStart(9)}  ${shown(whole)}${shown(setUp)}${shown(warm)}${flat.steps.length} / ${warmSteps.length}  ${flat.steps.at(-1)!.moveMm.toFixed(5)} / ${warmSteps.at(-1)!.moveMm.toFixed(5)}  ${flat.energy.toFixed(6)}`,
  );
}
const slope = (from: number, to: number): string => (Math.log(cold[to]! / cold[from]!) / Math.log(sizes[to]! / sizes[from]!)).toFixed(2);
console.log(`growth of the cold time, 5k to 50k: n^${slope(0, 3)} (20k to 50k: n^${slope(2, 3)})`);

console.log("\ntriangles  plan                      factor, compiled          factor, TypeScript        ratio  solve, compiled           solve, TypeScript         entries  Mflop");
for (const size of sizes) {
  const { pattern, values } = laplacian(pumpShell(size));
  const plan = planFronts(pattern);
  const [compiled, plain] = [new CompiledCholesky(pattern, plan), new Cholesky(pattern, plan)];
  const right = new Float64Array(plan.unknowns).fill(1);
  const planned = medians(() => planFronts(pattern));
  const [factor, factorPlain] = [compiled, plain].map((c) => medians(() => c.factor(values))) as [Timing, Timing];
  const [solve, solvePlain] = [compiled, plain].map((c) => medians(() => c.solveInto(new Float64Array(plan.unknowns), right))) as [Timing, Timing];
  console.log(
    `${String(size).padStart(9)}  ${shown(planned)}${shown(factor)}${shown(factorPlain)}${(factorPlain.best / factor.best).toFixed(2).padStart(5)}  ${shown(solve)}${shown(solvePlain)}${(plan.factorEntries / 1e6).toFixed(2)} M  ${(plan.flops / 1e6).toFixed(0).padStart(5)}`,
  );
}

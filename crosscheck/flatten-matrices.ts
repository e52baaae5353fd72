// Writes the matrix of a Newton step at rest for shells of several sizes, a right side, our solution and our times:
// `tsx crosscheck/flatten-matrices.ts FOLDER` makes FOLDER/matrices.json and FOLDER/matrix-*.{rows,columns,values,right,ours}.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { Dirichlet } from "#flatten/dirichlet.ts";
import { diskOf } from "#flatten/disk.ts";
import { flatten } from "#flatten/flatten.ts";
import { framesOf } from "#flatten/frames.ts";
import { NewtonSystem } from "#flatten/newton-system.ts";
import type { BlockPattern } from "#solve/block-pattern.ts";
import { Cholesky } from "#solve/cholesky.ts";
import { CompiledCholesky } from "#solve/compiled-cholesky.ts";
import { planFronts } from "#solve/front-plan.ts";
import { product } from "../test/support/dense.ts";
import { pumpShell } from "../test/support/formula-surfaces.ts";

/** The Hessian at rest with one point and one direction held, as the last step of a flattening has it. */
function hessianOf(triangles: number): { pattern: BlockPattern; values: Float64Array } {
  const { positions, triangles: given } = pumpShell(triangles);
  const disk = diskOf(positions.length / 3, given);
  const { uv } = flatten({ positions, triangles: given });
  const system = new NewtonSystem(disk.pattern);
  system.hold([0, 1, 2 * disk.vertices - 1]);
  const atRest = disk.turned ? uv.map((x, i) => (i % 2 === 1 ? -x : x)) : uv;
  new Dirichlet(disk).addDerivativesInto(system.gradient, system.values, framesOf(positions, disk.triangles), atRest, false);
  if (!system.solve()) throw new Error("the Hessian at rest is positive definite");
  return { pattern: disk.pattern, values: system.values };
}

/** Entries on and below the diagonal. */
function lowerOf({ size, low, high }: BlockPattern, values: Float64Array) {
  const rows: number[] = [];
  const columns: number[] = [];
  const entries: number[] = [];
  const put = (row: number, column: number, at: number): void => {
    rows.push(row);
    columns.push(column);
    entries.push(values[at]!);
  };
  for (let i = 0; i < size; i++) {
    put(2 * i, 2 * i, 4 * i);
    put(2 * i + 1, 2 * i, 4 * i + 2);
    put(2 * i + 1, 2 * i + 1, 4 * i + 3);
  }
  // A pair's block has the smaller point in its rows: below the diagonal it stands transposed.
  for (let k = 0; k < low.length; k++) for (let r = 0; r < 2; r++) for (let c = 0; c < 2; c++) put(2 * high[k]! + c, 2 * low[k]! + r, 4 * (size + k) + 2 * r + c);
  return { rows: Int32Array.from(rows), columns: Int32Array.from(columns), values: Float64Array.from(entries) };
}

/** Least of 12 times, ms. */
function leastMs(work: () => void): number {
  const times = Array.from({ length: 12 }, () => {
    const before = performance.now();
    work();
    return performance.now() - before;
  });
  return Math.min(...times);
}

const folder = process.argv[2]!;
const results = [5_000, 20_000, 50_000].map((triangles) => {
  const { pattern, values } = hessianOf(triangles);
  const plan = planFronts(pattern);
  const [compiled, plain] = [new CompiledCholesky(pattern, plan), new Cholesky(pattern, plan)];
  const unknowns = 2 * pattern.size;
  // A right side that does not ask for the soft mode alone, which no solver can tell better than rounding over its stiffness.
  const right = product(pattern, values, Float64Array.from({ length: unknowns }, (_, i) => Math.sin(i)));
  const ours = new Float64Array(unknowns);
  const files = { ...lowerOf(pattern, values), right };
  compiled.factor(values);
  compiled.solveInto(ours, right);
  for (const [what, list] of Object.entries({ ...files, ours })) writeFileSync(join(folder, `matrix-${triangles}.${what}`), new Uint8Array(list.buffer));
  return {
    triangles,
    unknowns,
    planMs: leastMs(() => planFronts(pattern)),
    compiledMs: leastMs(() => compiled.factor(values)),
    plainMs: leastMs(() => plain.factor(values)),
    solveMs: leastMs(() => compiled.solveInto(ours, right)),
    entries: plan.factorEntries,
  };
});
writeFileSync(join(folder, "matrices.json"), JSON.stringify(results));

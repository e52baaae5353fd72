import { largestMove } from "#flatten/rigid.ts";
import { firstCollapse } from "#flatten/step-limit.ts";
import type { Hessian, Problem, Residual } from "./problem.ts";

/** One step towards the flat shape. */
export interface InverseStep {
  readonly residual: Residual;
  readonly hessian: Hessian;
  /** Largest way of a vertex, rigid motion left out, mm, and the part of the step that was taken. */
  readonly moveMm: number;
  readonly part: number;
}

export interface Descent {
  readonly uv: Float64Array;
  readonly steps: readonly InverseStep[];
  readonly settled: boolean;
  /** Size of the sought pull, N/mm. */
  readonly tightPerMm: number;
}

export interface Choices {
  readonly toleranceMm: number;
  readonly mostSteps: number;
  readonly tightPerMm: number;
  /** Before each step: told where the sheet lies now. */
  readonly before: (uv: Float64Array, steps: number) => void;
}

/** From a full step below this the forces at the vertices are followed, mm. */
const nearMm = 1;
/** A factor is kept for as long as each step is so much shorter than the one before. */
const shrinks = 0.4;
/** Steps along the forces that do not get shorter, after which the energy alone is followed. */
const mostTries = 4;

/**
 * From `uv` (no triangle folded over) first down the energy, which no start can lead astray, then to the equilibrium of forces at the
 * vertices by the same matrix: both are the same equation in the limit of small triangles, see docs/method/inverse.md.
 */
export function descend(problem: Problem, uv: Float64Array, { toleranceMm, mostSteps, tightPerMm: tight, before }: Choices): Descent {
  const steps: InverseStep[] = [];
  let residual: Residual = "energy", ask: Hessian = "true", energyOnly = false, tries = 0;
  while (steps.length < mostSteps) {
    before(uv, steps.length);
    const next = takeStep(problem, uv, residual, ask, tight);
    const last = steps.at(-1);
    steps.push(next.step);
    uv = next.uv;
    tight = next.tight;
    const { moveMm, part, hessian } = next.step;
    const shrunk = last?.residual === residual ? moveMm / last.moveMm : 0;
    if (residual === "energy") {
      if (part === 0) break;
      if (energyOnly && moveMm < toleranceMm * part) return { uv, steps, settled: true, tightPerMm: tight };
      if (!energyOnly && part === 1 && moveMm < nearMm) residual = "forces";
      ask = hessian === "clamped" && moveMm > nearMm ? "clamped" : "true";
      continue;
    }
    if (moveMm < toleranceMm * part && (hessian !== "kept" || shrunk < shrinks)) return { uv, steps, settled: true, tightPerMm: tight };
    if (last?.residual === "forces" && shrunk > 0.8) tries++;
    ask = part === 1 && (last?.residual !== "forces" || shrunk < shrinks) ? "kept" : "true";
    if (tries < mostTries && part > 0) continue;
    energyOnly = true;
    residual = "energy";
    ask = "true";
  }
  return { uv, steps, settled: false, tightPerMm: tight };
}

function takeStep(problem: Problem, uv: Float64Array, residual: Residual, ask: Hessian, tight: number): { readonly uv: Float64Array; readonly tight: number; readonly step: InverseStep } {
  const { system, triangles } = problem.parts;
  let hessian = ask;
  problem.assemble(uv, residual, hessian, tight);
  if (hessian === "kept") system.solveKept();
  else if (!system.solve()) {
    hessian = "clamped";
    problem.assemble(uv, residual, hessian, tight);
    if (!system.solve()) return { uv, tight, step: { residual, hessian, moveMm: Infinity, part: 0 } };
  }
  const step = system.step.slice();
  let decrement = 0;
  for (let i = 0; i < step.length; i++) decrement -= system.gradient[i]! * step[i]!;
  const more = tightenInto(problem, uv, step, tight);
  for (let i = 0; i < step.length; i++) problem.linear[i]! += more * problem.tightWay[i]!;
  const most = Math.min(1, 0.95 * firstCollapse(triangles, uv, step));
  const start = residual === "energy" ? problem.merit(uv) : 0;
  const trial = new Float64Array(uv.length);
  for (let part = most; part > 1e-9; part /= 2) {
    for (let i = 0; i < uv.length; i++) trial[i] = uv[i]! + part * step[i]!;
    const merit = residual === "energy" ? problem.merit(trial) : 0;
    // With a change of the sought pull the decrement is not that of this merit: any way down will do.
    const enough = residual === "energy" && more === 0 ? 1e-4 * part * decrement : 0;
    if (merit <= start - enough + 1e-12 * Math.abs(start)) return { uv: trial, tight: tight + part * more, step: { residual, hessian, moveMm: largestMove(uv, trial), part } };
  }
  return { uv, tight, step: { residual, hessian, moveMm: Infinity, part: 0 } };
}

/** Adds to the step what the sought pull must change by for its rows to come to their length; gives that change, N/mm. */
function tightenInto(problem: Problem, uv: Float64Array, step: Float64Array, tight: number): number {
  const { system, tight: sought } = problem.parts;
  if (!sought || sought.toMm === undefined) return 0;
  system.gradient.set(problem.tightWay);
  system.solveKept();
  const way = system.step;
  let length = 0, byStep = 0, byPull = 0;
  for (const row of sought.rows)
    for (let k = 0; k + 1 < row.length; k++) {
      const a = 2 * row[k]!, b = 2 * row[k + 1]!;
      const du = uv[b]! - uv[a]!, dv = uv[b + 1]! - uv[a + 1]!, mm = Math.sqrt(du * du + dv * dv);
      length += mm;
      byStep += (du * (step[b]! - step[a]!) + dv * (step[b + 1]! - step[a + 1]!)) / mm;
      byPull += (du * (way[b]! - way[a]!) + dv * (way[b + 1]! - way[a + 1]!)) / mm;
    }
  // A seam can be drawn together, not pushed apart.
  const more = Math.max(-tight, (sought.toMm - length - byStep) / byPull);
  for (let i = 0; i < step.length; i++) step[i]! += more * way[i]!;
  return more;
}

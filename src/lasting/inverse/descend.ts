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
}

export interface Choices {
  readonly toleranceMm: number;
  readonly mostSteps: number;
  /** Whether the equilibrium of forces is sought, or the energy's least is enough. */
  readonly exact: boolean;
  /** Before each step: told where the sheet lies now. */
  readonly before: (uv: Float64Array, steps: number) => void;
}

/** From a full step below this the forces at the vertices are followed, mm. */
const nearMm = 1;
/** A factor is kept for as long as each step is so much shorter than the one before. */
const shrinks = 0.4;
/** A step that is not so much shorter than the one before comes no nearer; after so many of them, or one so long (mm), the energy alone is followed. */
const comesNearer = 0.8;
const mostTries = 3;
const farMm = 3;

/**
 * From `uv` (no triangle folded over) first down the energy, which no start can lead astray, then to the equilibrium of forces at the
 * vertices by the same matrix: both are the same equation in the limit of small triangles, see docs/method/inverse.md. Where the second
 * does not come nearer, as in deep pleats, the first alone is followed to its end.
 */
export function descend(problem: Problem, uv: Float64Array, { toleranceMm, mostSteps, exact, before }: Choices): Descent {
  const steps: InverseStep[] = [];
  let residual: Residual = "energy", ask: Hessian = "true", energyOnly = !exact, tries = 0, safe = uv;
  while (steps.length < mostSteps) {
    before(uv, steps.length);
    const next = takeStep(problem, uv, residual, ask);
    const last = steps.at(-1);
    steps.push(next.step);
    uv = next.uv;
    const { moveMm, part, hessian } = next.step;
    const shrunk = last?.residual === residual ? moveMm / last.moveMm : 0;
    if (residual === "energy") {
      if (part === 0) break;
      safe = uv;
      if (energyOnly && moveMm < toleranceMm * part) return { uv, steps, settled: true };
      if (!energyOnly && part === 1 && moveMm < nearMm) residual = "forces";
      ask = hessian === "clamped" && moveMm > nearMm ? "clamped" : "true";
      continue;
    }
    if (moveMm < toleranceMm * part && (hessian !== "kept" || shrunk < shrinks)) return { uv, steps, settled: true };
    if (shrunk > comesNearer) tries++;
    ask = part === 1 && (last?.residual !== "forces" || shrunk < shrinks) ? "kept" : "true";
    if (tries < mostTries && part > 0 && moveMm < farMm) continue;
    energyOnly = true;
    residual = "energy";
    ask = "true";
    uv = safe;
  }
  return { uv: safe, steps, settled: false };
}

function takeStep(problem: Problem, uv: Float64Array, residual: Residual, ask: Hessian): { readonly uv: Float64Array; readonly step: InverseStep } {
  const { system, triangles } = problem.parts;
  const none = { uv, step: { residual, hessian: ask, moveMm: Infinity, part: 0 } };
  let hessian = ask;
  problem.assemble(uv, residual, hessian);
  if (hessian === "kept") system.solveKept();
  else if (!system.solve()) {
    hessian = "clamped";
    problem.assemble(uv, residual, hessian);
    if (!system.solve()) return none;
  }
  const { step, gradient } = system;
  let decrement = 0;
  for (let i = 0; i < step.length; i++) decrement -= gradient[i]! * step[i]!;
  const start = residual === "energy" ? problem.merit(uv) : 0;
  const trial = new Float64Array(uv.length);
  for (let part = Math.min(1, 0.95 * firstCollapse(triangles, uv, step)); part > 1e-9; part /= 2) {
    for (let i = 0; i < uv.length; i++) trial[i] = uv[i]! + part * step[i]!;
    // Armijo's rule, with room for rounding; the forces have no energy to follow.
    if (residual === "forces" || problem.merit(trial) <= start - 1e-4 * part * decrement + 1e-12 * Math.abs(start)) return { uv: trial, step: { residual, hessian, moveMm: largestMove(uv, trial), part } };
  }
  return none;
}

import type { Dirichlet } from "./dirichlet.ts";
import type { Frames } from "./frames.ts";
import { addLengthDerivativesInto, addLengthGradientInto, lengthEnergy, type LengthTerms } from "./length-terms.ts";
import type { NewtonSystem } from "./newton-system.ts";
import type { RimBarrier } from "./rim-barrier.ts";
import { largestMove, removeRigidInto } from "./rigid.ts";
import { firstCollapse } from "./step-limit.ts";

/** The true second derivatives, those with negative twists left out, or the true ones of the step before, factor and all. */
export type Hessian = "true" | "clamped" | "kept";

/** One Newton step. */
export interface Step {
  /** After the step, terms for edges and ties included. */
  readonly energy: number;
  /** Newton decrement −gradient · step before it, in the energy's unit. */
  readonly decrement: number;
  /** Largest way of a vertex, rigid motion left out. */
  readonly moveMm: number;
  /** Part of the step that was taken, 1 = all, 0 = none would do. */
  readonly part: number;
  readonly hessian: Hessian;
}

/** What is minimised: the symmetric Dirichlet energy of triangles in these frames, terms on lengths, and what keeps the rim apart. */
export interface Problem {
  readonly triangles: Uint32Array;
  readonly dirichlet: Dirichlet;
  readonly system: NewtonSystem;
  readonly frames: Frames;
  readonly lengths: LengthTerms;
  readonly barrier?: RimBarrier;
}

export interface Choices {
  readonly begin: Hessian;
  readonly toleranceMm: number;
  readonly mostSteps: number;
}

/** The last uv and the steps that led to it. */
export interface Descent {
  readonly uv: Float64Array;
  readonly steps: readonly Step[];
}

/** Newton decrement, as a part of the energy, below which the next step tries the true Hessian. */
const NEAR = 0.01;
/** A true step that moved less than so many tolerances is followed by one with the kept factor. */
const KEEP_BELOW = 100;
/** Least shrinking from step to step with which a kept factor is trusted. */
const SHRINKS = 0.2;

/**
 * Newton's method from `uv` (no triangle folded over) until a step moves no vertex by more than the tolerance.
 * The last step shows whether it came to rest, see {@link settled}.
 */
export function descend(problem: Problem, uv: Float64Array, choices: Choices, told: (steps: number) => void): Descent {
  const { toleranceMm, mostSteps } = choices;
  const steps: Step[] = [];
  let ask = choices.begin;
  // The true Hessian is tried once the map is near. Where it is not positive definite, it is tried again nearer still, or at
  // once where the steps shrink fast.
  let near = Infinity;
  while (steps.length < mostSteps) {
    const next = takeStep(problem, uv, ask);
    if (next.step.part === 0 && ask === "kept") {
      ask = "true";
      continue;
    }
    const before = steps.at(-1);
    uv = next.uv;
    steps.push(next.step);
    told(steps.length);
    const { decrement, energy, moveMm, part, hessian } = next.step;
    if (part === 0 || settled(steps, toleranceMm)) break;
    if (ask === "true" && hessian === "clamped") near = Math.max(0.3 * decrement, 0.1 * (before?.decrement ?? 0));
    ask = decrement < Math.min(near, NEAR * energy) ? "true" : "clamped";
    const shrinking = hessian === "kept" ? moveMm / before!.moveMm : 0;
    if (hessian === "true" && part === 1 && moveMm < KEEP_BELOW * toleranceMm) ask = "kept";
    else if (hessian === "kept" && shrinking < SHRINKS && shrinking * moveMm < toleranceMm) ask = "kept";
    else if (hessian === "kept") ask = "true";
    if (problem.barrier && ask === "kept") ask = "true"; // what touches changes from step to step
  }
  return { uv, steps };
}

/**
 * Whether the last step shows rest: its move is below the tolerance, it was not cut short (which would say nothing about the
 * way that is left) and, with a kept factor, it is far smaller than the step before (else the way left is not small).
 */
export function settled(steps: readonly Step[], toleranceMm: number): boolean {
  const last = steps.at(-1)!;
  return last.moveMm < toleranceMm * last.part && (last.hessian !== "kept" || last.moveMm < SHRINKS * steps.at(-2)!.moveMm);
}

function takeStep(problem: Problem, uv: Float64Array, ask: Hessian): { uv: Float64Array; step: Step } {
  const { dirichlet, frames, lengths, barrier, triangles } = problem;
  const system = barrier?.systemAt(uv) ?? problem.system;
  let hessian = ask;
  let decrement = solve(problem, system, uv, hessian);
  if (decrement < 0 && hessian === "true") {
    hessian = "clamped";
    decrement = solve(problem, system, uv, hessian);
  }
  const energyOf = (at: Float64Array): number => dirichlet.energy(frames, at) + lengthEnergy(lengths, at) + (barrier?.energy(at) ?? 0);
  const before = energyOf(uv);
  const none: Step = { energy: before, decrement, moveMm: Infinity, part: 0, hessian };
  if (!(decrement >= 0)) return { uv, step: none };
  removeRigidInto(system.step, uv);
  const trial = new Float64Array(uv.length);
  // Armijo's rule, with room for rounding in the energy.
  for (let part = Math.min(1, 0.95 * firstCollapse(triangles, uv, system.step)); part > 1e-12; part /= 2) {
    for (let i = 0; i < uv.length; i++) trial[i] = uv[i]! + part * system.step[i]!;
    const energy = energyOf(trial);
    if (energy <= before - 1e-4 * part * decrement + 1e-13 * before) return { uv: trial, step: { energy, decrement, moveMm: largestMove(uv, trial), part, hessian } };
  }
  return { uv, step: none };
}

/** Solves for a step; returns the Newton decrement, negative when the Hessian was not positive definite. */
function solve({ dirichlet, frames, lengths, barrier }: Problem, system: NewtonSystem, uv: Float64Array, hessian: Hessian): number {
  const { gradient, values } = system;
  system.clear();
  if (hessian === "kept") {
    dirichlet.addGradientInto(gradient, frames, uv);
    addLengthGradientInto(gradient, lengths, uv);
    system.solveKept();
  } else {
    dirichlet.addDerivativesInto(gradient, values, frames, uv, hessian === "clamped");
    addLengthDerivativesInto(gradient, values, lengths, system.pattern, uv, hessian === "clamped");
    barrier?.addDerivativesInto(gradient, values, system.pattern, uv);
    if (!system.solve()) return -1;
  }
  let decrement = 0;
  for (let i = 0; i < uv.length; i++) decrement -= gradient[i]! * system.step[i]!;
  return decrement;
}

import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import { vertexCount, type Mesh } from "#mesh/mesh.ts";
import { adjacencyOf } from "#solve/adjacency.ts";
import { convexMap } from "./convex-start.ts";
import { descend, settled, type Choices, type Descent, type Problem, type Step } from "./descent.ts";
import { Dirichlet } from "./dirichlet.ts";
import { diskOf, type Disk } from "./disk.ts";
import { distanceInSpace } from "./distance.ts";
import { framesOf, type Frames } from "./frames.ts";
import { conformalMap } from "./lscm.ts";
import { NewtonSystem } from "./newton-system.ts";
import { middlePins } from "./pins.ts";
import { principalStretches } from "./principal.ts";
import { placeInto } from "./rigid.ts";
import { RimBarrier } from "./rim-barrier.ts";
import { rimCrosses } from "./rim-contacts.ts";
import { joinInto, lengthTermsOf, type ChangedTerms, type FlattenTerms } from "./terms.ts";

export interface RunOptions extends ChangedTerms {
  /** Stop when a step moves no vertex by more than this, rigid motion left out; mm, default 0.01. */
  readonly toleranceMm?: number;
  /** uv to begin from, as an earlier run gave it; used when no triangle is folded over in it. */
  readonly start?: Float64Array;
  readonly mostSteps?: number;
  /** Whether the piece may lie over itself, as the banks of a slit lap; else its rim is kept apart. */
  readonly mayLap?: boolean;
  readonly watch?: Watch;
}

export interface FlattenOptions extends FlattenTerms, Omit<RunOptions, keyof FlattenTerms> {}

export interface Flattening {
  /** u0 v0 u1 v1 … mm; triangles turn as in the mesh seen from outside. Position and rotation mean nothing. */
  readonly uv: Float64Array;
  /** Area mean of σ₁² + σ₂² + σ₁⁻² + σ₂⁻² (4 for no stretch at all), without the terms for edges and ties. */
  readonly energy: number;
  readonly steps: readonly Step[];
  /** Larger and smaller principal stretch of each triangle, flat → space. */
  readonly stretchMax: Float64Array;
  readonly stretchMin: Float64Array;
  /** Triangles folded over: 0 unless something is badly wrong. */
  readonly flipped: number;
  /** Whether the piece would have lain over itself, so that its rim had to be kept apart. */
  readonly keptApart: boolean;
}

/** Lays a disk of surface flat with least stretch, once. Method, source and limits: docs/method/flatten.md. */
export function flatten(mesh: Mesh, options: FlattenOptions = {}): Flattening {
  const { edges, ties, ...run } = options;
  return new Flattener(vertexCount(mesh), mesh.triangles, { ...(edges && { edges }), ...(ties && { ties }) }).run(mesh.positions, run);
}

const TOLERANCE_MM = 0.01;
const MOST_STEPS = 200;

/**
 * Lays surfaces of one connectivity flat again and again, as while a line is dragged: pattern, order of elimination and
 * memory are made once.
 */
export class Flattener {
  readonly #disk: Disk;
  readonly #terms: FlattenTerms;
  readonly #dirichlet: Dirichlet;
  readonly #system: NewtonSystem;
  readonly #pins: readonly [number, number];

  /** @throws Refusal when the triangles make no disk */
  constructor(vertices: number, triangles: Uint32Array, terms: FlattenTerms = {}) {
    this.#disk = diskOf(vertices, triangles);
    this.#terms = terms;
    const { pattern } = this.#disk;
    this.#dirichlet = new Dirichlet(this.#disk);
    this.#pins = middlePins(adjacencyOf(vertices, pattern.low, pattern.high), this.#disk.rim);
    joinInto(pattern, terms);
    this.#system = new NewtonSystem(pattern);
  }

  /**
   * Lays the surface with these positions (x y z a vertex, mm) flat.
   * @throws Refusal when it cannot be laid flat or does not come to rest
   */
  run(positions: Float64Array, options: RunOptions = {}): Flattening {
    const disk = this.#disk;
    must(positions.length === 3 * disk.vertices, "three coordinates a vertex");
    const frames = framesOf(positions, disk.triangles);
    const lengths = lengthTermsOf(this.#terms, options, positions, frames.area);
    const [a, b] = this.#pins;
    const warm = this.#warmStart(frames, options.start);
    const start = warm ?? this.#coldStart(frames, positions);
    const held = [2 * a, 2 * a + 1, 2 * b + 1];
    this.#system.hold(held);
    const { toleranceMm = TOLERANCE_MM, mostSteps = MOST_STEPS, watch = unwatched } = options;
    const problem = { triangles: disk.triangles, dirichlet: this.#dirichlet, system: this.#system, frames, lengths };
    const choices = { begin: warm ? "true" : "clamped", toleranceMm, mostSteps } as const;
    const told = (done: number): void => watch("flatten", Math.min(0.95, done / 10));
    const free = descend(problem, start, choices, told);
    const overlaps = !options.mayLap && settled(free.steps, toleranceMm) && rimCrosses(disk.rim, free.uv);
    const { uv, steps } = overlaps ? this.#layApart(problem, positions, start, held, choices, told) : free;
    if (!settled(steps, toleranceMm)) throw new Refusal(finding("surface-does-not-settle", { moveMm: steps.at(-1)!.moveMm, steps: steps.length }));
    placeInto(uv, a, b);
    const energy = this.#dirichlet.energy(frames, uv);
    const principal = principalStretches(frames, disk.triangles, uv);
    if (disk.turned) flipInto(uv);
    return { uv, energy, steps, keptApart: overlaps, ...principal };
  }

  /**
   * Goes the way once more with the rim kept apart, from the same start where its rim does not cross itself, else from
   * a convex map. Steps shrink by a third at least, so the last is asked to be that much smaller than what may be left.
   */
  #layApart(problem: Problem, positions: Float64Array, given: Float64Array, held: readonly number[], choices: Choices, told: (steps: number) => void): Descent {
    const { rim } = this.#disk;
    const start = !rimCrosses(rim, given) ? given : this.#firstWithoutFolds(problem.frames, this.#convexMaps(problem.frames, positions));
    const barrier = new RimBarrier(rim, positions, problem.frames.area, this.#system, held);
    return descend({ ...problem, barrier }, start, { ...choices, begin: "clamped", toleranceMm: choices.toleranceMm / 4 }, told);
  }

  #warmStart(frames: Frames, start: Float64Array | undefined): Float64Array | undefined {
    if (!start) return undefined;
    must(start.length === 2 * this.#disk.vertices, "two coordinates a vertex to start from");
    const uv = start.slice();
    if (this.#disk.turned) flipInto(uv);
    // Scaled to least energy, the true Hessian is positive definite from the first step on (tried: 3 % of girth either way).
    this.#dirichlet.scaleToBestInto(frames, uv);
    placeInto(uv, ...this.#pins);
    return this.#dirichlet.energy(frames, uv) < Infinity ? uv : undefined;
  }

  /**
   * The map that the flattening starts from: conformal (angles kept as well as the mesh allows) unless triangles fold over in
   * it, scaled to least energy. A plane to draw on, since square and smooth mean the same on it and on the surface.
   * @throws Refusal when the surface is too crumpled for any start
   */
  start(positions: Float64Array): Float64Array {
    const uv = this.#coldStart(framesOf(positions, this.#disk.triangles), positions);
    if (this.#disk.turned) flipInto(uv);
    return uv;
  }

  #coldStart(frames: Frames, positions: Float64Array): Float64Array {
    const [a, b] = this.#pins;
    const conformal = () => conformalMap(this.#system, this.#dirichlet, frames, a, b, distanceInSpace(positions, a, b));
    return this.#firstWithoutFolds(frames, [conformal, ...this.#convexMaps(frames, positions)]);
  }

  #convexMaps(frames: Frames, positions: Float64Array): (() => Float64Array)[] {
    return [false, true].map((plain) => () => convexMap(this.#disk, frames, positions, plain));
  }

  #firstWithoutFolds(frames: Frames, maps: readonly (() => Float64Array | undefined)[]): Float64Array {
    for (const make of maps) {
      const uv = make();
      if (!uv) continue;
      this.#dirichlet.scaleToBestInto(frames, uv);
      if (this.#dirichlet.energy(frames, uv) === Infinity) continue;
      placeInto(uv, ...this.#pins);
      return uv;
    }
    throw new Refusal(finding("surface-too-crumpled", {}));
  }
}

/** Mirrors uv; 0 stays +0. */
function flipInto(uv: Float64Array): void {
  for (let i = 1; i < uv.length; i += 2) uv[i] = 0 - uv[i]!;
}

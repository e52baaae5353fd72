import { must } from "#base/bug.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import { diskOf, type Disk } from "#flatten/disk.ts";
import { framesOf } from "#flatten/frames.ts";
import { NewtonSystem } from "#flatten/newton-system.ts";
import { principalStretches, type Principal } from "#flatten/principal.ts";
import type { Balance } from "./balance.ts";
import { CutRows } from "./cut-rows.ts";
import { descend, type InverseStep } from "./descend.ts";
import { outwardLoads, RimTriangles } from "./edge-loads.ts";
import { Problem } from "./problem.ts";
import { SheetEnergy, type Axes, type Material } from "./sheet-energy.ts";
import { groundOf, SheetForces } from "./sheet-forces.ts";
import type { Friction, Stick } from "./slip.ts";
import { TapeBars } from "./tape-bars.ts";

/** Pulls square to a row of the rim, outward along the surface, N/mm at each of its vertices. */
export interface RowPull {
  readonly vertices: Uint32Array;
  readonly perMm: ArrayLike<number>;
}

export interface InverseInput {
  /** The lasted shape: x y z a vertex, mm. */
  readonly positions: Float64Array;
  /** Flat shape to begin from, without folds, mm. */
  readonly start: Float64Array;
  readonly law: Material;
  /** Axes of the law in each triangle against the flat sheet's x axis; along it without them. */
  readonly axes?: Axes;
  /** Whether the sheet is the mirror image of that which the law's directions are told for, as a left one is. */
  readonly mirrored?: boolean;
  /** The flat sheet's x axis runs from one vertex to another, which is its origin. */
  readonly frame: { readonly from: number; readonly origin: number };
  readonly pulls?: readonly RowPull[];
  /** Rows of edges that are to lie no longer on the flat than in this flat shape. */
  readonly cut?: { readonly rows: readonly Uint32Array[]; readonly of: Float64Array };
  /** Rows of the rim with a tape, and the force with which it resists, N; the rows begin where it runs on over a seam. */
  readonly tape?: { readonly rows: readonly Uint32Array[]; readonly stiffN: number };
  readonly friction?: Friction;
  readonly stick?: Stick;
  /** Unit normals of the last at the vertices, where they are known better than from the triangles. */
  readonly normals?: Float64Array;
  /** Stop when a step moves no vertex by more than this, mm. */
  readonly toleranceMm?: number;
  readonly mostSteps?: number;
  /** Whether the forces at the vertices are to be in equilibrium (default), or the energy's least is enough, which pleats cannot hinder. */
  readonly exact?: boolean;
  readonly watch?: Watch;
}

export interface Inverse extends Principal {
  /** The flat shape, x0 y0 … mm, in its frame. */
  readonly uv: Float64Array;
  readonly steps: readonly InverseStep[];
  readonly settled: boolean;
  /** Whether the forces at the vertices are in equilibrium, not just the energy at its least. */
  readonly exact: boolean;
  readonly balance: Balance;
  /** Between last and sheet at each vertex, N/mm². */
  readonly pressure: Float64Array;
  /** Force at each vertex by which what it sticks to, rows that are cut so long, and what carries the rest of the loads hold it, x y z N. */
  readonly held: Float64Array;
}

const toleranceMm = 0.01;
const mostSteps = 60;

/** Finds flat shapes for lasted ones of one connectivity, again and again: pattern, order of elimination and memory are made once. */
export class InverseSheet {
  readonly #disk: Disk;
  readonly #system: NewtonSystem;
  readonly #rim: RimTriangles;

  /** @throws Refusal when the triangles make no disk */
  constructor(vertices: number, triangles: Uint32Array) {
    this.#disk = diskOf(vertices, triangles);
    this.#system = new NewtonSystem(this.#disk.pattern);
    this.#rim = new RimTriangles(this.#disk);
  }

  run(input: InverseInput): Inverse {
    const { positions, frame, watch = unwatched } = input, { triangles, turned, vertices } = this.#disk;
    must(positions.length === 3 * vertices && input.start.length === 2 * vertices, "three coordinates and two a vertex");
    const frames = framesOf(positions, triangles), ground = groundOf(positions, triangles, frames, turned ? -1 : 1, input.normals);
    const energy = new SheetEnergy(this.#disk, input.law, turned === (input.mirrored ?? false) ? 1 : -1, input.axes);
    const flipped = (uv: Float64Array): Float64Array => (turned ? uv.map((x, i) => (i % 2 === 1 ? 0 - x : x)) : uv.slice());
    const stick = input.stick && { ...input.stick, from: flipped(input.stick.from) };
    const problem = new Problem({
      triangles, frames, energy, stick, friction: input.friction, cut: input.cut && new CutRows(input.cut.rows, flipped(input.cut.of)), forces: new SheetForces(triangles, frames, ground), rim: this.#rim, system: this.#system,
      loads: outwardLoads(input.pulls ?? [], positions, this.#rim, triangles, ground, frames),
      tape: input.tape && new TapeBars(input.tape.rows, input.tape.stiffN, positions),
    });
    // What it sticks to holds the sheet in place; without, one point and one direction are held.
    const floats = stick !== undefined && stick.perMm3 > 0;
    const start = flipped(input.start);
    if (!floats) settleInto(start, frame);
    this.#system.hold(floats ? [] : [2 * frame.origin, 2 * frame.origin + 1, 2 * frame.from + 1]);
    const before = (uv: Float64Array, steps: number): void => {
      energy.turn = directionOf(uv, frame);
      watch("lay for the leather", Math.min(0.95, steps / 10));
    };
    const { uv, steps, settled } = descend(problem, start, { toleranceMm: input.toleranceMm ?? toleranceMm, mostSteps: input.mostSteps ?? mostSteps, exact: input.exact ?? true, before });
    problem.assemble(uv, exact(steps) ? "forces" : "energy", "kept");
    settleInto(uv, frame);
    const principal = principalStretches(frames, triangles, uv);
    const pressure = problem.pressN.map((n, i) => n / ground.cells[i]!);
    return { uv: flipped(uv), ...principal, steps, settled, exact: exact(steps), balance: problem.balance, pressure, held: problem.heldForces() };
  }
}

const exact = (steps: readonly InverseStep[]): boolean => steps.at(-1)?.residual === "forces";

function directionOf(uv: Float64Array, { from, origin }: InverseInput["frame"]): readonly [number, number] {
  const dx = uv[2 * origin]! - uv[2 * from]!, dy = uv[2 * origin + 1]! - uv[2 * from + 1]!, size = Math.sqrt(dx * dx + dy * dy);
  must(size > 0, "the ends of the flat sheet's axis coincide");
  return [dx / size, dy / size];
}

/** Moves and turns uv into its frame. */
function settleInto(uv: Float64Array, frame: InverseInput["frame"]): void {
  const [c, s] = directionOf(uv, frame), ox = uv[2 * frame.origin]!, oy = uv[2 * frame.origin + 1]!;
  for (let i = 0; i < uv.length; i += 2) {
    const x = uv[i]! - ox, y = uv[i + 1]! - oy;
    uv[i] = c * x + s * y + 0;
    uv[i + 1] = c * y - s * x + 0;
  }
  uv[2 * frame.from + 1] = 0;
}

import type { Frames } from "#flatten/frames.ts";
import type { NewtonSystem } from "#flatten/newton-system.ts";
import { balanceInto, type Balance } from "./balance.ts";
import type { CutRows } from "./cut-rows.ts";
import { addFlatLoadsInto, addLoadsInto, addRimEnergyInto, type EdgeLoads, type RimTriangles } from "./edge-loads.ts";
import type { SheetEnergy } from "./sheet-energy.ts";
import type { SheetForces } from "./sheet-forces.ts";
import { addStickInto, stickEnergy, type Friction, type Stick } from "./slip.ts";
import type { TapeBars } from "./tape-bars.ts";

/**
 * Which residual is brought to nothing. "energy": the derivative of the sheet's energy in its flat shape, which a line search can follow
 * down; "forces": those at the vertices on the last, of the very triangles that a sheet is pulled over with.
 */
export type Residual = "energy" | "forces";
/** The true second derivatives, those made positive, or the factor of the step before. */
export type Hessian = "true" | "clamped" | "kept";

export interface ProblemParts {
  readonly triangles: Uint32Array;
  readonly frames: Frames;
  readonly energy: SheetEnergy;
  readonly forces: SheetForces;
  readonly rim: RimTriangles;
  readonly system: NewtonSystem;
  readonly loads: EdgeLoads;
  readonly tape?: TapeBars | undefined;
  readonly friction?: Friction | undefined;
  readonly stick?: Stick | undefined;
  readonly cut?: CutRows | undefined;
}

/** The equations of the flat shape X whose sheet is in equilibrium on the last: docs/method/inverse.md. */
export class Problem {
  readonly parts: ProblemParts;
  /** Force between last and sheet at each vertex, N; what is left over of the loads; and the part of the residual that no energy follows. */
  readonly pressN: Float64Array;
  readonly linear: Float64Array;
  /** What holds each vertex besides its loads, in the flat sheet, two numbers: what it sticks to, its cut rows, and what carries the rest. */
  readonly held: Float64Array;
  balance: Balance = { alongN: 0, acrossN: 0, turnNmm: 0 };
  readonly #outer: Float64Array;
  readonly #tape: Float64Array;

  constructor(parts: ProblemParts) {
    const n = parts.forces.ground.areas.length;
    this.parts = parts;
    this.pressN = new Float64Array(n);
    this.linear = new Float64Array(2 * n);
    this.held = new Float64Array(2 * n);
    this.#outer = new Float64Array(3 * n);
    this.#tape = new Float64Array(3 * n);
  }

  /** What the line search follows: the sheet's energy with tape and what it sticks to and how long it is cut, and the other loads as they were at the last {@link assemble}. */
  merit(uv: Float64Array): number {
    const { energy, frames, tape, stick, cut, forces } = this.parts;
    let sum = energy.energy(frames, uv) + (tape?.energy(uv) ?? 0) + (stick ? stickEnergy(stick, forces.ground.areas, uv) : 0) + (cut?.energy(uv) ?? 0);
    for (let i = 0; i < uv.length; i++) sum += this.linear[i]! * uv[i]!;
    return sum;
  }

  /** Sums residual and Hessian at uv into the system. */
  assemble(uv: Float64Array, residual: Residual, hessian: Hessian): void {
    const { energy, frames, forces, tape, system, friction, stick, cut } = this.parts;
    const { gradient } = system, values = hessian === "kept" ? undefined : system.values;
    system.clear();
    if (values) energy.addDerivativesInto(gradient, values, frames, uv, hessian === "clamped");
    else energy.addGradientInto(gradient, frames, uv);
    forces.measure(energy.state);
    this.#tape.fill(0);
    tape?.lag(uv);
    tape?.addForcesInto(this.#tape, uv);
    if (values) tape?.addHessianInto(values, system.pattern, uv);
    for (let i = 0; i < this.#tape.length; i++) forces.inner[i]! += this.#tape[i]!;
    this.#outer.fill(0);
    addLoadsInto(this.#outer, this.parts.loads);
    this.#press();
    if (friction) this.#drag(friction);
    if (residual === "energy") this.#energyResidual(uv);
    else this.#forceResidual();
    this.held.set(gradient);
    this.balance = balanceInto(gradient, uv, forces.ground.areas);
    for (let i = 0; i < uv.length; i++) this.held[i] = -this.held[i]!;
    for (let i = 0; i < uv.length; i++) this.linear[i] = residual === "energy" ? gradient[i]! - this.linear[i]! : 0;
    if (stick) addStickInto(gradient, values, stick, forces.ground.areas, uv);
    cut?.addDerivativesInto(gradient, values, system.pattern, uv);
    for (let i = 0; i < uv.length; i++) this.held[i]! += gradient[i]!;
  }

  /** The same as forces on the last at each vertex, three numbers, N: f in its plane with Fᵀ f = held. */
  heldForces(): Float64Array {
    const { map } = this.parts.forces, out = new Float64Array((3 * this.held.length) / 2);
    for (let i = 0; i < this.held.length / 2; i++) {
      const m = map.subarray(6 * i, 6 * i + 6), x = this.held[2 * i]!, y = this.held[2 * i + 1]!;
      const c11 = m[0]! * m[0]! + m[2]! * m[2]! + m[4]! * m[4]!, c22 = m[1]! * m[1]! + m[3]! * m[3]! + m[5]! * m[5]!, c12 = m[0]! * m[1]! + m[2]! * m[3]! + m[4]! * m[5]!;
      const det = c11 * c22 - c12 * c12, a = (c22 * x - c12 * y) / det, b = (c11 * y - c12 * x) / det;
      for (let d = 0; d < 3; d++) out[3 * i + d] = m[2 * d]! * a + m[2 * d + 1]! * b;
    }
    return out;
  }

  /** The derivative of the energy, less what the loads do to it; `linear` keeps the energy's own. */
  #energyResidual(uv: Float64Array): void {
    const { energy: { state }, forces, rim, loads, tape, friction, system: { gradient } } = this.parts;
    this.linear.set(gradient);
    addRimEnergyInto(gradient, rim, state, uv);
    addFlatLoadsInto(gradient, loads, rim, forces.ground, state);
    if (tape) this.#addFlat(gradient, this.#tape, () => -1);
    if (friction) this.#addFlat(gradient, friction.along, (i) => -friction.share * Math.max(0, this.pressN[i]!));
  }

  /** Forces at the vertices in the last's tangent plane, taken back to the flat by the mean F there. */
  #forceResidual(): void {
    const { forces: { inner, ground: { normals } }, system: { gradient } } = this.parts, left = this.#outer;
    for (let i = 0; i < left.length; i++) left[i]! -= inner[i]!;
    for (let i = 0; i < left.length; i += 3) {
      const away = left[i]! * normals[i]! + left[i + 1]! * normals[i + 1]! + left[i + 2]! * normals[i + 2]!;
      for (let j = 0; j < 3; j++) left[i + j]! -= away * normals[i + j]!;
    }
    gradient.fill(0);
    this.#addFlat(gradient, left, () => 1);
  }

  #addFlat(out: Float64Array, forces: Float64Array, times: (i: number) => number): void {
    const { map } = this.parts.forces;
    for (let i = 0; i < out.length / 2; i++) {
      const w = times(i), x = w * forces[3 * i]!, y = w * forces[3 * i + 1]!, z = w * forces[3 * i + 2]!, at = 6 * i;
      out[2 * i]! += map[at]! * x + map[at + 2]! * y + map[at + 4]! * z;
      out[2 * i + 1]! += map[at + 1]! * x + map[at + 3]! * y + map[at + 5]! * z;
    }
  }

  #press(): void {
    const { inner, ground: { normals } } = this.parts.forces;
    for (let i = 0; i < this.pressN.length; i++) {
      let sum = 0;
      for (let j = 3 * i; j < 3 * i + 3; j++) sum += (inner[j]! - this.#outer[j]!) * normals[j]!;
      this.pressN[i] = sum;
    }
  }

  #drag({ share, along }: Friction): void {
    for (let i = 0; i < this.pressN.length; i++) {
      const hold = share * Math.max(0, this.pressN[i]!);
      for (let j = 3 * i; j < 3 * i + 3; j++) this.#outer[j]! -= hold * along[j]!;
    }
  }
}

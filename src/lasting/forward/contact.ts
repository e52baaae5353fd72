import type { Sheet } from "#wrap/sheet.ts";
import type { Form } from "./form.ts";

/** A point higher than this over the form does not lean on it, mm. */
const nearMm = 0.05;

/**
 * One-sided contact with a rigid form and the light hands that press toward it: every point pays area · (press · h + stiff/2 · h²), the
 * second only where its height h is below 0. For one step the form under a point is the surface that osculates it at its nearest
 * point, h(x + d) = h + n · d + ½ d · K d: without K a sheet under tension T on radius R would seem to cling to its place with T/R².
 */
export class Contact {
  press: number;
  readonly #sheet: Sheet;
  readonly #form: Form | undefined;
  readonly #stiff: number;
  /** Unit normal and offset of the plane under each point; no form: a plane without a normal, which no point is below. */
  readonly plane: Float64Array;
  /** K of each point, six numbers, see {@link Form}. */
  readonly #bend: Float64Array;
  readonly #near: Int32Array;
  readonly #foot: Float64Array;
  /**
   * N with which each point leans on the form: what presses it down, and that a height of a hair over the form does not undo. At rest it is
   * {@link force}, but it stays calm while points come and go.
   */
  readonly bearing: Float64Array;
  /** Where the planes were taken. */
  readonly #base: Float64Array;

  constructor(sheet: Sheet, form: Form | undefined, stiff: number, press: number) {
    this.#sheet = sheet;
    this.#form = form;
    this.#stiff = stiff;
    this.press = press;
    this.plane = new Float64Array(4 * sheet.points);
    this.#bend = new Float64Array(6 * sheet.points);
    this.#near = new Int32Array(sheet.points).fill(-1);
    this.#foot = new Float64Array(3 * sheet.points);
    this.#base = new Float64Array(3 * sheet.points);
    this.bearing = new Float64Array(sheet.points);
  }

  /** Takes the form anew under these points. */
  follow(x: Float64Array): void {
    this.#form?.planesInto(this.plane, this.#foot, this.#near, x, this.#bend);
    this.#base.set(x);
  }

  /** Nearest points of the form as last followed. */
  get foot(): Float64Array {
    return this.#foot;
  }

  height(x: Float64Array, p: number): number {
    const n = this.plane, b = this.#base, k = this.#bend;
    const i = 4 * p, j = 3 * p, m = 6 * p;
    const dx = x[j]! - b[j]!, dy = x[j + 1]! - b[j + 1]!, dz = x[j + 2]! - b[j + 2]!;
    const bent = 0.5 * (k[m]! * dx * dx + k[m + 2]! * dy * dy + k[m + 5]! * dz * dz) + k[m + 1]! * dx * dy + k[m + 3]! * dx * dz + k[m + 4]! * dy * dz;
    return n[i]! * x[j]! + n[i + 1]! * x[j + 1]! + n[i + 2]! * x[j + 2]! - n[i + 3]! + bent;
  }

  /** Whether p is so low that it may lean on the form. */
  near(x: Float64Array, p: number): boolean {
    return this.#form !== undefined && this.height(x, p) < nearMm;
  }

  /** N with which the form pushes back at point p. */
  force(x: Float64Array, p: number): number {
    const h = this.height(x, p);
    return h < 0 ? -h * this.#stiff * this.#sheet.areas[p]! : 0;
  }

  /** Finds {@link bearing} from the gradient of all that does not come from the form. */
  bear(x: Float64Array, gradient: Float64Array): void {
    const { areas, unknown } = this.#sheet;
    const n = this.plane;
    for (let p = 0; p < this.bearing.length; p++) {
      const at = unknown[p]!;
      const down = at < 0 ? 0 : n[4 * p]! * gradient[at]! + n[4 * p + 1]! * gradient[at + 1]! + n[4 * p + 2]! * gradient[at + 2]! + areas[p]! * this.press;
      this.bearing[p] = down > 0 && this.near(x, p) ? down : 0;
    }
  }

  /** N·mm */
  energy(x: Float64Array): number {
    const { areas, points } = this.#sheet;
    let sum = 0;
    for (let p = 0; p < points; p++) {
      const h = this.height(x, p);
      sum += areas[p]! * (this.press * h + (h < 0 ? 0.5 * this.#stiff * h * h : 0));
    }
    return sum;
  }

  /**
   * Marks the points that lie below the form after a step (3 unknowns a free point).
   * @returns N·mm by which the energy after the step was reckoned wrong where marks have changed
   */
  markInto(touching: Uint8Array, x: Float64Array, step?: Float64Array): number {
    const n = this.plane;
    let wrong = 0;
    for (let p = 0; p < touching.length; p++) {
      const at = this.#sheet.unknown[p]!;
      let h = this.height(x, p);
      if (step && at >= 0) h += n[4 * p]! * step[at]! + n[4 * p + 1]! * step[at + 1]! + n[4 * p + 2]! * step[at + 2]!;
      const mark = h < 0 ? 1 : 0;
      if (touching[p] !== mark) wrong += 0.5 * this.#sheet.areas[p]! * this.#stiff * h * h;
      touching[p] = mark;
    }
    return wrong;
  }

  /**
   * Adds gradient and second derivatives as if just the marked points touched; six places a point as in WrapSystem.ofPoints. `bent`: the
   * form's bend counts with the force across it, which may be stiffness below 0.
   */
  addInto(gradient: Float64Array, values: Float64Array, slots: Int32Array, x: Float64Array, touching: Uint8Array, bent: boolean): void {
    const { areas, points, unknown } = this.#sheet;
    const n = this.plane;
    for (let p = 0; p < points; p++) {
      const at = unknown[p]!;
      if (at < 0) continue;
      const h = this.height(x, p);
      const stiff = touching[p] ? areas[p]! * this.#stiff : 0;
      const force = areas[p]! * this.press + stiff * h;
      const across = bent ? areas[p]! * this.press - this.bearing[p]! : 0;
      for (let d = 0, k = 6 * p; d < 3; d++) {
        gradient[at + d]! += force * n[4 * p + d]!;
        for (let e = 0; e <= d; e++, k++) values[slots[k]!]! += stiff * n[4 * p + d]! * n[4 * p + e]! + across * this.#bend[k]!;
      }
    }
  }
}

import type { Sheet } from "#wrap/sheet.ts";

/**
 * What holds and pulls single points: dead forces, tacks (stiff springs to a place) and guides (a spring along one direction, so that a
 * point stays on a line).
 */
export class Holds {
  /** Dead force on each point, x y z N. */
  readonly load: Float64Array;
  readonly #sheet: Sheet;
  /** Stiffness of each point's tack, N/mm, 0 for none, and the place it pulls to. */
  readonly #stiff: Float64Array;
  readonly #place: Float64Array;
  readonly #guide: number;
  readonly #began: Float64Array;

  constructor(sheet: Sheet, x: Float64Array, guide: number) {
    this.#sheet = sheet;
    this.load = new Float64Array(3 * sheet.points);
    this.#stiff = new Float64Array(sheet.points);
    this.#place = new Float64Array(3 * sheet.points);
    this.#guide = guide;
    this.#began = Float64Array.from(sheet.guided.points, (p, k) => this.#along(x, p, k));
  }

  /** Tacks p to the place x y z. */
  tack(p: number, stiffness: number, x: number, y: number, z: number): void {
    this.#stiff[p] = stiffness;
    this.#place.set([x, y, z], 3 * p);
  }

  free(p: number): void {
    this.#stiff[p] = 0;
  }

  tacked(p: number): boolean {
    return this.#stiff[p]! > 0;
  }

  /** Force of p's tack along axis d, N. */
  tackForce(x: Float64Array, p: number, d: number): number {
    return this.#stiff[p]! * (this.#place[3 * p + d]! - x[3 * p + d]!);
  }

  #along(x: Float64Array, p: number, k: number): number {
    const { across } = this.#sheet.guided;
    return across[3 * k]! * x[3 * p]! + across[3 * k + 1]! * x[3 * p + 1]! + across[3 * k + 2]! * x[3 * p + 2]!;
  }

  /** N·mm */
  energy(x: Float64Array): number {
    const { guided } = this.#sheet;
    let sum = 0;
    for (let p = 0; p < this.#stiff.length; p++)
      for (let d = 0; d < 3; d++) {
        sum -= this.load[3 * p + d]! * x[3 * p + d]!;
        if (this.#stiff[p]! > 0) sum += 0.5 * this.#stiff[p]! * (x[3 * p + d]! - this.#place[3 * p + d]!) ** 2;
      }
    for (let k = 0; k < guided.points.length; k++) sum += 0.5 * this.#guide * (this.#along(x, guided.points[k]!, k) - this.#began[k]!) ** 2;
    return sum;
  }

  /** Adds gradient and second derivatives; six places a point as in WrapSystem.ofPoints. */
  addInto(gradient: Float64Array, values: Float64Array, slots: Int32Array, x: Float64Array): void {
    const { unknown, guided } = this.#sheet;
    for (let p = 0; p < this.#stiff.length; p++) {
      const at = unknown[p]!;
      if (at < 0) continue;
      for (let d = 0; d < 3; d++) {
        gradient[at + d]! -= this.load[3 * p + d]! + this.tackForce(x, p, d);
        values[slots[6 * p + (d * (d + 3)) / 2]!]! += this.#stiff[p]!;
      }
    }
    for (let k = 0; k < guided.points.length; k++) {
      const p = guided.points[k]!, at = unknown[p]!;
      if (at < 0) continue;
      const force = this.#guide * (this.#along(x, p, k) - this.#began[k]!);
      for (let d = 0, i = 6 * p; d < 3; d++) {
        gradient[at + d]! += force * guided.across[3 * k + d]!;
        for (let e = 0; e <= d; e++, i++) values[slots[i]!]! += this.#guide * guided.across[3 * k + d]! * guided.across[3 * k + e]!;
      }
    }
  }
}

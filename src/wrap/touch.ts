import type { Ground } from "./ground.ts";
import type { Sheet } from "./sheet.ts";

/**
 * Contact with the ground and the pressure toward it, over planes that stay for one step: every point pays area · (press · h), and
 * area · ground/2 · h² besides where its height h is below 0. What is guided pays guide/2 · way² for its way along its direction.
 */
export class Touch {
  readonly #sheet: Sheet;
  readonly #ground: Ground;
  readonly #press: number;
  readonly #stiff: number;
  readonly #guide: number;
  /** Unit normal and offset of the plane under each point. */
  readonly #plane: Float64Array;
  readonly #near: Int32Array;
  readonly #foot: Float64Array;
  /** Place of each guided point along its direction at first. */
  readonly #began: Float64Array;

  constructor(sheet: Sheet, x: Float64Array, ground: Ground, { press, ground: stiff, guide }: { readonly press: number; readonly ground: number; readonly guide: number }) {
    this.#sheet = sheet;
    this.#ground = ground;
    this.#press = press;
    this.#stiff = stiff;
    this.#guide = guide;
    this.#plane = new Float64Array(4 * sheet.points);
    this.#near = new Int32Array(sheet.points).fill(-1);
    this.#foot = new Float64Array(3 * sheet.points);
    this.#began = Float64Array.from(sheet.guided.points, (p, k) => this.#along(x, p, k));
  }

  /** Takes the planes anew under these points. */
  follow(x: Float64Array): void {
    this.#ground.planesInto(this.#plane, this.#foot, this.#near, x);
  }

  /** Nearest points of the ground as last followed. */
  get foot(): Float64Array {
    return this.#foot;
  }

  height(x: Float64Array, p: number): number {
    const n = this.#plane;
    return n[4 * p]! * x[3 * p]! + n[4 * p + 1]! * x[3 * p + 1]! + n[4 * p + 2]! * x[3 * p + 2]! - n[4 * p + 3]!;
  }

  #along(x: Float64Array, p: number, k: number): number {
    const { across } = this.#sheet.guided;
    return across[3 * k]! * x[3 * p]! + across[3 * k + 1]! * x[3 * p + 1]! + across[3 * k + 2]! * x[3 * p + 2]!;
  }

  /** N·mm */
  energy(x: Float64Array): number {
    const { areas, points, guided } = this.#sheet;
    let sum = 0;
    for (let p = 0; p < points; p++) {
      const h = this.height(x, p);
      sum += areas[p]! * (this.#press * h + (h < 0 ? 0.5 * this.#stiff * h * h : 0));
    }
    for (let k = 0; k < guided.points.length; k++) {
      const way = this.#along(x, guided.points[k]!, k) - this.#began[k]!;
      sum += 0.5 * this.#guide * way * way;
    }
    return sum;
  }

  /** Marks the points that lie below their plane after a step by `step` (3 unknowns a free point). @returns whether any mark has changed */
  markInto(touching: Uint8Array, x: Float64Array, step?: Float64Array): boolean {
    const n = this.#plane;
    let changed = false;
    for (let p = 0; p < touching.length; p++) {
      const at = this.#sheet.unknown[p]!;
      let h = this.height(x, p);
      if (step && at >= 0) h += n[4 * p]! * step[at]! + n[4 * p + 1]! * step[at + 1]! + n[4 * p + 2]! * step[at + 2]!;
      const mark = h < 0 ? 1 : 0;
      if (touching[p] !== mark) changed = true;
      touching[p] = mark;
    }
    return changed;
  }

  /**
   * Adds gradient and second derivatives as if just the marked points touched; `slots` has six places a point, see
   * WrapSystem.ofPoints.
   */
  addInto(gradient: Float64Array, values: Float64Array, slots: Int32Array, x: Float64Array, touching: Uint8Array): void {
    const { areas, points, guided } = this.#sheet;
    for (let p = 0; p < points; p++) {
      const stiff = touching[p] ? areas[p]! * this.#stiff : 0;
      this.#addPlane(gradient, values, slots, p, this.#plane, 4 * p, areas[p]! * this.#press + stiff * this.height(x, p), stiff);
    }
    for (let k = 0; k < guided.points.length; k++) {
      const p = guided.points[k]!;
      this.#addPlane(gradient, values, slots, p, guided.across, 3 * k, this.#guide * (this.#along(x, p, k) - this.#began[k]!), this.#guide);
    }
  }

  /** A force along a direction, and its stiffness along the same. */
  #addPlane(gradient: Float64Array, values: Float64Array, slots: Int32Array, p: number, n: Float64Array, from: number, force: number, stiff: number): void {
    const at = this.#sheet.unknown[p]!;
    if (at < 0) return;
    for (let d = 0, k = 6 * p; d < 3; d++) {
      gradient[at + d]! += force * n[from + d]!;
      for (let e = 0; e <= d; e++, k++) values[slots[k]!]! += stiff * n[from + d]! * n[from + e]!;
    }
  }
}

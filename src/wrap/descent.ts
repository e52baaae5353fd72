import { addBendingInto, bendingEnergy } from "./bending.ts";
import type { Card } from "./card.ts";
import type { Ground } from "./ground.ts";
import { Membrane } from "./membrane.ts";
import { goInto, turnsBack } from "./newton-step.ts";
import type { Sheet } from "./sheet.ts";
import { WrapSystem } from "./system.ts";
import { Touch } from "./touch.ts";

/** One Newton step. */
export interface WrapStep {
  /** Largest way of a point, mm; Infinity when no part of the step would do. */
  readonly moveMm: number;
  /** Part of the step that was taken, 1 = all, 0 = none. */
  readonly part: number;
  /** N·mm after it, over the planes it was taken with. */
  readonly energy: number;
}

/** Longest way of a point in one step, mm: the plane under it must still mean something at its end. */
const LONGEST_MM = 3;
/** Armijo's share of the promised fall, and room for rounding. */
const FALL = 1e-4;
const ROUNDING = 1e-12;
const LEAST_PART = 1e-6;
/** Where a step takes back the last one, as when nearest points jump to and fro, the next ones are shorter, to this part. */
const SLOWEST = 1 / 16;
/** Solves for one step until the points that touch after it stay the same. */
const ROUNDS = 6;
/** Drag on every move as a part of the stretch's stiffness, 1/mm²: far below that of any move that matters. */
const DRAG = 1e-6;

/**
 * Newton's method with modes of negative stiffness left out, so that every step leads downhill. The ground under each point is a plane
 * that is taken anew before every step: where the sheet comes to rest the planes do too.
 */
export class Descent {
  /** x y z of each point; changed by every step. */
  readonly x: Float64Array;
  readonly #sheet: Sheet;
  readonly #bend: number;
  readonly #membrane: Membrane;
  readonly #touch: Touch;
  readonly #system: WrapSystem;
  readonly #trial: Float64Array;
  /** Points that touch after the step in hand, and now. */
  readonly #touching: Uint8Array;
  readonly #now: Uint8Array;
  /** Most of a step that is taken. */
  #pace = 1;
  readonly #before: Float64Array;

  constructor(sheet: Sheet, x: Float64Array, ground: Ground, card: Card) {
    this.x = x;
    this.#sheet = sheet;
    this.#bend = card.bend;
    this.#membrane = new Membrane(sheet, card.stretch);
    this.#touch = new Touch(sheet, x, ground, { press: card.press, ground: card.ground, guide: card.stretch });
    this.#system = new WrapSystem(sheet, card.bend, DRAG * card.stretch);
    this.#trial = x.slice();
    this.#before = this.#system.step.slice();
    this.#touching = new Uint8Array(sheet.points).fill(1);
    this.#now = new Uint8Array(sheet.points);
  }

  /** Height of each point and the nearest point of the ground. */
  heights(): { readonly height: Float64Array; readonly foot: Float64Array } {
    this.#touch.follow(this.x);
    return { height: Float64Array.from({ length: this.#sheet.points }, (_, p) => this.#touch.height(this.x, p)), foot: this.#touch.foot };
  }

  stretches(): { readonly most: Float64Array; readonly least: Float64Array } {
    return this.#membrane.stretches(this.x);
  }

  step(): WrapStep {
    const { x } = this;
    const { step } = this.#system;
    this.#touch.follow(x);
    const before = this.#energy(x);
    this.#before.set(step);
    const slope = this.#solve();
    if (!(slope <= 0)) return { moveMm: Infinity, part: 0, energy: before };
    this.#pace = turnsBack(step, this.#before) ? Math.max(SLOWEST, this.#pace / 2) : Math.min(1, 1.2 * this.#pace);
    let longest = 0;
    for (let i = 0; i < step.length; i += 3) longest = Math.max(longest, Math.sqrt(step[i]! ** 2 + step[i + 1]! ** 2 + step[i + 2]! ** 2));
    for (let part = Math.min(this.#pace, LONGEST_MM / longest); part > LEAST_PART; part /= 2) {
      goInto(this.#trial, this.x, this.#sheet, step, part);
      const energy = this.#energy(this.#trial);
      if (energy > before + FALL * part * slope + ROUNDING * Math.abs(before)) continue;
      x.set(this.#trial);
      return { moveMm: part * longest, part, energy };
    }
    return { moveMm: Infinity, part: 0, energy: before };
  }

  /**
   * Solves for a step, and again with the points that touch after it until those stay the same (a primal active set: what will
   * touch must already resist, or the step would go through the ground). @returns the energy's slope along the step, NaN without one
   */
  #solve(): number {
    const { gradient, values, ofTriangles, ofPoints, step } = this.#system;
    const { x } = this;
    const system = this.#system, touch = this.#touch, marks = this.#touching;
    system.clear();
    this.#membrane.addInto(gradient, values, ofTriangles, x);
    addBendingInto(gradient, this.#sheet, x, this.#bend);
    system.keep();
    for (let round = 0; round < ROUNDS; round++) {
      system.back();
      touch.addInto(gradient, values, ofPoints, x, marks);
      if (!system.solve()) return NaN;
      if (!touch.markInto(marks, x, step)) break;
    }
    system.back();
    touch.markInto(this.#now, x);
    touch.addInto(gradient, values, ofPoints, x, this.#now);
    let slope = 0;
    for (let i = 0; i < step.length; i++) slope += gradient[i]! * step[i]!;
    return slope;
  }

  #energy(x: Float64Array): number {
    return this.#touch.energy(x) + this.#bend * bendingEnergy(this.#sheet, x) + this.#membrane.energy(x);
  }
}

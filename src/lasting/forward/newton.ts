import { addBendingInto, bendingEnergy } from "#wrap/bending.ts";
import { goInto, turnsBack } from "#wrap/newton-step.ts";
import type { Sheet } from "#wrap/sheet.ts";
import { WrapSystem } from "#wrap/system.ts";
import type { Bars } from "./bars.ts";
import type { Contact } from "./contact.ts";
import type { Friction } from "./friction.ts";
import type { Holds } from "./holds.ts";
import type { LawMembrane } from "./law-membrane.ts";

/** All that has energy or force in a sheet that is pulled over a form. */
export interface Parts {
  readonly sheet: Sheet;
  readonly membrane: LawMembrane;
  /** Bending stiffness per width, N·mm. */
  readonly bend: number;
  readonly bars: Bars | undefined;
  readonly contact: Contact;
  readonly friction: Friction;
  readonly holds: Holds;
}

export interface NewtonStep {
  /** Largest way of a point, mm; 0 when no part of the step would do. */
  readonly moveMm: number;
  /** Part of the step that was taken, 1 = all, 0 = none. */
  readonly part: number;
  /** Whether all second derivatives counted, so that a short step tells of a short way left. */
  readonly whole: boolean;
}

/** Longest way of a point in one step, mm: the surface under it must still mean something at its end. */
const LONGEST_MM = 4;
/** Armijo's share of the promised fall, and room for rounding. */
const FALL = 1e-4;
const ROUNDING = 1e-12;
const LEAST_PART = 1e-5;
/** Where less of a step would do, the stiffness below 0 in its matrix has led astray. */
const GOOD_PART = 0.25;
/** Where less of a step would do, what was thought to touch after it has. */
const FAIR_PART = 0.05;
/** Where a step takes back the last one, the next ones are shorter, to this part. */
const SLOWEST = 1 / 16;
/** Steps without the residual coming down to this share after which steps get shorter. */
const RING = 30;
const CALMER = 0.8;
/** Solves for one step until the points that touch after it stay the same. */
const ROUNDS = 6;
/** After a matrix that was not positive definite, steps without stiffness below 0 before all of it is tried again; doubled up to the last. */
const PATIENCE = 2;
const MOST_PATIENCE = 4;
/** A whole step shorter than this is near enough to try all of it again, mm. */
const NEAR_MM = 0.2;
/** A matrix with a little stiffness below 0 is helped over it by so much more against every move, N/mm³: first, each time more, at most. */
const SHIFT = { first: 0.0001, more: 10, most: 0.02 };

/**
 * Newton's method on the incremental potential. Each step takes the form under each point and the normal forces anew, then lowers the
 * energy over them. All second derivatives count while the matrix stays positive definite; else what has stiffness below 0 is left
 * out for some steps, and with a convex law every step leads downhill.
 */
export class Newton {
  readonly x: Float64Array;
  readonly #parts: Parts;
  readonly #system: WrapSystem;
  readonly #slope: Float64Array;
  readonly #trial: Float64Array;
  readonly #before: Float64Array;
  /** Points that touch after the step in hand, and now. */
  readonly #touching: Uint8Array;
  readonly #now: Uint8Array;
  #pace = 1;
  /** Most of a step that is taken, the least residual yet and the steps since. */
  #most = 1;
  #best = Infinity;
  #since = 0;
  #patience = PATIENCE;
  #wait = 0;
  #whole = true;
  /** Stiffness against every move that is added to a matrix that is not positive definite, N/mm³. */
  #shift = 0;

  /** `drag` in N/mm³ resists every move. */
  constructor(parts: Parts, x: Float64Array, drag: number) {
    this.x = x;
    this.#parts = parts;
    this.#system = new WrapSystem(parts.sheet, parts.bend, drag, parts.bars?.pairs);
    this.#slope = this.#system.gradient.slice();
    this.#trial = x.slice();
    this.#before = this.#system.step.slice();
    this.#touching = new Uint8Array(parts.sheet.points);
    this.#now = new Uint8Array(parts.sheet.points);
  }

  /** Begins anew after loads or places have changed. */
  reset(): void {
    this.#pace = this.#most = 1;
    this.#best = Infinity;
    this.#since = 0;
    this.#wait = 0;
    this.#shift = 0;
    this.#patience = PATIENCE;
    this.#before.fill(0);
  }

  /** Takes form, normal forces, gradient and second derivatives anew. @returns the largest force on a point that nothing answers, N */
  look(): number {
    const { contact } = this.#parts;
    contact.follow(this.x);
    contact.markInto(this.#now, this.x);
    this.#touching.set(this.#now);
    this.#whole = this.#wait === 0;
    this.#assemble();
    let most = 0;
    const g = this.#slope;
    for (let i = 0; i < g.length; i += 3) most = Math.max(most, Math.sqrt(g[i]! * g[i]! + g[i + 1]! * g[i + 1]! + g[i + 2]! * g[i + 2]!));
    this.#slowDown(most);
    return Number.isFinite(g.reduce((a, b) => a + b, 0)) ? most : Infinity;
  }

  /** Where steps go round in a ring, as when points come and go, shorter ones lead out of it. */
  #slowDown(residual: number): void {
    this.#since++;
    if (residual < CALMER * this.#best) [this.#best, this.#since] = [residual, 0];
    if (this.#since < RING) return;
    this.#most = Math.max(SLOWEST, 0.6 * this.#most);
    this.#best = residual;
    this.#since = 0;
  }

  /** Sums up all but the contact and keeps it; the true gradient goes to #slope. */
  #assemble(): void {
    const { gradient, values, ofTriangles, ofPairs, ofPoints } = this.#system;
    const { sheet, membrane, bend, bars, contact, friction, holds } = this.#parts;
    const { x } = this;
    this.#system.clear();
    membrane.addInto(gradient, values, ofTriangles, x, this.#whole);
    if (bend > 0) addBendingInto(gradient, sheet, x, bend);
    bars?.addInto(gradient, values, ofPairs, x, this.#whole);
    holds.addInto(gradient, values, ofPoints, x);
    contact.bear(x, gradient);
    friction.follow(x);
    friction.addInto(gradient, values, ofPoints, x);
    this.#system.keep();
    contact.addInto(gradient, values, ofPoints, x, this.#now, this.#whole);
    this.#slope.set(gradient);
  }

  /** One step from where {@link look} last looked. */
  step(): NewtonStep {
    this.#before.set(this.#system.step);
    if (this.#wait > 0) this.#wait--;
    else {
      this.#shift = this.#shift > SHIFT.first ? this.#shift / SHIFT.more : 0;
      const taken = this.#goDownhill(ROUNDS, GOOD_PART);
      if (taken.part > 0) return taken;
      this.#leaveOut();
    }
    const taken = this.#goDownhill(ROUNDS, FAIR_PART);
    if (taken.part > 0) {
      if (taken.part > 0.5 && taken.moveMm < NEAR_MM) this.#wait = 0;
      return taken;
    }
    // What will touch may lead astray; what touches now does not.
    this.#touching.set(this.#now);
    return this.#goDownhill(1, LEAST_PART);
  }

  #goDownhill(rounds: number, fair: number): NewtonStep {
    const { x } = this;
    const { step } = this.#system;
    const slope = this.#solve(rounds);
    if (!(slope < 0)) return { moveMm: 0, part: slope === 0 ? 1 : 0, whole: this.#whole };
    this.#pace = turnsBack(step, this.#before) ? Math.max(SLOWEST, this.#pace / 2) : Math.min(this.#most, 1.2 * this.#pace);
    let longest = 0;
    for (let i = 0; i < step.length; i += 3) longest = Math.max(longest, Math.sqrt(step[i]! ** 2 + step[i + 1]! ** 2 + step[i + 2]! ** 2));
    const before = this.#energy(x);
    const most = Math.min(this.#pace, LONGEST_MM / longest), least = most * fair;
    for (let part = most; part >= least; part /= 2) {
      goInto(this.#trial, this.x, this.#parts.sheet, step, part);
      const energy = this.#energy(this.#trial);
      if (!(energy <= before + FALL * part * slope + ROUNDING * Math.abs(before))) continue;
      x.set(this.#trial);
      return { moveMm: part * longest, part, whole: this.#whole && this.#shift === 0 };
    }
    return { moveMm: 0, part: 0, whole: this.#whole };
  }

  /** Leaves stiffness below 0 out, now and for some steps. */
  #leaveOut(): void {
    this.#whole = false;
    this.#wait = this.#patience;
    this.#patience = Math.min(MOST_PATIENCE, 2 * this.#patience);
    this.#touching.set(this.#now);
    this.#assemble();
  }

  /**
   * Solves for a step, and again with the points that touch after it until those stay the same (a primal active set: what will touch
   * must already resist, or the step would go through the form).
   */
  #solve(rounds: number): number {
    const { gradient, values, ofPoints, step } = this.#system;
    const { contact } = this.#parts;
    for (let round = 0; round < rounds; round++) {
      this.#system.back();
      contact.addInto(gradient, values, ofPoints, this.x, this.#touching, this.#whole);
      if (!this.#factored()) return NaN;
      if (!contact.markInto(this.#touching, this.x, step)) break;
    }
    let slope = 0;
    for (let i = 0; i < step.length; i++) slope += this.#slope[i]! * step[i]!;
    return slope;
  }

  /** Solves for the step; a whole matrix that is not positive definite is helped by a shift. */
  #factored(): boolean {
    const { values, ofPoints } = this.#system;
    const { areas } = this.#parts.sheet;
    for (let shift = this.#whole ? this.#shift : 0, before = 0; ; shift = Math.max(SHIFT.first, SHIFT.more * shift)) {
      if (shift > SHIFT.most) return false;
      if (shift > before) for (let p = 0; p < areas.length; p++) for (let d = 0; d < 3; d++) if (ofPoints[6 * p]! >= 0) values[ofPoints[6 * p + (d * (d + 3)) / 2]!]! += (shift - before) * areas[p]!;
      before = shift;
      if (this.#system.solve()) {
        if (this.#whole) this.#shift = shift;
        return true;
      }
      if (!this.#whole) return false;
    }
  }

  #energy(x: Float64Array): number {
    const { sheet, membrane, bend, bars, contact, friction, holds } = this.#parts;
    return membrane.energy(x) + bend * bendingEnergy(sheet, x) + (bars?.energy(x) ?? 0) + contact.energy(x) + friction.energy(x) + holds.energy(x);
  }
}

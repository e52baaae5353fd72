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
  /** 1 where all second derivatives counted, so that a short step tells of a short way left; else how much shorter it must be. */
  readonly trust: number;
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
/** In haste: until those that do not matter less than this share of the fall that is promised. */
const TRIFLE = 0.03;
/**
 * How second derivatives count, one rung after the other until the matrix is positive definite and leads on: with all that is pushed
 * together, with a part of it, without it, and at last without the bend of the form too. {@link NewtonStep.trust} goes with each.
 */
const RUNGS = [
  { push: 1, bent: true, trust: 1 },
  { push: 0.9, bent: true, trust: 0.1 },
  { push: 0.5, bent: true, trust: 0.01 },
  { push: 0, bent: true, trust: 0.01 },
  { push: 0, bent: false, trust: 0.01 },
] as const;
/** Steps on one rung before the rung below is tried again; doubled up to the last. */
const PATIENCE = 2;
const MOST_PATIENCE = 4;

/**
 * Newton's method on the incremental potential. Each step takes the form under each point and the normal forces anew, then lowers the
 * energy over them. All second derivatives count while the matrix stays positive definite; else what has stiffness below 0 counts
 * less for some steps, and with a convex law every step leads downhill in the end.
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
  #trifle = 0;
  #pace = 1;
  /** Most of a step that is taken, the least residual yet and the steps since. */
  #most = 1;
  #best = Infinity;
  #since = 0;
  #patience = PATIENCE;
  #wait = 0;
  /** Rung that the matrix in hand was made on, and the first one of the next step. */
  #rung = 0;
  #first = 0;

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

  /**
   * Begins anew after loads or places have changed. In `haste` a step may mistake points that hardly matter: half the time, the same rest, but
   * where friction lets the way decide it ends elsewhere by as much as it lets points slip.
   */
  reset(haste: boolean): void {
    this.#trifle = haste ? TRIFLE : 0;
    this.#pace = this.#most = 1;
    this.#best = Infinity;
    this.#since = 0;
    this.#wait = this.#first = 0;
    this.#patience = PATIENCE;
    this.#before.fill(0);
  }

  /** Takes form, normal forces, gradient and second derivatives anew. @returns the largest force on a point that nothing answers, N */
  look(): number {
    const { contact } = this.#parts;
    contact.follow(this.x);
    contact.markInto(this.#now, this.x);
    this.#touching.set(this.#now);
    this.#rung = this.#first;
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
    const { x } = this, { push, bent } = RUNGS[this.#rung]!;
    this.#system.clear();
    membrane.addInto(gradient, values, ofTriangles, x, push);
    if (bend > 0) addBendingInto(gradient, sheet, x, bend);
    bars?.addInto(gradient, values, ofPairs, x, push);
    holds.addInto(gradient, values, ofPoints, x);
    contact.bear(x, gradient);
    friction.follow(x);
    friction.addInto(gradient, values, ofPoints, x);
    this.#system.keep();
    contact.addInto(gradient, values, ofPoints, x, this.#now, bent);
    this.#slope.set(gradient);
  }

  /** One step from where {@link look} last looked. */
  step(): NewtonStep {
    this.#before.set(this.#system.step);
    for (; ; this.#rung++, this.#assemble()) {
      const last = this.#rung === RUNGS.length - 1;
      const taken = this.#goDownhill(ROUNDS, last ? FAIR_PART : GOOD_PART);
      if (taken.part > 0) this.#choose();
      if (taken.part > 0) return taken;
      this.#touching.set(this.#now);
      // What will touch may lead astray; what touches now does not.
      if (last) return this.#goDownhill(1, LEAST_PART);
    }
  }

  /** Chooses where the next step begins: on the rung that has just led on, or after some patience on the one below. */
  #choose(): void {
    if (this.#rung > this.#first) {
      this.#first = this.#rung;
      this.#wait = this.#patience;
      this.#patience = Math.min(MOST_PATIENCE, 2 * this.#patience);
    } else if (this.#rung > 0 && --this.#wait <= 0) this.#first--;
  }

  #goDownhill(rounds: number, fair: number): NewtonStep {
    const { x } = this;
    const { step } = this.#system;
    const { trust } = RUNGS[this.#rung]!, slope = this.#solve(rounds);
    if (!(slope < 0)) return { moveMm: 0, part: slope === 0 ? 1 : 0, trust };
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
      return { moveMm: part * longest, part, trust };
    }
    return { moveMm: 0, part: 0, trust };
  }

  /**
   * Solves for a step, and again with the points that touch after it until those stay the same (a primal active set: what will touch
   * must already resist, or the step would go through the form). @returns the slope along it, NaN where the matrix is not positive definite
   */
  #solve(rounds: number): number {
    const { gradient, values, ofPoints, step } = this.#system;
    const { contact } = this.#parts;
    for (let round = 1; ; round++) {
      this.#system.back();
      contact.addInto(gradient, values, ofPoints, this.x, this.#touching, RUNGS[this.#rung]!.bent);
      if (!this.#system.solve()) return NaN;
      const wrong = contact.markInto(this.#touching, this.x, step);
      let slope = 0;
      for (let i = 0; i < step.length; i++) slope += this.#slope[i]! * step[i]!;
      if (round === rounds || wrong <= -this.#trifle * slope) return slope;
    }
  }

  #energy(x: Float64Array): number {
    const { sheet, membrane, bend, bars, contact, friction, holds } = this.#parts;
    return membrane.energy(x) + bend * bendingEnergy(sheet, x) + (bars?.energy(x) ?? 0) + contact.energy(x) + friction.energy(x) + holds.energy(x);
  }
}

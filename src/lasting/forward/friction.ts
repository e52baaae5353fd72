import type { Sheet } from "#wrap/sheet.ts";
import type { Contact } from "./contact.ts";

/** A point that sticks gives way by less than this, mm. */
const slipMm = 0.01;

/**
 * Coulomb friction as a potential that is made anew as the sheet moves on: μ N φ(s), s the slip in the form's tangent plane from the
 * point's anchor, N the normal force of the step before, φ' = 2 s/ε − s²/ε² below ε = {@link slipMm} and 1 beyond (Li et al. 2020, Incremental
 * potential contact, ACM TOG 39(4); from memory). At rest N is that of the shape at rest.
 *
 * Anchors follow as in a law of plasticity: at {@link begin} a point that has slipped keeps ε of its slip, so that nothing moves by
 * beginning again and no point creeps. A point that touches for the first time is anchored where it touched.
 */
export class Friction {
  share: number;
  readonly #sheet: Sheet;
  readonly #contact: Contact;
  readonly #anchor: Float64Array;
  /** Normal force that counts, N; points that have touched since the last beginning. */
  readonly #normal: Float64Array;
  readonly #touched: Uint8Array;
  /** Slip of the point in hand. */
  readonly #s = new Float64Array(3);

  constructor(sheet: Sheet, contact: Contact, share: number, x: Float64Array) {
    this.#sheet = sheet;
    this.#contact = contact;
    this.share = share;
    this.#anchor = x.slice();
    this.#normal = new Float64Array(sheet.points);
    this.#touched = new Uint8Array(sheet.points);
  }

  /** Begins an increment at x, planes just followed. */
  begin(x: Float64Array): void {
    const s = this.#s;
    for (let p = 0; p < this.#touched.length; p++) {
      const size = this.#slip(x, p);
      const kept = this.#touched[p] && size > 0 ? Math.min(1, slipMm / size) : 0;
      for (let d = 0; d < 3; d++) this.#anchor[3 * p + d] = x[3 * p + d]! - kept * s[d]!;
      this.#touched[p] = this.#contact.near(x, p) ? 1 : 0;
    }
  }

  /** Forgets all slip: the sheet was laid down here. */
  forget(x: Float64Array): void {
    this.#anchor.set(x);
    this.#touched.fill(0);
  }

  /** Takes the normal forces anew, the contact having just found what bears. */
  follow(x: Float64Array): void {
    for (let p = 0; p < this.#normal.length; p++) {
      const force = this.#contact.bearing[p]!;
      this.#normal[p] = force;
      if (force > 0) this.#touched[p] = 1;
      else if (!this.#touched[p]) for (let d = 0; d < 3; d++) this.#anchor[3 * p + d] = x[3 * p + d]!;
    }
  }

  /** Slip of p to #s. @returns its length */
  #slip(x: Float64Array, p: number): number {
    const n = this.#contact.plane, s = this.#s;
    let along = 0;
    for (let d = 0; d < 3; d++) {
      s[d] = x[3 * p + d]! - this.#anchor[3 * p + d]!;
      along += s[d]! * n[4 * p + d]!;
    }
    for (let d = 0; d < 3; d++) s[d]! -= along * n[4 * p + d]!;
    return Math.sqrt(s[0]! * s[0]! + s[1]! * s[1]! + s[2]! * s[2]!);
  }

  /** N·mm */
  energy(x: Float64Array): number {
    if (this.share === 0) return 0;
    let sum = 0;
    for (let p = 0; p < this.#normal.length; p++) {
      if (this.#normal[p] === 0) continue;
      const s = this.#slip(x, p);
      sum += this.#normal[p]! * (s < slipMm ? (s * s * (1 - s / (3 * slipMm))) / slipMm : s - slipMm / 3);
    }
    return this.share * sum;
  }

  /** Adds gradient and second derivatives, none of them below 0; six places a point as in WrapSystem.ofPoints. */
  addInto(gradient: Float64Array, values: Float64Array, slots: Int32Array, x: Float64Array): void {
    if (this.share === 0) return;
    const n = this.#contact.plane, s = this.#s;
    for (let p = 0; p < this.#normal.length; p++) {
      const at = this.#sheet.unknown[p]!;
      if (at < 0 || this.#normal[p] === 0) continue;
      const size = this.#slip(x, p), limit = this.share * this.#normal[p]!;
      // Force per slip, and the stiffness along the slip less that across it, over the slip's square.
      const secant = size < slipMm ? (limit * (2 - size / slipMm)) / slipMm : limit / size;
      const bent = size < slipMm ? (size > 0 ? -limit / (slipMm * slipMm * size) : 0) : -secant / (size * size);
      for (let d = 0, k = 6 * p; d < 3; d++) {
        gradient[at + d]! += secant * s[d]!;
        for (let e = 0; e <= d; e++, k++) values[slots[k]!]! += secant * ((d === e ? 1 : 0) - n[4 * p + d]! * n[4 * p + e]!) + bent * s[d]! * s[e]!;
      }
    }
  }

  /** Force of friction on each point, x y z N. */
  forces(x: Float64Array): Float64Array {
    const forces = new Float64Array(3 * this.#normal.length);
    for (let p = 0; p < this.#normal.length; p++) {
      const size = this.#slip(x, p), limit = this.share * this.#normal[p]!;
      if (limit === 0) continue;
      const secant = size < slipMm ? (limit * (2 - size / slipMm)) / slipMm : limit / size;
      for (let d = 0; d < 3; d++) forces[3 * p + d] = -secant * this.#s[d]!;
    }
    return forces;
  }
}

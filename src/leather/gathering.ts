import { must } from "#base/bug.ts";
import { Rotated } from "./combined.ts";
import { FirmPleats } from "./firm-pleats.ts";
import type { Law } from "./law.ts";
import { Pleats } from "./pleats.ts";
import { stripForce } from "./uniaxial.ts";

/** Share of a sheet's stiffness that is left when it lies in pleats (our own choice: enough for a solver to have something to hold on to). */
export const pleatShare = 0.02;

/**
 * A sheet that takes only so much push and lies in pleats beyond. W(E) = min over A ⪰ 0 of law(E + A) + Σ : A + ½ b |A|², where A is what
 * the pleats take up: the sum of a convex law and a convex price of pleats is convex again, its stiffness nowhere negative, and nothing has
 * to be left out of it. No principal stress of S + Σ falls below −b times the largest pleat.
 */
class Gathering implements Law {
  readonly law: Law;
  readonly limit: number;
  readonly share: number;
  private readonly pleats: Pleats;
  private readonly seen = new Float64Array(9);

  constructor(law: Law, limit: number, share: number) {
    this.law = law;
    this.limit = limit;
    this.share = share;
    const [mean, difference, askew] = pushTaken(law, limit);
    const from = Math.min(limit, -0.01);
    this.pleats = new Pleats(law, { mean, difference, askew }, ((share / (1 - share)) * pushTaken(law, from)[0]) / -from);
  }

  energy(e1: number, e2: number, g: number): number {
    this.law.into(this.seen, e1, e2, g);
    return this.pleats.begin(this.seen) && this.pleats.settle(e1, e2, g) ? this.pleats.energy(e1, e2, g) : this.law.energy(e1, e2, g);
  }

  into(out: Float64Array, e1: number, e2: number, g: number): void {
    this.law.into(out, e1, e2, g);
    // Most of an upper is pulled: nothing more to do there.
    if (this.pleats.begin(out) && this.pleats.settle(e1, e2, g)) this.pleats.into(out);
  }

  /** Largest strain that the pleats take up; 0 where there are none. */
  deepest(e1: number, e2: number, g: number): number {
    return this.pleats.settle(e1, e2, g) ? this.pleats.deepest() : 0;
  }
}

const near = Math.sqrt(2 + Math.SQRT2) / 2, far = Math.sqrt(2 - Math.SQRT2) / 2;
/** Eight ways, 22.5 degrees apart, and the cosine and sine of twice their angle. */
const ways = [
  [1, 0, 1, 0], [near, far, Math.SQRT1_2, Math.SQRT1_2], [Math.SQRT1_2, Math.SQRT1_2, 0, 1], [far, near, -Math.SQRT1_2, Math.SQRT1_2],
  [0, 1, -1, 0], [-far, near, -Math.SQRT1_2, -Math.SQRT1_2], [-Math.SQRT1_2, Math.SQRT1_2, 0, -1], [-near, far, Math.SQRT1_2, -Math.SQRT1_2],
] as const;

/**
 * The tensor Σ whose push nᵀΣn comes nearest to what a strip cut along n takes when it is pushed together to the limit: its mean,
 * half the difference of its ends, and its part askew, N/mm.
 */
function pushTaken(law: Law, limit: number): [mean: number, difference: number, askew: number] {
  const stretch = Math.sqrt(1 + 2 * limit);
  let mean = 0, difference = 0, askew = 0;
  for (const [cos, sin, cos2, sin2] of ways) {
    const push = -stripForce(law, cos, sin, stretch).forcePerMm / stretch;
    mean += push / 8;
    difference += (push * cos2) / 4;
    askew += (push * sin2) / 4;
  }
  return [mean, difference, askew];
}

/**
 * The law of a sheet that gathers when it is pushed together, and lies in pleats beyond. Where a sheet gets narrower only because it is
 * pulled along, nothing gathers. Of a law that already gathers down to the same limit nothing is changed.
 * @param limit Green's strain, above −0.5 and at most 0, down to which a free strip of it can be pushed together without pleats
 * @param share of the stiffness that is left in the direction of the pleats, above 0 and below 1
 */
export function gathering(law: Law, limit: number, share = pleatShare): Law {
  must(limit > -0.5 && limit <= 0 && share > 0 && share < 1, `gathering down to ${limit} with ${share} left`);
  return law instanceof Gathering && law.limit === limit && law.share === share ? law : new Gathering(law, limit, share);
}

/** Largest Green's strain that lies in pleats under this strain of the whole: 0 where there are none, and for a law that does not gather. */
export function pleatsOf(law: Law, e1: number, e2: number, g: number): number {
  if (law instanceof Rotated) return law.asked(pleatsOf, e1, e2, g);
  if (law instanceof FirmPleats) return pleatsOf(law.within, e1, e2, g);
  return law instanceof Gathering ? law.deepest(e1, e2, g) : 0;
}

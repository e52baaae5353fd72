import type { Law } from "./law.ts";

/**
 * A thin sheet of rubber that keeps its volume, in plane stress: W = μ/2 (tr C + 1/det C − 3), C = 1 + 2E (Treloar; any text on rubber
 * elasticity). Alike in every direction and convex in E. No leather; it has closed forms to test solvers against. Energy is infinite and
 * stress not a number where C is not positive, which no sheet in space can reach.
 */
export class NeoHookean implements Law {
  readonly mu: number;

  /** @param mu shear modulus times thickness, N/mm */
  constructor(mu: number) {
    this.mu = mu;
  }

  energy(e1: number, e2: number, g: number): number {
    const det = (1 + 2 * e1) * (1 + 2 * e2) - g * g;
    return det > 0 && 1 + e1 + e2 > 0 ? 0.5 * this.mu * (2 * (e1 + e2) - 1 + 1 / det) : Infinity;
  }

  into(out: Float64Array, e1: number, e2: number, g: number): void {
    const c1 = 1 + 2 * e1, c2 = 1 + 2 * e2;
    const det = c1 * c2 - g * g;
    const possible = det > 0 && c1 + c2 > 0;
    // First and second derivative of 1/det, halved and times μ.
    const once = possible ? this.mu / (det * det) : NaN;
    const twice = (4 * once) / det;
    out[0] = this.mu - once * c2;
    out[1] = this.mu - once * c1;
    out[2] = once * g;
    out[3] = twice * c2 * c2;
    out[4] = twice * c1 * c1;
    out[5] = twice * g * g + once;
    out[6] = twice * c1 * c2 - 2 * once;
    out[7] = -twice * c2 * g;
    out[8] = -twice * c1 * g;
  }
}

/** @param mu shear modulus times thickness, N/mm */
export function neoHookean(mu: number): Law {
  return new NeoHookean(mu);
}

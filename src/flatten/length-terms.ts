import type { BlockPattern } from "#solve/block-pattern.ts";

/** Terms κ (d − t)² on the distance d of two vertices in the plane: edges that must keep their length, and ties. */
export interface LengthTerms {
  readonly a: Uint32Array;
  readonly b: Uint32Array;
  /** t, mm */
  readonly target: Float64Array;
  /** κ, 1/mm² */
  readonly stiffness: Float64Array;
}

export function lengthEnergy({ a, b, target, stiffness }: LengthTerms, uv: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) {
    const du = uv[2 * b[k]!]! - uv[2 * a[k]!]!;
    const dv = uv[2 * b[k]! + 1]! - uv[2 * a[k]! + 1]!;
    const off = Math.sqrt(du * du + dv * dv) - target[k]!;
    sum += stiffness[k]! * off * off;
  }
  return sum;
}

/** Adds the gradient alone. */
export function addLengthGradientInto(gradient: Float64Array, { a, b, target, stiffness }: LengthTerms, uv: Float64Array): void {
  for (let k = 0; k < a.length; k++) {
    const p = 2 * Math.min(a[k]!, b[k]!);
    const q = 2 * Math.max(a[k]!, b[k]!);
    const du = uv[q]! - uv[p]!;
    const dv = uv[q + 1]! - uv[p + 1]!;
    const d = Math.sqrt(du * du + dv * dv);
    const pull = 2 * stiffness[k]! * (d > 0 ? 1 - target[k]! / d : 0);
    gradient[p]! -= pull * du;
    gradient[p + 1]! -= pull * dv;
    gradient[q]! += pull * du;
    gradient[q + 1]! += pull * dv;
  }
}

/**
 * Adds gradient and Hessian. A shortened length pushes, which makes its crosswise curvature negative; `clamped` leaves that out.
 * Every pair must be in the pattern.
 */
export function addLengthDerivativesInto(gradient: Float64Array, values: Float64Array, terms: LengthTerms, pattern: BlockPattern, uv: Float64Array, clamped: boolean): void {
  addLengthGradientInto(gradient, terms, uv);
  for (let k = 0; k < terms.a.length; k++) {
    const p = Math.min(terms.a[k]!, terms.b[k]!);
    const q = Math.max(terms.a[k]!, terms.b[k]!);
    const stiff = 2 * terms.stiffness[k]!;
    const du = uv[2 * q]! - uv[2 * p]!;
    const dv = uv[2 * q + 1]! - uv[2 * p + 1]!;
    const d = Math.sqrt(du * du + dv * dv);
    const pull = d > 0 ? 1 - terms.target[k]! / d : 0;
    const across = stiff * (clamped && pull < 0 ? 0 : pull);
    const [nu, nv] = d > 0 ? [du / d, dv / d] : [1, 0];
    const uu = across + (stiff - across) * nu * nu;
    const uv2 = (stiff - across) * nu * nv;
    const vv = across + (stiff - across) * nv * nv;
    for (const at of [4 * p, 4 * q]) {
      values[at]! += uu;
      values[at + 2]! += uv2;
      values[at + 3]! += vv;
    }
    const at = 4 * pattern.slot(p, q);
    values[at]! -= uu;
    values[at + 1]! -= uv2;
    values[at + 2]! -= uv2;
    values[at + 3]! -= vv;
  }
}

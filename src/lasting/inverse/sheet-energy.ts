import type { Frames } from "#flatten/frames.ts";
import { jacobianInto, numbersOfATriangle, scatter, scatterGradient } from "#flatten/scatter.ts";
import type { Law } from "#leather/law.ts";

/** Direction of the law's axis 1 in every triangle of the flat sheet. */
export interface Axes {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/** What the sheet is made of: one law, or several and for each triangle which. */
export type Material = Law | { readonly laws: readonly Law[]; readonly of: Uint8Array };

/** Numbers a triangle in {@link SheetEnergy.state}: F₁₁ F₁₂ F₂₁ F₂₂, force flows on the last σ₁₁ σ₂₂ σ₁₂ times its area there (N·mm), energy per flat area. */
export const stateWidth = 8;

// Scratch of one triangle: F C(11 22 12) S(11 22 12) D(11 22 33 12 13 23) W det, law axes.
const LOCAL = 16;

/**
 * Energy of a flat sheet X that takes a given shape x in space, as a function of X: Σ area · det J · W(½(J⁻ᵀJ⁻¹ − 1)), J = ∂X/∂x in each
 * triangle's own frame. With K = δJ J⁻¹, C = J⁻ᵀJ⁻¹, N = CS: first variation (W 1 − N) : K, second 2(W − tr N) det K + S : KᵀCK + D : (CK)²,
 * each times the flat area; derived in docs/method/inverse.md.
 */
export class SheetEnergy {
  readonly #triangles: Uint32Array;
  readonly #slots: Uint32Array;
  readonly #laws: readonly Law[];
  readonly #lawOf: Uint8Array | undefined;
  /** −1 where the sheet is seen from its other side. */
  readonly #hand: 1 | -1;
  readonly #axes: Axes | undefined;
  readonly #stress = new Float64Array(9);
  readonly #local = new Float64Array(LOCAL);
  readonly #k = new Float64Array(10);
  /** Direction of the sheet's own x axis as it lies. */
  turn: readonly [cos: number, sin: number] = [1, 0];
  /** What the last call of {@link addDerivativesInto} or {@link addGradientInto} found, {@link stateWidth} numbers a triangle. */
  readonly state: Float64Array;

  constructor({ triangles, slots }: { readonly triangles: Uint32Array; readonly slots: Uint32Array }, material: Material, hand: 1 | -1, axes?: Axes) {
    this.#triangles = triangles;
    this.#slots = slots;
    this.#laws = "of" in material ? material.laws : [material];
    this.#lawOf = "of" in material ? material.of : undefined;
    this.#hand = hand;
    this.#axes = axes;
    this.state = new Float64Array((stateWidth * triangles.length) / 3);
  }

  /** N·mm; Infinity where a triangle is folded over or flat. */
  energy({ of, area }: Frames, uv: Float64Array): number {
    const triangles = this.#triangles, j = new Float64Array(numbersOfATriangle), h = this.#local;
    let sum = 0;
    for (let k = 0, f = 0; k < triangles.length; k += 3, f += 4) {
      jacobianInto(j, of, f, uv, triangles, k);
      if (!this.#strain(h, j, k / 3)) return Infinity;
      sum += of[f + 3]! * area * h[15]! * this.#law(k / 3).energy(0.5 * (h[4]! - 1), 0.5 * (h[5]! - 1), this.#hand * h[6]!);
    }
    return sum;
  }

  /**
   * Adds gradient and Hessian at uv (no triangle folded over). With `clamped` pushes and what else could make a triangle's Hessian negative
   * is left out of it.
   */
  addDerivativesInto(gradient: Float64Array, values: Float64Array, { of, area }: Frames, uv: Float64Array, clamped: boolean): void {
    const triangles = this.#triangles, j = new Float64Array(numbersOfATriangle), h = this.#local;
    for (let k = 0, f = 0, t = 0; k < triangles.length; k += 3, f += 4, t++) {
      jacobianInto(j, of, f, uv, triangles, k);
      this.#measure(h, j, t, of[f + 3]! * area);
      hessianInto(this.#k, h, clamped);
      this.#toRows(j, h, t, of[f + 3]! * area);
      scatter(gradient, values, of, f, triangles, this.#slots, k, j);
    }
  }

  addGradientInto(gradient: Float64Array, { of, area }: Frames, uv: Float64Array): void {
    const triangles = this.#triangles, j = new Float64Array(numbersOfATriangle), h = this.#local;
    for (let k = 0, f = 0, t = 0; k < triangles.length; k += 3, f += 4, t++) {
      jacobianInto(j, of, f, uv, triangles, k);
      this.#measure(h, j, t, of[f + 3]! * area);
      this.#gradientToRows(j, h, t, of[f + 3]! * area);
      scatterGradient(gradient, of, f, triangles, k, j);
    }
  }

  #law(t: number): Law {
    return this.#laws[this.#lawOf ? this.#lawOf[t]! : 0]!;
  }

  /** Cosine and sine of the law's axis 1 as the sheet lies, in triangle t. */
  #axis(t: number): readonly [number, number] {
    const [c, s] = this.turn;
    if (!this.#axes) return this.turn;
    const cos = this.#axes.cos[t]!, sin = this.#hand * this.#axes.sin[t]!;
    return [c * cos - s * sin, s * cos + c * sin];
  }

  /** F = J⁻¹ and C in the law's axes, and det J; false where the triangle is folded over. */
  #strain(h: Float64Array, j: Float64Array, t: number): boolean {
    const [cos, sin] = this.#axis(t);
    const a = cos * j[10]! + sin * j[12]!, b = cos * j[11]! + sin * j[13]!;
    const c = cos * j[12]! - sin * j[10]!, d = cos * j[13]! - sin * j[11]!;
    const det = a * d - b * c;
    if (!(det > 0)) return false;
    const inverse = 1 / det;
    const f11 = d * inverse, f12 = -b * inverse, f21 = -c * inverse, f22 = a * inverse;
    h[0] = f11;
    h[1] = f12;
    h[2] = f21;
    h[3] = f22;
    h[4] = f11 * f11 + f21 * f21;
    h[5] = f12 * f12 + f22 * f22;
    h[6] = f11 * f12 + f21 * f22;
    h[15] = det;
    return true;
  }

  /** Strain, stress and stiffness of a triangle into h, what is kept of it into the state. */
  #measure(h: Float64Array, j: Float64Array, t: number, area: number): void {
    const hand = this.#hand, o = this.#stress, { state } = this;
    this.#strain(h, j, t);
    const e1 = 0.5 * (h[4]! - 1), e2 = 0.5 * (h[5]! - 1), g = hand * h[6]!;
    const law = this.#law(t);
    law.into(o, e1, e2, g);
    const w = law.energy(e1, e2, g);
    const s1 = o[0]!, s2 = o[1]!, s3 = hand * o[2]!;
    const [f11, f12, f21, f22] = [h[0]!, h[1]!, h[2]!, h[3]!];
    h[7] = s1;
    h[8] = s2;
    h[9] = s3;
    h[14] = w;
    const at = stateWidth * t, whole = area * h[15]!;
    const [cos, sin] = this.#axis(t);
    state[at] = f11 * cos - f12 * sin;
    state[at + 1] = f11 * sin + f12 * cos;
    state[at + 2] = f21 * cos - f22 * sin;
    state[at + 3] = f21 * sin + f22 * cos;
    state[at + 4] = whole * (f11 * (f11 * s1 + f12 * s3) + f12 * (f11 * s3 + f12 * s2));
    state[at + 5] = whole * (f21 * (f21 * s1 + f22 * s3) + f22 * (f21 * s3 + f22 * s2));
    state[at + 6] = whole * (f11 * (f21 * s1 + f22 * s3) + f12 * (f21 * s3 + f22 * s2));
    state[at + 7] = w;
    h[10] = o[3]!;
    h[11] = o[4]!;
    h[12] = o[5]!;
    h[13] = o[6]!;
    this.#k[0] = hand * o[7]!;
    this.#k[1] = hand * o[8]!;
  }

  /** Gradient in the rows of J, from law axes. */
  #gradientToRows(j: Float64Array, h: Float64Array, t: number, area: number): void {
    const whole = area * h[15]!;
    const [f11, f12, f21, f22] = [h[0]!, h[1]!, h[2]!, h[3]!];
    const [c11, c22, c12] = [h[4]!, h[5]!, h[6]!];
    const [s1, s2, s3] = [h[7]!, h[8]!, h[9]!];
    const m11 = h[14]! - c11 * s1 - c12 * s3, m12 = -c11 * s3 - c12 * s2;
    const m21 = -c12 * s1 - c22 * s3, m22 = h[14]! - c12 * s3 - c22 * s2;
    const p11 = whole * (m11 * f11 + m12 * f12), p12 = whole * (m11 * f21 + m12 * f22);
    const p21 = whole * (m21 * f11 + m22 * f12), p22 = whole * (m21 * f21 + m22 * f22);
    const [cos, sin] = this.#axis(t);
    j[10] = cos * p11 - sin * p21;
    j[11] = cos * p12 - sin * p22;
    j[12] = sin * p11 + cos * p21;
    j[13] = sin * p12 + cos * p22;
  }

  /** Gradient and Hessian in the rows of J: blocks F k Fᵀ, then turned back out of the law's axes. */
  #toRows(j: Float64Array, h: Float64Array, t: number, area: number): void {
    const whole = area * h[15]!, k = this.#k;
    const [f11, f12, f21, f22] = [h[0]!, h[1]!, h[2]!, h[3]!];
    // Block (1, 1): aa ab bb; (2, 2): cc cd dd; (1, 2): ac ad bc bd.
    const u11 = f11 * k[0]! + f12 * k[1]!, u12 = f11 * k[1]! + f12 * k[4]!;
    const u21 = f21 * k[0]! + f22 * k[1]!, u22 = f21 * k[1]! + f22 * k[4]!;
    const aa = whole * (u11 * f11 + u12 * f12), ab = whole * (u11 * f21 + u12 * f22), bb = whole * (u21 * f21 + u22 * f22);
    const w11 = f11 * k[7]! + f12 * k[8]!, w12 = f11 * k[8]! + f12 * k[9]!;
    const w21 = f21 * k[7]! + f22 * k[8]!, w22 = f21 * k[8]! + f22 * k[9]!;
    const cc = whole * (w11 * f11 + w12 * f12), cd = whole * (w11 * f21 + w12 * f22), dd = whole * (w21 * f21 + w22 * f22);
    const v11 = f11 * k[2]! + f12 * k[5]!, v12 = f11 * k[3]! + f12 * k[6]!;
    const v21 = f21 * k[2]! + f22 * k[5]!, v22 = f21 * k[3]! + f22 * k[6]!;
    const ac = whole * (v11 * f11 + v12 * f12), ad = whole * (v11 * f21 + v12 * f22);
    const bc = whole * (v21 * f11 + v22 * f12), bd = whole * (v21 * f21 + v22 * f22);
    const [cos, sin] = this.#axis(t);
    const cc2 = cos * cos, ss = sin * sin, cs = cos * sin;
    j[0] = cc2 * aa - 2 * cs * ac + ss * cc;
    j[1] = cc2 * ab - cs * (ad + bc) + ss * cd;
    j[2] = cc2 * bb - 2 * cs * bd + ss * dd;
    j[3] = cs * (aa - cc) + (cc2 - ss) * ac;
    j[4] = cs * (ab - cd) + cc2 * ad - ss * bc;
    j[5] = cs * (ab - cd) + cc2 * bc - ss * ad;
    j[6] = cs * (bb - dd) + (cc2 - ss) * bd;
    j[7] = ss * aa + 2 * cs * ac + cc2 * cc;
    j[8] = ss * ab + cs * (ad + bc) + cc2 * cd;
    j[9] = ss * bb + 2 * cs * bd + cc2 * dd;
    this.#gradientToRows(j, h, t, area);
  }
}

/** Second variation in K = (K₁₁ K₁₂ K₂₁ K₂₂), upper triangle row by row: 00 01 02 03 11 12 13 22 23 33; k[0], k[1] hold D₁₃, D₂₃ on entry. */
function hessianInto(k: Float64Array, h: Float64Array, clamped: boolean): void {
  const [c11, c22, c12] = [h[4]!, h[5]!, h[6]!];
  let [s1, s2, s3] = [h[7]!, h[8]!, h[9]!];
  const [d11, d22, d33, d12] = [h[10]!, h[11]!, h[12]!, h[13]!];
  const d13 = k[0]!, d23 = k[1]!;
  const twist = h[14]! - c11 * s1 - 2 * c12 * s3 - c22 * s2;
  if (clamped && (s1 < 0 || s2 < 0 || s1 * s2 < s3 * s3)) {
    const mean = 0.5 * (s1 + s2), half = 0.5 * (s1 - s2), radius = Math.sqrt(half * half + s3 * s3);
    // The pull alone: the larger principal stress, if that is one.
    const pull = radius > 0 ? Math.max(0, mean + radius) / (2 * radius) : 0;
    s1 = pull * (radius + half);
    s2 = pull * (radius - half);
    s3 *= pull;
  }
  // Rows of CK: L1 = (c11 0 c12 0), L2 = (0 c12 0 c22), L3 = (c12 c11 c22 c12); V = D L.
  const v10 = d11 * c11 + d13 * c12, v11 = d12 * c12 + d13 * c11, v12 = d11 * c12 + d13 * c22, v13 = d12 * c22 + d13 * c12;
  const v21 = d22 * c12 + d23 * c11, v22 = d12 * c12 + d23 * c22, v23 = d22 * c22 + d23 * c12;
  const v30 = d13 * c11 + d33 * c12, v31 = d23 * c12 + d33 * c11, v32 = d13 * c12 + d33 * c22, v33 = d23 * c22 + d33 * c12;
  k[0] = c11 * v10 + c12 * v30 + c11 * s1;
  k[1] = c11 * v11 + c12 * v31 + c11 * s3;
  k[2] = c11 * v12 + c12 * v32 + c12 * s1;
  k[3] = c11 * v13 + c12 * v33 + c12 * s3;
  k[4] = c12 * v21 + c11 * v31 + c11 * s2;
  k[5] = c12 * v22 + c11 * v32 + c12 * s3;
  k[6] = c12 * v23 + c11 * v33 + c12 * s2;
  k[7] = c12 * v12 + c22 * v32 + c22 * s1;
  k[8] = c12 * v13 + c22 * v33 + c22 * s3;
  k[9] = c22 * v23 + c12 * v33 + c22 * s2;
  if (clamped) {
    const half = 0.5 * Math.abs(twist);
    k[0]! += half;
    k[4]! += half;
    k[7]! += half;
    k[9]! += half;
    k[3]! += 0.5 * twist;
    k[5]! -= 0.5 * twist;
  } else {
    k[3]! += twist;
    k[5]! -= twist;
  }
}

import type { Sheet } from "./sheet.ts";

/**
 * How a sheet resists being stretched: in every triangle A · k/2 · ((σ₁ − 1)² + (σ₂ − 1)²), σ the principal stretches from the flat
 * into space, k in N/mm. A stretch below 1 counts only by the triangle's share `pushed`. Derivatives by the eigensystem of energies
 * of principal stretches (Smith, de Goes and Kim 2019, Analytic eigensystems for isotropic distortion energies, ACM TOG 38(1); from
 * memory), with the two modes out of the plane that a sheet has besides. Only + − × ÷ √.
 */
export class Membrane {
  readonly #sheet: Sheet;
  readonly #stiffness: number;
  /** The triangle in hand: σ, first directions in the flat, directions in space u₁ u₂ n. */
  readonly #s = new Float64Array(2);
  readonly #v = new Float64Array(4);
  readonly #u = new Float64Array(9);
  /** Weights of the three corners along the two directions in the flat. */
  readonly #c = new Float64Array(6);
  readonly #w = new Float64Array(9);

  constructor(sheet: Sheet, stiffness: number) {
    this.#sheet = sheet;
    this.#stiffness = stiffness;
  }

  /** N·mm of the points x y z … */
  energy(x: Float64Array): number {
    const { frames, pushed } = this.#sheet;
    const s = this.#s;
    let sum = 0;
    for (let t = 0; t < pushed.length; t++) {
      this.#stretches(x, t);
      const a = s[0]! - 1, b = s[1]! - 1;
      sum += frames[4 * t + 3]! * ((a < 0 ? pushed[t]! : 1) * a * a + (b < 0 ? pushed[t]! : 1) * b * b);
    }
    return 0.5 * this.#stiffness * sum;
  }

  /** Larger and smaller principal stretch of each triangle, flat → space. */
  stretches(x: Float64Array): { readonly most: Float64Array; readonly least: Float64Array } {
    const count = this.#sheet.pushed.length;
    const most = new Float64Array(count), least = new Float64Array(count);
    for (let t = 0; t < count; t++) {
      this.#stretches(x, t);
      most[t] = this.#s[0]!;
      least[t] = this.#s[1]!;
    }
    return { most, least };
  }

  /**
   * Adds gradient and second derivatives. `slots` has 45 places a triangle: the lower triangle of its 9 × 9 block, row by row, −1 where
   * a point is held. Modes of negative stiffness are left out.
   */
  addInto(gradient: Float64Array, values: Float64Array, slots: Int32Array, x: Float64Array): void {
    const { corners, unknown, pushed, frames } = this.#sheet;
    const s = this.#s, u = this.#u, c = this.#c;
    for (let t = 0; t < pushed.length; t++) {
      this.#directions(x, t);
      const k = this.#stiffness * frames[4 * t + 3]!;
      const s1 = s[0]!, s2 = s[1]!;
      const k1 = s1 < 1 ? k * pushed[t]! : k, k2 = s2 < 1 ? k * pushed[t]! : k;
      const p1 = k1 * (s1 - 1), p2 = k2 * (s2 - 1);
      for (let i = 0; i < 3; i++) {
        const at = unknown[corners[3 * t + i]!]!;
        if (at < 0) continue;
        for (let d = 0; d < 3; d++) gradient[at + d]! += p1 * u[d]! * c[i]! + p2 * u[3 + d]! * c[3 + i]!;
      }
      const from = 45 * t;
      this.#addMode(values, slots, from, k1, 0, 0, 0, 0, 0);
      this.#addMode(values, slots, from, k2, 3, 3, 0, 0, 0);
      const flip = s1 - s2 > 1e-9 ? (p1 - p2) / (s1 - s2) : 0.5 * (k1 + k2);
      this.#addMode(values, slots, from, 0.5 * flip, 3, 0, 0, 3, 1);
      const twist = (p1 + p2) / (s1 + s2);
      if (twist > 0) this.#addMode(values, slots, from, 0.5 * twist, 3, 0, 0, 3, -1);
      if (p1 > 0) this.#addMode(values, slots, from, p1 / s1, 6, 0, 0, 0, 0);
      if (p2 > 0) this.#addMode(values, slots, from, p2 / s2, 6, 3, 0, 0, 0);
    }
  }

  /** Adds λ w wᵀ for the mode w = u ⊗ v + sign · u′ ⊗ v′; directions by their start in the lists. */
  #addMode(values: Float64Array, slots: Int32Array, from: number, lambda: number, u1: number, v1: number, u2: number, v2: number, sign: number): void {
    const u = this.#u, c = this.#c, w = this.#w;
    for (let i = 0; i < 3; i++)
      for (let d = 0; d < 3; d++) w[3 * i + d] = u[u1 + d]! * c[v1 + i]! + sign * u[u2 + d]! * c[v2 + i]!;
    for (let r = 0, k = from; r < 9; r++) {
      const scaled = lambda * w[r]!;
      for (let q = 0; q <= r; q++, k++) if (slots[k]! >= 0) values[slots[k]!]! += scaled * w[q]!;
    }
  }

  /** Stretches σ₁ ≥ σ₂ of triangle t by the closed form of the 2 × 2 tensor FᵀF; the first direction in the flat goes to #v. */
  #stretches(x: Float64Array, t: number): void {
    const { corners, frames } = this.#sheet;
    const p = 3 * corners[3 * t]!, q = 3 * corners[3 * t + 1]!, r = 3 * corners[3 * t + 2]!;
    const gx = frames[4 * t]!, gy = frames[4 * t + 1]!, hy = frames[4 * t + 2]!;
    let a = 0, b = 0, c = 0;
    for (let d = 0; d < 3; d++) {
      const e = x[q + d]! - x[p + d]!;
      const f = e * gx, g = e * gy + (x[r + d]! - x[p + d]!) * hy;
      this.#u[d] = f;
      this.#u[3 + d] = g;
      a += f * f;
      b += f * g;
      c += g * g;
    }
    const half = 0.5 * (a - c);
    const root = Math.sqrt(half * half + b * b);
    const larger = 0.5 * (a + c) + root;
    const s1 = Math.sqrt(larger);
    this.#s[0] = s1;
    this.#s[1] = Math.sqrt(Math.max(0, a * c - b * b)) / s1;
    // The direction from the row of the tensor less σ₁² that loses fewer digits.
    let v = half >= 0 ? half + root : b, w = half >= 0 ? b : root - half;
    const size = Math.sqrt(v * v + w * w);
    if (size > 0) {
      v /= size;
      w /= size;
    } else [v, w] = [1, 0];
    this.#v[0] = v;
    this.#v[1] = w;
  }

  /** Stretches and all directions of triangle t. */
  #directions(x: Float64Array, t: number): void {
    this.#stretches(x, t);
    const { frames } = this.#sheet;
    const s = this.#s, u = this.#u, c = this.#c;
    if (s[1]! < 1e-6) s[1] = 1e-6; // a triangle pressed to a line keeps a direction to open in
    const v = this.#v[0]!, w = this.#v[1]!;
    for (let d = 0; d < 3; d++) {
      const f = u[d]!, g = u[3 + d]!;
      u[d] = (f * v + g * w) / s[0]!;
      u[3 + d] = (g * v - f * w) / s[1]!;
    }
    u[6] = u[1]! * u[5]! - u[2]! * u[4]!;
    u[7] = u[2]! * u[3]! - u[0]! * u[5]!;
    u[8] = u[0]! * u[4]! - u[1]! * u[3]!;
    const gx = frames[4 * t]!, gy = frames[4 * t + 1]!, hy = frames[4 * t + 2]!;
    c[1] = gx * v + gy * w;
    c[2] = hy * w;
    c[0] = -c[1] - c[2];
    c[4] = gy * v - gx * w;
    c[5] = hy * v;
    c[3] = -c[4] - c[5];
  }
}

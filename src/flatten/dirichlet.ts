import type { Disk } from "./disk.ts";
import type { Frames } from "./frames.ts";
import { jacobianInto, numbersOfATriangle, scatter, scatterGradient } from "./scatter.ts";

/**
 * Symmetric Dirichlet energy of a map of triangles into the plane, E = Σ share · I (1 + 1/D²) with I = |J|² and D = det J:
 * σ₁² + σ₂² + σ₁⁻² + σ₂⁻² averaged over the area, 4 for an isometry, infinite before a triangle folds over. Derivatives
 * are exact and need no decomposition: only the twist of a triangle can make its Hessian negative, see docs/method/flatten.md
 * (eigenvectors as in Smith, de Goes and Kim 2019, from memory; derived again there).
 */
export class Dirichlet {
  readonly #triangles: Uint32Array;
  readonly #slots: Uint32Array;

  constructor({ triangles, slots }: Pick<Disk, "triangles" | "slots">) {
    this.#triangles = triangles;
    this.#slots = slots;
  }

  /** Energy at uv; Infinity when a triangle is folded over or flat. */
  energy({ of }: Frames, uv: Float64Array): number {
    const triangles = this.#triangles;
    let sum = 0;
    for (let k = 0, f = 0; k < triangles.length; k += 3, f += 4) {
      const p = 2 * triangles[k]!;
      const q = 2 * triangles[k + 1]!;
      const r = 2 * triangles[k + 2]!;
      const gx = of[f]!;
      const gy = of[f + 1]!;
      const hy = of[f + 2]!;
      const du = uv[q]! - uv[p]!;
      const dv = uv[q + 1]! - uv[p + 1]!;
      const a = du * gx;
      const b = du * gy + (uv[r]! - uv[p]!) * hy;
      const c = dv * gx;
      const d = dv * gy + (uv[r + 1]! - uv[p + 1]!) * hy;
      const det = a * d - b * c;
      if (!(det > 0)) return Infinity;
      sum += of[f + 3]! * (a * a + b * b + c * c + d * d) * (1 + 1 / (det * det));
    }
    return sum;
  }

  /** Scales uv by the factor of least energy, s⁴ = Σ share (σ₁⁻² + σ₂⁻²) / Σ share (σ₁² + σ₂²). */
  scaleToBestInto({ of }: Frames, uv: Float64Array): void {
    const triangles = this.#triangles;
    const local = new Float64Array(numbersOfATriangle);
    let stretch = 0;
    let squeeze = 0;
    for (let k = 0, f = 0; k < triangles.length; k += 3, f += 4) {
      jacobianInto(local, of, f, uv, triangles, k);
      const [a, b, c, d] = [local[10]!, local[11]!, local[12]!, local[13]!];
      const det = a * d - b * c;
      const size = a * a + b * b + c * c + d * d;
      stretch += of[f + 3]! * size;
      squeeze += (of[f + 3]! * size) / (det * det);
    }
    const scale = Math.sqrt(Math.sqrt(squeeze / stretch));
    if (!(scale > 0 && scale < Infinity)) return;
    for (let i = 0; i < uv.length; i++) uv[i]! *= scale;
  }

  /**
   * Adds gradient and Hessian at uv (no triangle folded over) into `gradient` (2 a vertex) and `values` (blocks of the
   * pattern). With `clamped` each triangle's Hessian is made positive by leaving out a negative twist.
   */
  addDerivativesInto(gradient: Float64Array, values: Float64Array, frames: Frames, uv: Float64Array, clamped: boolean): void {
    const local = new Float64Array(numbersOfATriangle);
    for (let k = 0, f = 0; k < this.#triangles.length; k += 3, f += 4) {
      jacobianInto(local, frames.of, f, uv, this.#triangles, k);
      derivativesInto(local, frames.of[f + 3]!, clamped);
      scatter(gradient, values, frames.of, f, this.#triangles, this.#slots, k, local);
    }
  }

  /** Adds the gradient alone. */
  addGradientInto(gradient: Float64Array, { of }: Frames, uv: Float64Array): void {
    const local = new Float64Array(numbersOfATriangle);
    const triangles = this.#triangles;
    for (let k = 0, f = 0; k < triangles.length; k += 3, f += 4) {
      jacobianInto(local, of, f, uv, triangles, k);
      const a = local[10]!;
      const b = local[11]!;
      const c = local[12]!;
      const d = local[13]!;
      const inverse = 1 / (a * d - b * c);
      const inverse2 = inverse * inverse;
      const id = 2 * of[f + 3]! * (1 + inverse2);
      const turn = -2 * of[f + 3]! * (a * a + b * b + c * c + d * d) * inverse * inverse2;
      local[10] = id * a + turn * d;
      local[11] = id * b - turn * c;
      local[12] = id * c - turn * b;
      local[13] = id * d + turn * a;
      scatterGradient(gradient, of, f, triangles, k, local);
    }
  }

  /** Gradient and Hessian of the conformal energy Σ share · (|J|² − 2 det J), which is quadratic, and zero for maps that keep angles. */
  addConformalInto(gradient: Float64Array, values: Float64Array, frames: Frames, uv: Float64Array): void {
    const local = new Float64Array(numbersOfATriangle);
    for (let k = 0, f = 0; k < this.#triangles.length; k += 3, f += 4) {
      jacobianInto(local, frames.of, f, uv, this.#triangles, k);
      const w = 2 * frames.of[f + 3]!;
      const [a, b, c, d] = [local[10]!, local[11]!, local[12]!, local[13]!];
      local.fill(0);
      local[0] = local[2] = local[7] = local[9] = w;
      local[4] = -w;
      local[5] = w;
      local[10] = w * (a - d);
      local[11] = w * (b + c);
      local[12] = w * (b + c);
      local[13] = w * (d - a);
      scatter(gradient, values, frames.of, f, this.#triangles, this.#slots, k, local);
    }
  }
}

/** From J to the derivatives of share · I (1 + 1/D²). C = (d, −c, −b, a) is the derivative of D = ad − bc, Q that of C. */
function derivativesInto(h: Float64Array, share: number, clamped: boolean): void {
  const a = h[10]!;
  const b = h[11]!;
  const c = h[12]!;
  const d = h[13]!;
  const det = a * d - b * c;
  const inverse = 1 / det;
  const inverse2 = inverse * inverse;
  const size = a * a + b * b + c * c + d * d;
  // Gradient id·J + turn·C; Hessian id·1 + cross (J⊗C + C⊗J) + cof C⊗C + turn Q.
  const id = 2 * share * (1 + inverse2);
  const cross = -4 * share * inverse * inverse2;
  const cof = 6 * share * size * inverse2 * inverse2;
  const turn = -2 * share * size * inverse * inverse2;
  let aa = id + 2 * cross * a * d + cof * d * d;
  let ab = cross * (b * d - a * c) - cof * c * d;
  let bb = id - 2 * cross * b * c + cof * c * c;
  let ac = cross * (c * d - a * b) - cof * b * d;
  let ad = cross * (a * a + d * d) + cof * a * d + turn;
  let bc = cof * b * c - cross * (b * b + c * c) - turn;
  let bd = cross * (a * b - c * d) - cof * a * c;
  let cc = id - 2 * cross * b * c + cof * b * b;
  let cd = cross * (a * c - b * d) - cof * a * b;
  let dd = id + 2 * cross * a * d + cof * a * a;
  if (clamped) {
    // Twist: the direction (−q, −p, p, −q) / (n √2); its eigenvalue is the only one that can be negative.
    const p = a + d;
    const q = c - b;
    const n2 = p * p + q * q;
    const twist = share * (2 - 2 * (n2 - 3 * det) * inverse * inverse2);
    if (twist < 0) {
      const s = -twist / (2 * n2);
      const qq = s * q * q;
      const pp = s * p * p;
      const pq = s * p * q;
      aa += qq;
      ab += pq;
      bb += pp;
      ac -= pq;
      ad += qq;
      bc -= pp;
      bd += pq;
      cc += pp;
      cd -= pq;
      dd += qq;
    }
  }
  h[0] = aa;
  h[1] = ab;
  h[2] = bb;
  h[3] = ac;
  h[4] = ad;
  h[5] = bc;
  h[6] = bd;
  h[7] = cc;
  h[8] = cd;
  h[9] = dd;
  h[10] = id * a + turn * d;
  h[11] = id * b - turn * c;
  h[12] = id * c - turn * b;
  h[13] = id * d + turn * a;
}

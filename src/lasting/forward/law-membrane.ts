import { must } from "#base/bug.ts";
import type { Law } from "#leather/law.ts";
import type { Sheet, SheetInput } from "#wrap/sheet.ts";

/** Numbers a triangle: gradients of the second and third corner's weights in the law's axes, (g₁ g₂) each, and its area, mm². */
const EACH = 5;

/**
 * How a sheet of leather resists being stretched: in every triangle A · W(e1, e2, g), W any convex {@link Law} of Green's strain in axes
 * that lie fixed in the flat sheet. With f₁ f₂ the law's axes carried into space: e1 = (f₁·f₁ − 1)/2, e2 = (f₂·f₂ − 1)/2, g = f₁·f₂, and the
 * second derivatives are Bᵀ D B + (∇wᵢ · S ∇wⱼ) I (total Lagrangian; any text on membranes of finite strain).
 */
export class LawMembrane {
  readonly law: Law;
  readonly #corners: Uint32Array;
  readonly #unknown: Int32Array;
  readonly #frames: Float64Array;
  readonly #out = new Float64Array(9);
  /** f₁ then f₂ of the triangle in hand. */
  readonly #f = new Float64Array(6);
  /** Weights' gradients of the three corners, (g₁ g₂) each. */
  readonly #g = new Float64Array(6);

  /** `axes`: cos and sin of the turn from the flat's +x to the law's first axis, a pair a triangle; left out, it is +x everywhere. */
  constructor(sheet: Sheet, { triangles, flat }: SheetInput, law: Law, axes?: Float64Array) {
    const count = triangles.length / 3;
    must(axes === undefined || axes.length === 2 * count, "one pair of axes a triangle");
    this.law = law;
    this.#corners = sheet.corners;
    this.#unknown = sheet.unknown;
    this.#frames = new Float64Array(EACH * count);
    for (let t = 0; t < count; t++) this.#frameOf(t, triangles, flat, axes ? axes[2 * t]! : 1, axes ? axes[2 * t + 1]! : 0);
  }

  #frameOf(t: number, triangles: Uint32Array, flat: Float64Array, cos: number, sin: number): void {
    const [a, b, c] = [0, 1, 2].map((k) => 2 * triangles[3 * t + k]!) as [number, number, number];
    const bx = flat[b]! - flat[a]!, by = flat[b + 1]! - flat[a + 1]!, cx = flat[c]! - flat[a]!, cy = flat[c + 1]! - flat[a + 1]!;
    const det = bx * cy - by * cx;
    must(det !== 0, "a triangle of the flat sheet has no area");
    const gx = cy / det, gy = -cx / det, hx = -by / det, hy = bx / det;
    this.#frames.set([cos * gx + sin * gy, cos * gy - sin * gx, cos * hx + sin * hy, cos * hy - sin * hx, 0.5 * Math.abs(det)], EACH * t);
  }

  get triangles(): number {
    return this.#frames.length / EACH;
  }

  /** N·mm at the points x y z …; NaN where a law knows no answer. */
  energy(x: Float64Array): number {
    const frames = this.#frames, f = this.#f;
    let sum = 0;
    for (let k = EACH - 1, t = 0; k < frames.length; k += EACH, t++) {
      this.#carry(x, t);
      const e1 = 0.5 * (f[0]! * f[0]! + f[1]! * f[1]! + f[2]! * f[2]! - 1), e2 = 0.5 * (f[3]! * f[3]! + f[4]! * f[4]! + f[5]! * f[5]! - 1);
      sum += frames[k]! * this.law.energy(e1, e2, f[0]! * f[3]! + f[1]! * f[4]! + f[2]! * f[5]!);
    }
    return sum;
  }

  /** The law's axes of triangle t in space, to #f. */
  #carry(x: Float64Array, t: number): void {
    const corners = this.#corners, frames = this.#frames, f = this.#f;
    const a = 3 * corners[3 * t]!, b = 3 * corners[3 * t + 1]!, c = 3 * corners[3 * t + 2]!;
    const k = EACH * t, g1 = frames[k]!, g2 = frames[k + 1]!, h1 = frames[k + 2]!, h2 = frames[k + 3]!;
    for (let d = 0; d < 3; d++) {
      const u = x[b + d]! - x[a + d]!, v = x[c + d]! - x[a + d]!;
      f[d] = g1 * u + h1 * v;
      f[3 + d] = g2 * u + h2 * v;
    }
  }

  /** Green's strain, and stress and stiffness of triangle t into #out; its axes in #f. @returns e1, e2, g through `into` */
  #answer(x: Float64Array, t: number): void {
    this.#carry(x, t);
    const f = this.#f;
    const e1 = 0.5 * (f[0]! * f[0]! + f[1]! * f[1]! + f[2]! * f[2]! - 1), e2 = 0.5 * (f[3]! * f[3]! + f[4]! * f[4]! + f[5]! * f[5]! - 1);
    this.law.into(this.#out, e1, e2, f[0]! * f[3]! + f[1]! * f[4]! + f[2]! * f[5]!);
  }

  /**
   * Adds gradient and second derivatives; `slots` has 45 places a triangle as in WrapSystem.ofTriangles. `push`: share with which
   * principal stresses below 0 count in the second derivatives; at 0, with a convex law, no direction has negative stiffness.
   */
  addInto(gradient: Float64Array, values: Float64Array, slots: Int32Array, x: Float64Array, push: number): void {
    for (let t = 0; t < this.triangles; t++) {
      this.#answer(x, t);
      this.#weights(t);
      this.#addForces(gradient, t);
      if (push < 1) easePush(this.#out, push);
      this.#addStiffness(values, slots, t);
    }
  }

  #weights(t: number): void {
    const g = this.#g, frames = this.#frames, k = EACH * t;
    g[2] = frames[k]!;
    g[3] = frames[k + 1]!;
    g[4] = frames[k + 2]!;
    g[5] = frames[k + 3]!;
    g[0] = -g[2] - g[4];
    g[1] = -g[3] - g[5];
  }

  #addForces(gradient: Float64Array, t: number): void {
    const g = this.#g, f = this.#f, s = this.#out;
    const area = this.#frames[EACH * t + 4]!;
    for (let i = 0; i < 3; i++) {
      const at = this.#unknown[this.#corners[3 * t + i]!]!;
      if (at < 0) continue;
      const p = area * (s[0]! * g[2 * i]! + s[2]! * g[2 * i + 1]!), q = area * (s[1]! * g[2 * i + 1]! + s[2]! * g[2 * i]!);
      gradient[at]! += p * f[0]! + q * f[3]!;
      gradient[at + 1]! += p * f[1]! + q * f[4]!;
      gradient[at + 2]! += p * f[2]! + q * f[5]!;
    }
  }

  #addStiffness(values: Float64Array, slots: Int32Array, t: number): void {
    const g = this.#g, s = this.#out;
    const area = this.#frames[EACH * t + 4]!;
    const s1 = area * s[0]!, s2 = area * s[1]!, s3 = area * s[2]!;
    const d11 = area * s[3]!, d22 = area * s[4]!, d33 = area * s[5]!, d12 = area * s[6]!, d13 = area * s[7]!, d23 = area * s[8]!;
    for (let i = 0; i < 3; i++) {
      const p = g[2 * i]!, q = g[2 * i + 1]!;
      for (let j = 0; j <= i; j++) {
        const r = g[2 * j]!, o = g[2 * j + 1]!;
        const pr = p * r, po = p * o, qr = q * r, qo = q * o;
        this.#addBlock(
          values, slots, 45 * t, i, j,
          d11 * pr + d13 * (po + qr) + d33 * qo,
          d12 * po + d13 * pr + d23 * qo + d33 * qr,
          d12 * qr + d13 * pr + d23 * qo + d33 * po,
          d22 * qo + d23 * (qr + po) + d33 * pr,
          s1 * pr + s2 * qo + s3 * (po + qr),
        );
      }
    }
  }

  /** Adds a f₁f₁ᵀ + b f₁f₂ᵀ + c f₂f₁ᵀ + d f₂f₂ᵀ + e I at the rows of corner i and the columns of corner j ≤ i. */
  #addBlock(values: Float64Array, slots: Int32Array, from: number, i: number, j: number, a: number, b: number, c: number, d: number, e: number): void {
    const f = this.#f;
    for (let m = 0; m < 3; m++) {
      const row = 3 * i + m;
      const u = a * f[m]! + c * f[3 + m]!, v = b * f[m]! + d * f[3 + m]!;
      const most = i === j ? m : 2;
      for (let n = 0, k = from + (row * (row + 1)) / 2 + 3 * j; n <= most; n++, k++) {
        const slot = slots[k]!;
        if (slot >= 0) values[slot]! += u * f[n]! + v * f[3 + n]! + (m === n ? e : 0);
      }
    }
  }

  /** Strain and stress of every triangle, see {@link TriangleState}. */
  state(x: Float64Array): TriangleState {
    const count = this.triangles;
    const each = (): Float64Array => new Float64Array(count);
    const most = each(), least = each(), along = each(), across = each(), shear = each(), pull = each(), pullAcross = each();
    const tension = new Float64Array(3 * count), f = this.#f, s = this.#out;
    for (let t = 0; t < count; t++) {
      this.#answer(x, t);
      const a = f[0]! * f[0]! + f[1]! * f[1]! + f[2]! * f[2]!, b = f[3]! * f[3]! + f[4]! * f[4]! + f[5]! * f[5]!, g = f[0]! * f[3]! + f[1]! * f[4]! + f[2]! * f[5]!;
      const mean = 0.5 * (a + b), root = Math.sqrt(0.25 * (a - b) * (a - b) + g * g);
      const stretched = Math.sqrt(Math.max(0, a * b - g * g));
      most[t] = Math.sqrt(mean + root);
      least[t] = most[t]! > 0 ? stretched / most[t]! : 0;
      along[t] = Math.sqrt(a);
      across[t] = Math.sqrt(b);
      shear[t] = g;
      // Eigenvalues of F S Fᵀ in the plane are those of S C; divided by the area's stretch they are forces per length in space.
      const trace = s[0]! * a + s[1]! * b + 2 * s[2]! * g, det = (s[0]! * s[1]! - s[2]! * s[2]!) * (a * b - g * g);
      const half = Math.sqrt(Math.max(0, 0.25 * trace * trace - det));
      pull[t] = (0.5 * trace + half) / stretched;
      pullAcross[t] = (0.5 * trace - half) / stretched;
      tension.set([s[0]!, s[1]!, s[2]!], 3 * t);
    }
    return { most, least, along, across, shear, pull, pullAcross, tension };
  }
}

/** What every triangle bears, one number each where not said otherwise. */
export interface TriangleState {
  /** Larger and smaller principal stretch, flat → space. */
  readonly most: Float64Array;
  readonly least: Float64Array;
  /** Stretch along the law's axes 1 and 2, and g = 2 E₁₂ between them. */
  readonly along: Float64Array;
  readonly across: Float64Array;
  readonly shear: Float64Array;
  /** Larger and smaller principal force per length in space (true stress resultant), N/mm. */
  readonly pull: Float64Array;
  readonly pullAcross: Float64Array;
  /** Second Piola–Kirchhoff resultant S₁₁ S₂₂ S₁₂ in the law's axes, N/mm. */
  readonly tension: Float64Array;
}

/** Leaves only this share of what principal stresses are below 0 in the stress in the first three places. */
function easePush(s: Float64Array, share: number): void {
  const mean = 0.5 * (s[0]! + s[1]!), half = 0.5 * (s[0]! - s[1]!);
  const root = Math.sqrt(half * half + s[2]! * s[2]!);
  if (mean - root >= 0) return;
  const high = mean + root > 0 ? mean + root : share * (mean + root), low = share * (mean - root);
  // The same axes with the principal stresses high and low.
  const middle = 0.5 * (high + low), part = root > 0 ? (0.5 * (high - low)) / root : 0;
  s[0] = middle + part * half;
  s[1] = middle - part * half;
  s[2]! *= part;
}

import type { Law } from "./law.ts";

/** A symmetric 2×2 tensor t as (t₁₁ + t₂₂)/2, (t₁₁ − t₂₂)/2, t₁₂: its principal values are mean ± √(difference² + askew²). */
export interface Tensor {
  readonly mean: number;
  readonly difference: number;
  readonly askew: number;
}

const most = 80;
/** Square of the F below which A is taken as found: A is off by less than F, and the stress by less than the stiffness times that. */
const settled = 1e-20;

/**
 * Finds what pleats take up of a strain E: the least of φ(A) = law(E + A) + Σ : A + ½ b |A|² over A ⪰ 0. There A is the positive part of
 * Y = −(S(E + A) + Σ)/b, which Newton's method solves with the derivative of the positive part; every iterate is brought back to A ⪰ 0 and
 * the step halved until φ falls, and where that fails it follows the slope. All tensors are kept as (mean, difference, askew), in which
 * an inner product is twice that of the three numbers. One object serves one call after the other and allocates nothing.
 */
export class Pleats {
  private readonly law: Law;
  private readonly push: Tensor;
  private readonly b: number;
  private readonly raw = new Float64Array(9);
  /** A, the positive part of Y, Y − A, and the step. */
  private readonly a = new Float64Array(3);
  private readonly p = new Float64Array(3);
  private readonly off = new Float64Array(3);
  private readonly step = new Float64Array(3);
  /** Second derivatives of the law, 11 22 33 12 13 23 of (mean, difference, askew). */
  private readonly h = new Float64Array(6);
  /** In how many ways Y is positive. Where in one, its positive part has the derivative ½ v vᵀ + turn w wᵀ, v = (1, c, s), w = (0, s, −c). */
  private ways = 0;
  private c = 1;
  private s = 0;
  private turn = 0;
  /** Rows v H and w H (or H itself), and the inverse of what stands between them in {@link factor}. */
  private readonly rows = new Float64Array(9);
  private readonly inverse = new Float64Array(6);

  /** @param b price of pleats, N/mm */
  constructor(law: Law, push: Tensor, b: number) {
    this.law = law;
    this.push = push;
    this.b = b;
  }

  /** Whether a sheet under this stress, as {@link Law.into} writes it, is pushed so hard that pleats begin. */
  begin(stress: Float64Array): boolean {
    const { push } = this;
    const m = 0.5 * (stress[0]! + stress[1]!) + push.mean, d = 0.5 * (stress[0]! - stress[1]!) + push.difference, h = stress[2]! + push.askew;
    return !(m >= 0 && m * m >= d * d + h * h);
  }

  /** Finds A for the strain (e1, e2, g); says whether there are pleats. */
  settle(e1: number, e2: number, g: number): boolean {
    const { a } = this;
    a[0] = a[1] = a[2] = 0;
    this.look(e1, e2, g);
    if (this.ways === 0) return false;
    let least = this.missing();
    for (let i = 0; i < most; i++) {
      const am = a[0], ad = a[1], ah = a[2];
      this.newton();
      this.put(am, ad, ah, 1);
      this.look(e1, e2, g);
      const missing = this.missing();
      if (missing <= settled) break;
      if (missing <= 0.25 * least) least = missing;
      else this.search(am, ad, ah, e1, e2, g);
    }
    return true;
  }

  /** Energy of what was found last for the strain (e1, e2, g). */
  energy(e1: number, e2: number, g: number): number {
    return this.price(e1, e2, g);
  }

  /** Larger principal value of the A found last. */
  deepest(): number {
    const { a } = this;
    return a[0]! + Math.sqrt(a[1]! * a[1]! + a[2]! * a[2]!);
  }

  /** Stress and stiffness of what was found last, as {@link Law.into} writes them: the law's own, less what the pleats give way. */
  into(out: Float64Array): void {
    const { raw, rows: r, inverse: n } = this;
    out.set(raw);
    if (this.ways === 0) return;
    this.factor();
    const less = (i: number, j: number) => {
      const x1 = r[i]!, x2 = r[3 + i]!, x3 = r[6 + i]!, y1 = r[j]!, y2 = r[3 + j]!, y3 = r[6 + j]!;
      return n[0]! * x1 * y1 + n[1]! * x2 * y2 + n[2]! * x3 * y3 + n[3]! * (x1 * y2 + x2 * y1) + n[4]! * (x1 * y3 + x3 * y1) + n[5]! * (x2 * y3 + x3 * y2);
    };
    const mm = less(0, 0), dd = less(1, 1), md = less(0, 1), mh = less(0, 2), dh = less(1, 2);
    out[3]! -= (mm + dd + 2 * md) / 4;
    out[4]! -= (mm + dd - 2 * md) / 4;
    out[5]! -= less(2, 2) / 4;
    out[6]! -= (mm - dd) / 4;
    out[7]! -= (mh + dh) / 4;
    out[8]! -= (mh - dh) / 4;
  }

  /** φ at A. */
  private price(e1: number, e2: number, g: number): number {
    const { push, b } = this;
    const am = this.a[0]!, ad = this.a[1]!, ah = this.a[2]!;
    const inSheet = this.law.energy(e1 + (am + ad), e2 + (am - ad), g + 2 * ah);
    return inSheet + 2 * (push.mean * am + push.difference * ad + push.askew * ah) + b * (am * am + ad * ad + ah * ah);
  }

  /** Asks the law at E + A, and splits Y. */
  private look(e1: number, e2: number, g: number): void {
    const { a, p, off, raw, push, b, h: hess } = this;
    const am = a[0]!, ad = a[1]!, ah = a[2]!;
    this.law.into(raw, e1 + (am + ad), e2 + (am - ad), g + 2 * ah);
    hess[0] = raw[3]! + raw[4]! + 2 * raw[6]!;
    hess[1] = raw[3]! + raw[4]! - 2 * raw[6]!;
    hess[2] = 4 * raw[5]!;
    hess[3] = raw[3]! - raw[4]!;
    hess[4] = 2 * (raw[7]! + raw[8]!);
    hess[5] = 2 * (raw[7]! - raw[8]!);
    const ym = -(0.5 * (raw[0]! + raw[1]!) + push.mean) / b, yd = -(0.5 * (raw[0]! - raw[1]!) + push.difference) / b, yh = -(raw[2]! + push.askew) / b;
    const r = Math.sqrt(yd * yd + yh * yh);
    off[0] = ym - am;
    off[1] = yd - ad;
    off[2] = yh - ah;
    if (!(ym + r > 0)) {
      this.ways = 0;
      p[0] = p[1] = p[2] = 0;
    } else if (ym >= r) {
      this.ways = 2;
      p[0] = ym;
      p[1] = yd;
      p[2] = yh;
    } else {
      this.ways = 1;
      this.c = yd / r;
      this.s = yh / r;
      this.turn = (ym + r) / (2 * r);
      p[0] = (ym + r) / 2;
      p[1] = p[0] * this.c;
      p[2] = p[0] * this.s;
    }
  }

  /** Rows U H, and the inverse of (weights + U H Uᵀ) where the positive part has the derivative Uᵀ diag(2b/weights) U. */
  private factor(): void {
    const { rows: r, inverse: n, h, b, c, s } = this;
    const h11 = h[0]!, h22 = h[1]!, h33 = h[2]!, h12 = h[3]!, h13 = h[4]!, h23 = h[5]!;
    if (this.ways === 2) {
      r[0] = h11;
      r[1] = r[3] = h12;
      r[2] = r[6] = h13;
      r[4] = h22;
      r[5] = r[7] = h23;
      r[8] = h33;
      const a11 = h11 + 2 * b, a22 = h22 + 2 * b, a33 = h33 + 2 * b;
      const k11 = a22 * a33 - h23 * h23, k12 = h13 * h23 - h12 * a33, k13 = h12 * h23 - h13 * a22;
      const det = a11 * k11 + h12 * k12 + h13 * k13;
      n[0] = k11 / det;
      n[1] = (a11 * a33 - h13 * h13) / det;
      n[2] = (a11 * a22 - h12 * h12) / det;
      n[3] = k12 / det;
      n[4] = k13 / det;
      n[5] = (h12 * h13 - a11 * h23) / det;
      return;
    }
    n.fill(0);
    r.fill(0);
    if (this.ways === 0) return;
    r[0] = h11 + c * h12 + s * h13;
    r[1] = h12 + c * h22 + s * h23;
    r[2] = h13 + c * h23 + s * h33;
    r[3] = s * h12 - c * h13;
    r[4] = s * h22 - c * h23;
    r[5] = s * h23 - c * h33;
    const vv = r[0] + c * r[1] + s * r[2] + 4 * b, vw = s * r[1] - c * r[2], ww = s * r[4] - c * r[5] + (2 * b) / Math.max(this.turn, 1e-12);
    const det = vv * ww - vw * vw;
    n[0] = ww / det;
    n[1] = vv / det;
    n[3] = -vw / det;
  }

  /** Newton's step from A: −F + Uᵀ inverse U H F, F = A − positive part of Y. */
  private newton(): void {
    const { a, p, step, rows: r, inverse: n, c, s } = this;
    this.factor();
    const f1 = a[0]! - p[0]!, f2 = a[1]! - p[1]!, f3 = a[2]! - p[2]!;
    const x1 = r[0]! * f1 + r[1]! * f2 + r[2]! * f3, x2 = r[3]! * f1 + r[4]! * f2 + r[5]! * f3, x3 = r[6]! * f1 + r[7]! * f2 + r[8]! * f3;
    const q1 = n[0]! * x1 + n[3]! * x2 + n[4]! * x3, q2 = n[3]! * x1 + n[1]! * x2 + n[5]! * x3, q3 = n[4]! * x1 + n[5]! * x2 + n[2]! * x3;
    const one = this.ways === 1;
    step[0] = q1 - f1;
    step[1] = (one ? c * q1 + s * q2 : q2) - f2;
    step[2] = (one ? s * q1 - c * q2 : q3) - f3;
  }

  /** Size of F, squared. */
  private missing(): number {
    const { a, p } = this;
    const m = a[0]! - p[0]!, d = a[1]! - p[1]!, h = a[2]! - p[2]!;
    return m * m + d * d + h * h;
  }

  /** Where Newton's step did not come nearer: as much of it as lets φ fall, or else a step down the slope of φ. */
  private search(fm: number, fd: number, fh: number, e1: number, e2: number, g: number): void {
    const { off, step, h: hess, b } = this;
    const full = this.price(e1, e2, g);
    this.put(fm, fd, fh, 0);
    const before = this.price(e1, e2, g);
    let t = 1;
    for (let next = full; !(next < before) && t > 0.01; next = this.price(e1, e2, g)) this.put(fm, fd, fh, (t /= 2));
    if (t === 1) return this.put(fm, fd, fh, 1);
    if (t <= 0.01) {
      this.put(fm, fd, fh, 0);
      this.look(e1, e2, g);
      const rate = (2 * b) / (hess[0]! + hess[1]! + hess[2]! + 2 * b);
      for (let i = 0; i < 3; i++) step[i] = rate * off[i]!;
      t = 2;
      do this.put(fm, fd, fh, (t /= 2));
      while (!(this.price(e1, e2, g) <= before) && t > 1e-12);
    }
    this.look(e1, e2, g);
  }

  /** Puts A to the positive part of (from + t step). */
  private put(fm: number, fd: number, fh: number, t: number): void {
    const { a, step } = this;
    const ym = fm + t * step[0]!, yd = fd + t * step[1]!, yh = fh + t * step[2]!;
    const r = Math.sqrt(yd * yd + yh * yh);
    const one = ym + r > 0 ? (ym + r) / 2 : 0;
    const scale = ym >= r ? 1 : one > 0 ? one / r : 0;
    a[0] = ym >= r ? ym : one;
    a[1] = scale * yd;
    a[2] = scale * yh;
  }
}

import { must } from "#base/bug.ts";
import { arcLengths } from "./along.ts";

/**
 * Natural cubic smoothing spline of a plane line over its running length: minimises Σ wᵢ |pᵢ − g(tᵢ)|² + λ ∫ |g″|² for both
 * coordinates, by the banded system (R + λ QᵀW⁻¹Q) γ = Qᵀp (Reinsch 1967; notation of Green and Silverman 1994, section 2.3).
 * The weight of a point is the length of line that it stands for; the ends are held exactly (their 1/w is 0).
 */
export class SmoothingSpline {
  readonly knots: Float64Array;
  readonly #points: Float64Array;
  readonly #step: Float64Array;
  readonly #slack: Float64Array;
  /** Fitted values and second derivatives, x y interleaved. */
  readonly #g: Float64Array;
  readonly #second: Float64Array;

  /** `points` x0 y0 …, `knots` increasing, one a point. */
  constructor(points: Float64Array, knots: Float64Array) {
    const n = knots.length;
    must(n >= 3 && points.length === 2 * n, "a smoothing spline needs three points and a knot for each");
    this.knots = knots;
    this.#points = points;
    this.#step = new Float64Array(n - 1);
    for (let i = 0; i < n - 1; i++) this.#step[i] = knots[i + 1]! - knots[i]!;
    must(this.#step.every((h) => h > 0), "knots must increase");
    this.#slack = new Float64Array(n);
    for (let i = 1; i < n - 1; i++) this.#slack[i] = 2 / (this.#step[i - 1]! + this.#step[i]!);
    this.#g = points.slice();
    this.#second = new Float64Array(2 * n);
  }

  get length(): number {
    return this.knots[this.knots.length - 1]!;
  }

  /** Fits with stiffness λ (mm³); returns the greatest distance of a point from its fitted place. */
  fit(stiffness: number): number {
    const n = this.knots.length;
    const bands = this.#bands(stiffness);
    this.#second.fill(0);
    this.#solveInto(this.#second, bands);
    let worst = 0;
    for (let i = 0; i < n; i++) {
      for (let c = 0; c < 2; c++) this.#g[2 * i + c] = this.#points[2 * i + c]! - stiffness * this.#slack[i]! * this.#qRow(i, c);
      const dx = this.#g[2 * i]! - this.#points[2 * i]!;
      const dy = this.#g[2 * i + 1]! - this.#points[2 * i + 1]!;
      worst = Math.max(worst, dx * dx + dy * dy);
    }
    return Math.sqrt(worst);
  }

  /** Points at even parameters from `from` to `to`, at most `step` apart, both ends with them. */
  sample(from: number, to: number, step: number): Float64Array {
    const pieces = Math.max(1, Math.ceil((to - from) / step - 1e-9));
    return this.at(Float64Array.from({ length: pieces + 1 }, (_, k) => (k === pieces ? to : from + ((to - from) * k) / pieces)));
  }

  /** `count` points from `from` to `to` at even steps of the curve's own length, both ends with them. */
  evenly(from: number, to: number, count: number): Float64Array {
    const fine = 4 * count;
    const places = Float64Array.from({ length: fine + 1 }, (_, k) => from + ((to - from) * k) / fine);
    const arc = arcLengths({ xy: this.at(places) });
    const total = arc[fine]!;
    let i = 0;
    const even = Float64Array.from({ length: count }, (_, k) => {
      const s = (total * k) / (count - 1);
      while (i < fine - 1 && arc[i + 1]! <= s) i++;
      const span = arc[i + 1]! - arc[i]!;
      return k === count - 1 ? to : places[i]! + (span > 0 ? (s - arc[i]!) / span : 0) * (places[i + 1]! - places[i]!);
    });
    return this.at(even);
  }

  /** Points at parameters that do not decrease. */
  at(parameters: Float64Array): Float64Array {
    const out = new Float64Array(2 * parameters.length);
    let i = 0;
    for (let k = 0; k < parameters.length; k++) {
      const t = parameters[k]!;
      while (i < this.#step.length - 1 && this.knots[i + 1]! <= t) i++;
      const h = this.#step[i]!;
      const b = (t - this.knots[i]!) / h;
      const a = 1 - b;
      const bend = (h * h) / 6;
      for (let c = 0; c < 2; c++) {
        const j = 2 * i + c;
        out[2 * k + c] = a * this.#g[j]! + b * this.#g[j + 2]! + bend * ((a * a * a - a) * this.#second[j]! + (b * b * b - b) * this.#second[j + 2]!);
      }
    }
    return out;
  }

  /** Row i of Qγ: the jump that the second derivatives make at point i. */
  #qRow(i: number, c: number): number {
    const n = this.knots.length;
    const h = this.#step;
    const s = this.#second;
    let sum = 0;
    if (i > 0) sum += (s[2 * (i - 1) + c]! - s[2 * i + c]!) / h[i - 1]!;
    if (i < n - 1) sum += (s[2 * (i + 1) + c]! - s[2 * i + c]!) / h[i]!;
    return sum;
  }

  /** Diagonal and two upper bands of R + λ QᵀW⁻¹Q, row j for the inner point j + 1. */
  #bands(stiffness: number): { main: Float64Array; first: Float64Array; second: Float64Array } {
    const m = this.knots.length - 2;
    const h = this.#step;
    const v = this.#slack;
    const main = new Float64Array(m);
    const first = new Float64Array(m);
    const second = new Float64Array(m);
    for (let j = 0; j < m; j++) {
      const a = 1 / h[j]!;
      const b = 1 / h[j + 1]!;
      const mid = -a - b;
      main[j] = (h[j]! + h[j + 1]!) / 3 + stiffness * (a * a * v[j]! + mid * mid * v[j + 1]! + b * b * v[j + 2]!);
      if (j + 1 < m) first[j] = h[j + 1]! / 6 + stiffness * (mid * b * v[j + 1]! + b * (-b - 1 / h[j + 2]!) * v[j + 2]!);
      if (j + 2 < m) second[j] = (stiffness * b * v[j + 2]!) / h[j + 2]!;
    }
    return { main, first, second };
  }

  /** Solves the banded system for both coordinates by LDLᵀ; writes γ into the inner points of `out`. */
  #solveInto(out: Float64Array, { main, first, second }: { main: Float64Array; first: Float64Array; second: Float64Array }): void {
    const m = main.length;
    const p = this.#points;
    const h = this.#step;
    for (let j = 0; j < m; j++) {
      const d1 = j > 0 ? first[j - 1]! / main[j - 1]! : 0;
      const d2 = j > 1 ? second[j - 2]! / main[j - 2]! : 0;
      if (j > 0) main[j] = main[j]! - d1 * first[j - 1]! - (j > 1 ? d2 * second[j - 2]! : 0);
      if (j > 0 && j + 1 < m) first[j] = first[j]! - d1 * second[j - 1]!;
      for (let c = 0; c < 2; c++) {
        const k = 2 * j + c;
        let right = (p[k + 4]! - p[k + 2]!) / h[j + 1]! - (p[k + 2]! - p[k]!) / h[j]!;
        if (j > 0) right -= d1 * out[k]!;
        if (j > 1) right -= d2 * out[k - 2]!;
        out[k + 2] = right;
      }
    }
    for (let j = m - 1; j >= 0; j--) {
      for (let c = 0; c < 2; c++) {
        const k = 2 * (j + 1) + c;
        let value = out[k]! / main[j]!;
        if (j + 1 < m) value -= (first[j]! / main[j]!) * out[k + 2]!;
        if (j + 2 < m) value -= (second[j]! / main[j]!) * out[k + 4]!;
        out[k] = value;
      }
    }
  }
}

/**
 * Symmetric positive system whose unknowns touch at most the third neighbour, in a row or round a ring: a band of four diagonals
 * and the last three unknowns as a border, which takes up what closes the ring. LDLᵀ without pivots; time and room grow with n.
 */
export class BorderedBand {
  readonly n: number;
  /** A[i][i − d] at 4 i + d for the unknowns before the border. */
  readonly #band: Float64Array;
  /** A[n − 3 + r][j] at r n + j; beyond its diagonal unused. */
  readonly #border: Float64Array;
  /** The first unknown that the border touches: far back only where it closes a ring. */
  #touched: number;

  /** `n` unknowns, at least 7. */
  constructor(n: number) {
    this.n = n;
    this.#band = new Float64Array(4 * (n - 3));
    this.#border = new Float64Array(3 * n);
    this.#touched = n - 3;
  }

  /** Takes over another system's entries; both of one size and not yet factored. */
  copy(from: BorderedBand): void {
    this.#band.set(from.#band);
    this.#border.set(from.#border);
    this.#touched = from.#touched;
  }

  /** Adds v at (i, j) and (j, i). */
  add(i: number, j: number, v: number): void {
    const low = i > j ? i : j;
    const high = i > j ? j : i;
    const m = this.n - 3;
    if (low < m) this.#band[4 * low + low - high]! += v;
    else {
      this.#border[(low - m) * this.n + high]! += v;
      if (high < this.#touched && v !== 0) this.#touched = high;
    }
  }

  /** Adds w times the square of a row with these coefficients from column `at` on, round the ring where it runs over the end. */
  addSquare(at: number, w: number, a: number, b: number, c: number, d: number): void {
    const n = this.n;
    const [wa, wb, wc, wd] = [w * a, w * b, w * c, w * d];
    if (at + 3 < n - 3) {
      const band = this.#band;
      const o = 4 * at;
      band[o]! += wa * a;
      band[o + 4]! += wb * b;
      band[o + 5]! += wa * b;
      band[o + 8]! += wc * c;
      band[o + 9]! += wb * c;
      band[o + 10]! += wa * c;
      band[o + 12]! += wd * d;
      band[o + 13]! += wc * d;
      band[o + 14]! += wb * d;
      band[o + 15]! += wa * d;
      return;
    }
    const i = at + 1 < n ? at + 1 : at + 1 - n, j = at + 2 < n ? at + 2 : at + 2 - n, k = at + 3 < n ? at + 3 : at + 3 - n;
    this.add(at, at, wa * a);
    this.add(at, i, wa * b);
    this.add(at, j, wa * c);
    this.add(at, k, wa * d);
    this.add(i, i, wb * b);
    this.add(i, j, wb * c);
    this.add(i, k, wb * d);
    this.add(j, j, wc * c);
    this.add(j, k, wc * d);
    this.add(k, k, wd * d);
  }

  /** Writes A x; before {@link factor}. */
  times(x: Float64Array, out: Float64Array): void {
    const m = this.n - 3;
    const band = this.#band;
    out.fill(0);
    for (let i = 0; i < m; i++) {
      const here = x[i]!;
      let sum = band[4 * i]! * here;
      for (let d = 1; d <= 3 && d <= i; d++) {
        const v = band[4 * i + d]!;
        sum += v * x[i - d]!;
        out[i - d]! += v * here;
      }
      out[i] = sum;
    }
    for (let r = 0; r < 3; r++) {
      for (let j = this.#touched; j <= m + r; j++) {
        const v = this.#border[r * this.n + j]!;
        out[m + r]! += v * x[j]!;
        if (j < m + r) out[j]! += v * x[m + r]!;
      }
    }
  }

  /** Replaces the entries by their factors; a diagonal that rounding has spent is taken as the least that still divides. */
  factor(): void {
    const m = this.n - 3;
    const b = this.#band;
    for (let i = 0; i < m; i++) {
      const o = 4 * i;
      // uₖ = lᵢₖ dₖ until divided; the farthest neighbour first.
      const u3 = i > 2 ? b[o + 3]! : 0;
      const u2 = i > 1 ? b[o + 2]! - (i > 2 ? u3 * b[o - 7]! : 0) : 0;
      const u1 = i > 0 ? b[o + 1]! - (i > 2 ? u3 * b[o - 2]! : 0) - (i > 1 ? u2 * b[o - 3]! : 0) : 0;
      const l3 = i > 2 ? u3 / b[o - 12]! : 0;
      const l2 = i > 1 ? u2 / b[o - 8]! : 0;
      const l1 = i > 0 ? u1 / b[o - 4]! : 0;
      b[o + 3] = l3;
      b[o + 2] = l2;
      b[o + 1] = l1;
      b[o] = positive(b[o]! - l3 * u3 - l2 * u2 - l1 * u1);
    }
    for (let r = 0; r < 3; r++) this.#factorBorder(r);
  }

  #factorBorder(r: number): void {
    const n = this.n;
    const m = n - 3;
    const b = this.#band;
    const c = this.#border;
    const o = r * n;
    const first = this.#touched;
    for (let j = first; j < m; j++) {
      let u = c[o + j]!;
      if (j > 0) u -= c[o + j - 1]! * b[4 * j + 1]!;
      if (j > 1) u -= c[o + j - 2]! * b[4 * j + 2]!;
      if (j > 2) u -= c[o + j - 3]! * b[4 * j + 3]!;
      c[o + j] = u;
    }
    // Rows of the border against each other, the parts before the border first; u still holds l d.
    for (let q = 0; q <= r; q++) {
      let v = c[o + m + q]!;
      if (q < r) {
        for (let j = first; j < m; j++) v -= c[o + j]! * c[q * n + j]!;
        for (let k = 0; k < q; k++) v -= c[o + m + k]! * c[q * n + m + k]!;
        c[o + m + q] = v;
        continue;
      }
      for (let j = first; j < m; j++) {
        const l = c[o + j]! / b[4 * j]!;
        v -= l * c[o + j]!;
        c[o + j] = l;
      }
      for (let k = 0; k < r; k++) {
        const l = c[o + m + k]! / c[k * n + m + k]!;
        v -= l * c[o + m + k]!;
        c[o + m + k] = l;
      }
      c[o + m + r] = positive(v);
    }
  }

  /** Solves in place; after {@link factor}. */
  solve(x: Float64Array): void {
    const n = this.n;
    const m = n - 3;
    const b = this.#band;
    const c = this.#border;
    const first = this.#touched;
    for (let i = 0; i < m; i++) {
      let v = x[i]!;
      if (i > 0) v -= b[4 * i + 1]! * x[i - 1]!;
      if (i > 1) v -= b[4 * i + 2]! * x[i - 2]!;
      if (i > 2) v -= b[4 * i + 3]! * x[i - 3]!;
      x[i] = v;
    }
    for (let r = 0; r < 3; r++) {
      let v = x[m + r]!;
      for (let j = first; j < m + r; j++) v -= c[r * n + j]! * x[j]!;
      x[m + r] = v;
    }
    for (let i = 0; i < m; i++) x[i] = x[i]! / b[4 * i]!;
    for (let r = 2; r >= 0; r--) {
      let v = x[m + r]! / c[r * n + m + r]!;
      for (let q = r + 1; q < 3; q++) v -= c[q * n + m + r]! * x[m + q]!;
      x[m + r] = v;
    }
    for (let r = 0; r < 3; r++) for (let j = first; j < m; j++) x[j]! -= c[r * n + j]! * x[m + r]!;
    for (let i = m - 1; i >= 0; i--) {
      let v = x[i]!;
      if (i + 1 < m) v -= b[4 * (i + 1) + 1]! * x[i + 1]!;
      if (i + 2 < m) v -= b[4 * (i + 2) + 2]! * x[i + 2]!;
      if (i + 3 < m) v -= b[4 * (i + 3) + 3]! * x[i + 3]!;
      x[i] = v;
    }
  }
}

const positive = (d: number): number => (d > 1e-300 ? d : 1e-300);

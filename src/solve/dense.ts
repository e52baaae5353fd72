// Dense kernels on one heap of Float64. Rows are contiguous, so every inner loop is a dot product of contiguous runs; four
// rows and two columns are worked at once, so that six loads serve sixteen operations. `| 0` keeps addresses 32-bit integers,
// which spares the engine its overflow checks (1.7 times the speed, measured). Long functions: one numeric loop each.

/**
 * Solves x · Lᵀ = row in place for the rows `from … to - 1` of a panel with rows of `width` entries, for the columns
 * `first … last - 1` (an even number of them unless the last). L is the panel's own upper part, its diagonal held as
 * reciprocals. Columns before `first` are already solved.
 */
export function solveRows(h: Float64Array, panel: number, width: number, from: number, to: number, first: number, last: number): void {
  let i = from;
  for (; i + 4 <= to; i += 4) {
    const row = (panel + i * width) | 0;
    let j = first;
    for (; j + 2 <= last; j += 2) {
      let c0 = (panel + j * width) | 0;
      let c1 = (c0 + width) | 0;
      const end = (c0 + j) | 0;
      let r0 = row;
      let r1 = (r0 + width) | 0;
      let r2 = (r1 + width) | 0;
      let r3 = (r2 + width) | 0;
      let a0 = 0, a1 = 0, b0 = 0, b1 = 0, d0 = 0, d1 = 0, e0 = 0, e1 = 0;
      while (c0 < end) {
        const x = h[c0]!;
        const y = h[c1]!;
        const p = h[r0]!;
        a0 += p * x;
        a1 += p * y;
        const q = h[r1]!;
        b0 += q * x;
        b1 += q * y;
        const s = h[r2]!;
        d0 += s * x;
        d1 += s * y;
        const t = h[r3]!;
        e0 += t * x;
        e1 += t * y;
        c0 = (c0 + 1) | 0;
        c1 = (c1 + 1) | 0;
        r0 = (r0 + 1) | 0;
        r1 = (r1 + 1) | 0;
        r2 = (r2 + 1) | 0;
        r3 = (r3 + 1) | 0;
      }
      const u = h[c0]!; // 1 / L[j][j]
      const v = h[c1]!; // L[j + 1][j]
      const w = h[(c1 + 1) | 0]!; // 1 / L[j + 1][j + 1]
      const a = (h[r0]! - a0) * u;
      h[r0] = a;
      h[(r0 + 1) | 0] = (h[(r0 + 1) | 0]! - a1 - a * v) * w;
      const b = (h[r1]! - b0) * u;
      h[r1] = b;
      h[(r1 + 1) | 0] = (h[(r1 + 1) | 0]! - b1 - b * v) * w;
      const d = (h[r2]! - d0) * u;
      h[r2] = d;
      h[(r2 + 1) | 0] = (h[(r2 + 1) | 0]! - d1 - d * v) * w;
      const e = (h[r3]! - e0) * u;
      h[r3] = e;
      h[(r3 + 1) | 0] = (h[(r3 + 1) | 0]! - e1 - e * v) * w;
    }
    if (j < last) for (let r = 0; r < 4; r++) solveRest(h, panel, width, i + r, j, last);
  }
  for (; i < to; i++) solveRest(h, panel, width, i, first, last);
}

/** The same for one row. */
function solveRest(h: Float64Array, panel: number, width: number, i: number, first: number, last: number): void {
  const row = (panel + i * width) | 0;
  for (let j = first; j < last; j++) {
    const c = (panel + j * width) | 0;
    let sum = 0;
    for (let k = 0; k < j; k++) sum += h[(row + k) | 0]! * h[(c + k) | 0]!;
    h[(row + j) | 0] = (h[(row + j) | 0]! - sum) * h[(c + j) | 0]!;
  }
}

/**
 * Cholesky factor of the panel's upper square, lower triangle, in place; the diagonal comes out as reciprocals.
 * @returns -1, or the column whose pivot is not positive
 */
export function factorTriangle(h: Float64Array, panel: number, width: number): number {
  for (let j = 0; j < width; j += 2) {
    const c0 = (panel + j * width) | 0;
    const c1 = (c0 + width) | 0;
    const pair = j + 1 < width;
    let aa = 0;
    let ab = 0;
    let bb = 0;
    for (let k = 0; k < j; k++) {
      const x = h[(c0 + k) | 0]!;
      aa += x * x;
      if (!pair) continue;
      const y = h[(c1 + k) | 0]!;
      ab += x * y;
      bb += y * y;
    }
    const p = h[(c0 + j) | 0]! - aa;
    if (!(p > 0)) return j;
    const u = 1 / Math.sqrt(p);
    h[(c0 + j) | 0] = u;
    if (!pair) break;
    const v = (h[(c1 + j) | 0]! - ab) * u;
    h[(c1 + j) | 0] = v;
    const q = h[(c1 + j + 1) | 0]! - bb - v * v;
    if (!(q > 0)) return j + 1;
    h[(c1 + j + 1) | 0] = 1 / Math.sqrt(q);
    solveRows(h, panel, width, j + 2, width, j, j + 2);
  }
  return -1;
}

/**
 * U = −P Pᵀ for the `m` rows of `width` entries at `p`; only the lower triangle of U (m rows of m entries at `u`) is meant,
 * entries right above the diagonal may be written too.
 */
export function negativeOuterInto(h: Float64Array, p: number, width: number, m: number, u: number): void {
  let i = 0;
  for (; i + 4 <= m; i += 4) {
    for (let j = 0; j < i + 4; j += 2) {
      let c0 = (p + j * width) | 0;
      let c1 = (c0 + width) | 0;
      const end = c1;
      let r0 = (p + i * width) | 0;
      let r1 = (r0 + width) | 0;
      let r2 = (r1 + width) | 0;
      let r3 = (r2 + width) | 0;
      let a0 = 0, a1 = 0, b0 = 0, b1 = 0, d0 = 0, d1 = 0, e0 = 0, e1 = 0;
      while (c0 < end) {
        const x = h[c0]!;
        const y = h[c1]!;
        const f = h[r0]!;
        a0 -= f * x;
        a1 -= f * y;
        const q = h[r1]!;
        b0 -= q * x;
        b1 -= q * y;
        const s = h[r2]!;
        d0 -= s * x;
        d1 -= s * y;
        const t = h[r3]!;
        e0 -= t * x;
        e1 -= t * y;
        c0 = (c0 + 1) | 0;
        c1 = (c1 + 1) | 0;
        r0 = (r0 + 1) | 0;
        r1 = (r1 + 1) | 0;
        r2 = (r2 + 1) | 0;
        r3 = (r3 + 1) | 0;
      }
      let z = (u + i * m + j) | 0;
      h[z] = a0;
      h[(z + 1) | 0] = a1;
      z = (z + m) | 0;
      h[z] = b0;
      h[(z + 1) | 0] = b1;
      z = (z + m) | 0;
      h[z] = d0;
      h[(z + 1) | 0] = d1;
      z = (z + m) | 0;
      h[z] = e0;
      h[(z + 1) | 0] = e1;
    }
  }
  for (; i < m; i++) negativeOuterRow(h, p, width, i, (u + i * m) | 0);
}

/** The same for one row, two columns at a time. */
function negativeOuterRow(h: Float64Array, p: number, width: number, i: number, u: number): void {
  const row = (p + i * width) | 0;
  let j = 0;
  for (; j + 2 <= i + 1; j += 2) {
    let c0 = (p + j * width) | 0;
    let c1 = (c0 + width) | 0;
    const end = c1;
    let r = row;
    let a = 0, b = 0;
    while (c0 < end) {
      const x = h[r]!;
      a -= x * h[c0]!;
      b -= x * h[c1]!;
      c0 = (c0 + 1) | 0;
      c1 = (c1 + 1) | 0;
      r = (r + 1) | 0;
    }
    h[(u + j) | 0] = a;
    h[(u + j + 1) | 0] = b;
  }
  if (j > i) return;
  let sum = 0;
  for (let k = 0; k < width; k++) sum -= h[(row + k) | 0]! * h[(p + j * width + k) | 0]!;
  h[(u + j) | 0] = sum;
}

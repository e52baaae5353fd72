// Dense kernels on one heap of Float64, columns contiguous. Every entry is one sum over the columns in their order, whatever the
// tile it is worked in, so that the compiled twin (kernels/cholesky.ts), whose tiles are larger, gives the same bits. Four rows
// and two columns are worked at once: six loads serve sixteen operations. `| 0` keeps addresses 32-bit integers, which spares
// the engine its overflow checks (1.7 times the speed, measured). Long functions: one numeric loop each.

/**
 * Solves X · Lᵀ = B in place for the rows `from … to - 1` of a panel (columns of `tall` entries), columns `first … last - 1`
 * (an even number of them unless the last). L is the panel's own upper part, its diagonal held as reciprocals. Columns before
 * `first` are already solved.
 */
export function solveColumns(h: Float64Array, panel: number, tall: number, from: number, to: number, first: number, last: number): void {
  let i = from;
  for (; i + 4 <= to; i += 4) {
    let j = first;
    for (; j + 2 <= last; j += 2) {
      let c = (panel + j) | 0;
      let r = (panel + i) | 0;
      const end = (r + j * tall) | 0;
      let a0 = 0, a1 = 0, b0 = 0, b1 = 0, d0 = 0, d1 = 0, e0 = 0, e1 = 0;
      while (r < end) {
        const x = h[c]!;
        const y = h[(c + 1) | 0]!;
        const p = h[r]!;
        a0 += p * x;
        a1 += p * y;
        const q = h[(r + 1) | 0]!;
        b0 += q * x;
        b1 += q * y;
        const s = h[(r + 2) | 0]!;
        d0 += s * x;
        d1 += s * y;
        const t = h[(r + 3) | 0]!;
        e0 += t * x;
        e1 += t * y;
        c = (c + tall) | 0;
        r = (r + tall) | 0;
      }
      const u = h[c]!; // 1 / L[j][j]
      const v = h[(c + 1) | 0]!; // L[j + 1][j]
      const w = h[(c + tall + 1) | 0]!; // 1 / L[j + 1][j + 1]
      const z = (r + tall) | 0;
      const a = (h[r]! - a0) * u;
      const b = (h[(r + 1) | 0]! - b0) * u;
      const d = (h[(r + 2) | 0]! - d0) * u;
      const e = (h[(r + 3) | 0]! - e0) * u;
      h[r] = a;
      h[(r + 1) | 0] = b;
      h[(r + 2) | 0] = d;
      h[(r + 3) | 0] = e;
      h[z] = (h[z]! - a1 - a * v) * w;
      h[(z + 1) | 0] = (h[(z + 1) | 0]! - b1 - b * v) * w;
      h[(z + 2) | 0] = (h[(z + 2) | 0]! - d1 - d * v) * w;
      h[(z + 3) | 0] = (h[(z + 3) | 0]! - e1 - e * v) * w;
    }
    if (j < last) for (let r = 0; r < 4; r++) solveRow(h, panel, tall, i + r, j, last);
  }
  for (; i < to; i++) solveRow(h, panel, tall, i, first, last);
}

/** The same for one row; pairs of columns as above, so that the order of its sums is the same. */
function solveRow(h: Float64Array, panel: number, tall: number, i: number, first: number, last: number): void {
  let j = first;
  for (; j + 2 <= last; j += 2) {
    let c = (panel + j) | 0;
    let r = (panel + i) | 0;
    const end = (r + j * tall) | 0;
    let a0 = 0, a1 = 0;
    for (; r < end; c = (c + tall) | 0, r = (r + tall) | 0) {
      const p = h[r]!;
      a0 += p * h[c]!;
      a1 += p * h[(c + 1) | 0]!;
    }
    const a = (h[r]! - a0) * h[c]!;
    h[r] = a;
    const z = (r + tall) | 0;
    h[z] = (h[z]! - a1 - a * h[(c + 1) | 0]!) * h[(c + tall + 1) | 0]!;
  }
  if (j === last) return;
  let c = (panel + j) | 0;
  let r = (panel + i) | 0;
  const end = (r + j * tall) | 0;
  let sum = 0;
  for (; r < end; c = (c + tall) | 0, r = (r + tall) | 0) sum += h[r]! * h[c]!;
  h[r] = (h[r]! - sum) * h[c]!;
}

/**
 * Cholesky factor of the panel's upper square, lower triangle, in place; the diagonal comes out as reciprocals.
 * @returns -1, or the column whose pivot is not positive
 */
export function factorTriangle(h: Float64Array, panel: number, tall: number, width: number): number {
  for (let j = 0; j < width; j += 2) {
    let c = (panel + j) | 0;
    const end = (c + j * tall) | 0;
    const pair = j + 1 < width;
    let aa = 0;
    let ab = 0;
    let bb = 0;
    for (; c < end; c = (c + tall) | 0) {
      const x = h[c]!;
      aa += x * x;
      if (!pair) continue;
      const y = h[(c + 1) | 0]!;
      ab += x * y;
      bb += y * y;
    }
    const p = h[c]! - aa;
    if (!(p > 0)) return j;
    const u = 1 / Math.sqrt(p);
    h[c] = u;
    if (!pair) break;
    const v = (h[(c + 1) | 0]! - ab) * u;
    h[(c + 1) | 0] = v;
    const z = (c + tall + 1) | 0;
    const q = h[z]! - bb - v * v;
    if (!(q > 0)) return j + 1;
    h[z] = 1 / Math.sqrt(q);
    solveColumns(h, panel, tall, j + 2, width, j, j + 2);
  }
  return -1;
}

/**
 * U = −P Pᵀ for the `m` rows from `p` on of a panel with `width` columns of `tall` entries. U has m columns of m entries at `u`;
 * only its lower triangle is meant, entries right above the diagonal may be written too.
 */
export function negativeOuterInto(h: Float64Array, p: number, tall: number, width: number, m: number, u: number): void {
  const over = (width * tall) | 0;
  let j = 0;
  for (; j + 2 <= m; j += 2) {
    let i = j;
    for (; i + 4 <= m; i += 4) {
      let c = (p + j) | 0;
      let r = (p + i) | 0;
      const end = (r + over) | 0;
      let a0 = 0, a1 = 0, b0 = 0, b1 = 0, d0 = 0, d1 = 0, e0 = 0, e1 = 0;
      while (r < end) {
        const x = h[c]!;
        const y = h[(c + 1) | 0]!;
        const f = h[r]!;
        a0 -= f * x;
        a1 -= f * y;
        const q = h[(r + 1) | 0]!;
        b0 -= q * x;
        b1 -= q * y;
        const s = h[(r + 2) | 0]!;
        d0 -= s * x;
        d1 -= s * y;
        const t = h[(r + 3) | 0]!;
        e0 -= t * x;
        e1 -= t * y;
        c = (c + tall) | 0;
        r = (r + tall) | 0;
      }
      let z = (u + j * m + i) | 0;
      h[z] = a0;
      h[(z + 1) | 0] = b0;
      h[(z + 2) | 0] = d0;
      h[(z + 3) | 0] = e0;
      z = (z + m) | 0;
      h[z] = a1;
      h[(z + 1) | 0] = b1;
      h[(z + 2) | 0] = d1;
      h[(z + 3) | 0] = e1;
    }
    for (; i < m; i++) {
      outerEntry(h, (p + i) | 0, (p + j) | 0, tall, over, (u + j * m + i) | 0);
      outerEntry(h, (p + i) | 0, (p + j + 1) | 0, tall, over, (u + j * m + m + i) | 0);
    }
  }
  if (j < m) outerEntry(h, (p + j) | 0, (p + j) | 0, tall, over, (u + j * m + j) | 0);
}

/** One entry of U: row `r` against row `c`, to `z`. */
function outerEntry(h: Float64Array, r: number, c: number, tall: number, over: number, z: number): void {
  let sum = 0;
  for (const end = (r + over) | 0; r < end; r = (r + tall) | 0, c = (c + tall) | 0) sum -= h[r]! * h[c]!;
  h[z] = sum;
}

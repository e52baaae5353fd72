import { distanceInSpace } from "#flatten/distance.ts";
import type { BlockPattern } from "#solve/block-pattern.ts";

/**
 * A tape along rows of the rim as bars that resist being stretched: ½ T (λ − 1)² for each length on the flat, λ = length on the last by
 * length on the flat. Where two rows end at the two banks of a seam, the tape runs on over it: its mean pull there is taken by the other bank.
 */
export class TapeBars {
  readonly #a: number[] = [];
  readonly #b: number[] = [];
  readonly #lengths: number[] = [];
  readonly #stiffN: number;
  /** First bar of each row, whose first vertex is where the tape runs on. */
  readonly #ends: number[] = [];
  readonly #positions: Float64Array;

  constructor(rows: readonly Uint32Array[], stiffN: number, positions: Float64Array) {
    this.#stiffN = stiffN;
    this.#positions = positions;
    for (const row of rows) {
      this.#ends.push(this.#a.length);
      for (let k = 0; k + 1 < row.length; k++) {
        this.#a.push(row[k]!);
        this.#b.push(row[k + 1]!);
        this.#lengths.push(distanceInSpace(positions, row[k]!, row[k + 1]!));
      }
    }
  }

  energy(uv: Float64Array): number {
    let sum = 0;
    for (let k = 0; k < this.#a.length; k++) {
      const flat = this.#flat(uv, k), more = this.#lengths[k]! / flat - 1;
      sum += 0.5 * this.#stiffN * more * more * flat;
    }
    return sum;
  }

  /** Adds gradient, and where `values` are given the Hessian, without what pushes along the bars take from it. */
  addDerivativesInto(gradient: Float64Array, values: Float64Array | undefined, pattern: BlockPattern, uv: Float64Array): void {
    for (let k = 0; k < this.#a.length; k++) {
      const p = Math.min(this.#a[k]!, this.#b[k]!), q = Math.max(this.#a[k]!, this.#b[k]!);
      const flat = this.#flat(uv, k), stretch = this.#lengths[k]! / flat;
      const nu = (uv[2 * q]! - uv[2 * p]!) / flat, nv = (uv[2 * q + 1]! - uv[2 * p + 1]!) / flat;
      const first = 0.5 * this.#stiffN * (1 - stretch * stretch);
      gradient[2 * p]! -= first * nu;
      gradient[2 * p + 1]! -= first * nv;
      gradient[2 * q]! += first * nu;
      gradient[2 * q + 1]! += first * nv;
      if (!values) continue;
      const second = (this.#stiffN * stretch * stretch) / flat;
      const [uu, uw, ww] = [second * nu * nu, second * nu * nv, second * nv * nv];
      for (const at of [4 * p, 4 * q]) {
        values[at]! += uu;
        values[at + 2]! += uw;
        values[at + 3]! += ww;
      }
      const at = 4 * pattern.slot(p, q);
      values[at]! -= uu;
      values[at + 1]! -= uw;
      values[at + 2]! -= uw;
      values[at + 3]! -= ww;
    }
  }

  /** Takes out of a gradient what the seam carries at the rows' beginnings. */
  addEndsInto(gradient: Float64Array, uv: Float64Array): void {
    const pull = this.#endPull(uv);
    for (const k of this.#ends) {
      const [a, b] = [this.#a[k]!, this.#b[k]!];
      const flat = this.#flat(uv, k), stretch = this.#lengths[k]! / flat;
      const own = this.#stiffN * (stretch - 1), share = own !== 0 ? pull / own : 0;
      const first = (0.5 * this.#stiffN * (1 - stretch * stretch) * share) / flat;
      gradient[2 * a]! += first * (uv[2 * b]! - uv[2 * a]!);
      gradient[2 * a + 1]! += first * (uv[2 * b + 1]! - uv[2 * a + 1]!);
    }
  }

  /** Adds the bars' forces to those of the sheet at the vertices, without what the seam carries. */
  addForcesInto(inner: Float64Array, uv: Float64Array): void {
    const pull = this.#endPull(uv);
    for (let k = 0; k < this.#a.length; k++) {
      const [a, b] = [3 * this.#a[k]!, 3 * this.#b[k]!];
      const own = this.#stiffN * (this.#lengths[k]! / this.#flat(uv, k) - 1), atStart = this.#ends.includes(k) ? own - pull : own;
      for (let i = 0; i < 3; i++) {
        const way = (this.#positions[b + i]! - this.#positions[a + i]!) / this.#lengths[k]!;
        inner[a + i]! -= atStart * way;
        inner[b + i]! += own * way;
      }
    }
  }

  /** Pull of the tape where it runs on over the seam, N. */
  #endPull(uv: Float64Array): number {
    let sum = 0;
    for (const k of this.#ends) sum += this.#stiffN * (this.#lengths[k]! / this.#flat(uv, k) - 1);
    return this.#ends.length > 0 ? sum / this.#ends.length : 0;
  }

  #flat(uv: Float64Array, k: number): number {
    const du = uv[2 * this.#b[k]!]! - uv[2 * this.#a[k]!]!, dv = uv[2 * this.#b[k]! + 1]! - uv[2 * this.#a[k]! + 1]!;
    return Math.sqrt(du * du + dv * dv);
  }
}

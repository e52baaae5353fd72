import { distanceInSpace } from "#flatten/distance.ts";
import type { BlockPattern } from "#solve/block-pattern.ts";
import { addBarInto } from "./bar-blocks.ts";

/**
 * A tape along rows of the rim as bars that resist being stretched: ½ T (λ − 1)² for each length on the flat, λ = length on the last by
 * length on the flat. Where two rows end at the two banks of a seam, the tape runs on over it: its mean pull there is taken by the other bank.
 *
 * Its forces on the last are what counts, N = T (λ − 1) along each bar: as an energy of the flat shape a stretched tape would be a row of struts,
 * since the longer it is cut the less it is stretched, and would bend to and fro.
 */
export class TapeBars {
  readonly #a: number[] = [];
  readonly #b: number[] = [];
  readonly #lengths: number[] = [];
  readonly #stiffN: number;
  /** First bar of each row, whose first vertex is where the tape runs on. */
  readonly #ends: number[] = [];
  readonly #positions: Float64Array;
  readonly #lagged: Float64Array;

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
    this.#lagged = new Float64Array(this.#a.length);
  }

  /** Takes the bars' lengths on the flat, about which {@link energy} tells how firm they are. */
  lag(uv: Float64Array): void {
    for (let k = 0; k < this.#a.length; k++) this.#lagged[k] = this.#flat(uv, k);
  }

  /** What a change of the bars' lengths since {@link lag} costs beyond the work of their forces. */
  energy(uv: Float64Array): number {
    let sum = 0;
    for (let k = 0; k < this.#a.length; k++) sum += this.#firm(k) * (this.#flat(uv, k) - this.#lagged[k]!) ** 2;
    return 0.5 * sum;
  }

  /** Adds the second derivatives of {@link energy} there. */
  addHessianInto(values: Float64Array, pattern: BlockPattern, uv: Float64Array): void {
    for (let k = 0; k < this.#a.length; k++) {
      const p = Math.min(this.#a[k]!, this.#b[k]!), q = Math.max(this.#a[k]!, this.#b[k]!);
      const flat = this.#lagged[k]!, firm = this.#firm(k);
      const nu = (uv[2 * q]! - uv[2 * p]!) / flat, nv = (uv[2 * q + 1]! - uv[2 * p + 1]!) / flat;
      addBarInto(values, pattern, p, q, firm * nu * nu, firm * nu * nv, firm * nv * nv);
    }
  }

  /** T λ² for each length on the flat: how its work changes with that. */
  #firm(k: number): number {
    const flat = this.#lagged[k]!, stretch = this.#lengths[k]! / flat;
    return (this.#stiffN * stretch * stretch) / flat;
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

import type { BlockPattern } from "#solve/block-pattern.ts";
import { addBarInto } from "./bar-blocks.ts";

/**
 * Rows of edges that are to lie no longer on the flat than they are cut: ½ N (d/t − 1)² t for each edge whose length d there is beyond its
 * own t; shorter ones are left alone, since a row that is pushed together would only bend to and fro.
 */
export class CutRows {
  readonly #a: Uint32Array;
  readonly #b: Uint32Array;
  readonly #length: Float64Array;

  /** `of`: the flat shape whose lengths they are to keep. */
  constructor(rows: readonly Uint32Array[], of: Float64Array) {
    const pairs = rows.flatMap((row) => Array.from(row.subarray(1), (b, k) => [row[k]!, b] as const));
    this.#a = Uint32Array.from(pairs, ([a, b]) => Math.min(a, b));
    this.#b = Uint32Array.from(pairs, ([a, b]) => Math.max(a, b));
    this.#length = Float64Array.from(this.#a, (_, k) => this.#now(of, k));
  }

  energy(uv: Float64Array): number {
    let sum = 0;
    for (let k = 0; k < this.#a.length; k++) {
      const over = this.#now(uv, k) / this.#length[k]! - 1;
      if (over > 0) sum += over * over * this.#length[k]!;
    }
    return 0.5 * firmN * sum;
  }

  /** Adds gradient, and where `values` are given the Hessian, which is never negative. */
  addDerivativesInto(gradient: Float64Array, values: Float64Array | undefined, pattern: BlockPattern, uv: Float64Array): void {
    for (let k = 0; k < this.#a.length; k++) {
      const mm = this.#now(uv, k), over = mm / this.#length[k]! - 1;
      if (!(over > 0)) continue;
      const p = this.#a[k]!, q = this.#b[k]!, pull = firmN * over;
      const nu = (uv[2 * q]! - uv[2 * p]!) / mm, nv = (uv[2 * q + 1]! - uv[2 * p + 1]!) / mm;
      gradient[2 * p]! -= pull * nu;
      gradient[2 * p + 1]! -= pull * nv;
      gradient[2 * q]! += pull * nu;
      gradient[2 * q + 1]! += pull * nv;
      if (!values) continue;
      const across = pull / mm, along = firmN / this.#length[k]! - across;
      addBarInto(values, pattern, p, q, across + along * nu * nu, along * nu * nv, across + along * nv * nv);
    }
  }

  #now(uv: Float64Array, k: number): number {
    const a = 2 * this.#a[k]!, b = 2 * this.#b[k]!;
    const du = uv[b]! - uv[a]!, dv = uv[b + 1]! - uv[a + 1]!;
    return Math.sqrt(du * du + dv * dv);
  }
}

/** Force that would draw a row out to twice its length, N: far above any leather's edge. */
const firmN = 8000;

import { must } from "#base/bug.ts";
import type { Sheet, SheetInput } from "#wrap/sheet.ts";

/** Threads that run along edges of the sheet: a tape in the topline, a stitched seam. */
export interface BarsInput {
  /** Vertices at the ends of each piece, a0 b0 a1 b1 … */
  readonly pairs: Uint32Array;
  /** Force that would double its length if it went on as it begins, N. */
  readonly stiffness: number;
  /** Unstretched length of each piece, mm; left out: as it lies in the flat. */
  readonly lengths?: Float64Array;
}

/** Energy of threads: N/2 (λ − 1)² for each mm of unstretched length, λ the stretch. */
export class Bars {
  readonly pairs: Uint32Array;
  readonly #lengths: Float64Array;
  readonly #stiffness: number;
  readonly #unknown: Int32Array;
  readonly #block = new Float64Array(6);
  readonly #u = new Float64Array(3);

  constructor(sheet: Sheet, { flat }: SheetInput, { pairs, stiffness, lengths }: BarsInput) {
    this.pairs = pairs.map((v) => sheet.pointOf[v]!);
    this.#unknown = sheet.unknown;
    this.#stiffness = stiffness;
    this.#lengths = lengths ?? Float64Array.from({ length: pairs.length / 2 }, (_, k) => {
      const a = 2 * pairs[2 * k]!, b = 2 * pairs[2 * k + 1]!;
      return Math.sqrt((flat[b]! - flat[a]!) ** 2 + (flat[b + 1]! - flat[a + 1]!) ** 2);
    });
    must(this.#lengths.every((length) => length > 0), "a piece of a thread has a length");
  }

  /** Way from one end to the other to #u. @returns its length */
  #way(x: Float64Array, k: number): number {
    const a = 3 * this.pairs[2 * k]!, b = 3 * this.pairs[2 * k + 1]!, u = this.#u;
    for (let d = 0; d < 3; d++) u[d] = x[b + d]! - x[a + d]!;
    return Math.sqrt(u[0]! * u[0]! + u[1]! * u[1]! + u[2]! * u[2]!);
  }

  energy(x: Float64Array): number {
    let sum = 0;
    for (let k = 0; k < this.#lengths.length; k++) {
      const length = this.#lengths[k]!, over = this.#way(x, k) / length - 1;
      sum += length * over * over;
    }
    return 0.5 * this.#stiffness * sum;
  }

  /** Force in each piece, N, above 0 where it pulls. */
  forces(x: Float64Array): Float64Array {
    return this.#lengths.map((length, k) => this.#stiffness * (this.#way(x, k) / length - 1));
  }

  /** Adds gradient and second derivatives; 21 places a piece as in WrapSystem.ofPairs. `push`: share with which stiffness below 0 counts. */
  addInto(gradient: Float64Array, values: Float64Array, slots: Int32Array, x: Float64Array, push: number): void {
    const u = this.#u, block = this.#block;
    for (let k = 0; k < this.#lengths.length; k++) {
      const length = this.#lengths[k]!, now = this.#way(x, k);
      if (!(now > 0)) continue;
      const force = this.#stiffness * (now / length - 1), along = this.#stiffness / length;
      const aside = (force > 0 ? force : push * force) / now;
      for (let d = 0; d < 3; d++) u[d]! /= now;
      for (let end = 0; end < 2; end++) {
        const at = this.#unknown[this.pairs[2 * k + end]!]!;
        if (at >= 0) for (let d = 0; d < 3; d++) gradient[at + d]! += (end === 0 ? -force : force) * u[d]!;
      }
      for (let r = 0, i = 0; r < 3; r++) for (let q = 0; q <= r; q++, i++) block[i] = (along - aside) * u[r]! * u[q]! + (r === q ? aside : 0);
      for (let r = 0, i = 21 * k; r < 6; r++)
        for (let q = 0; q <= r; q++, i++) if (slots[i]! >= 0) values[slots[i]!]! += r < 3 === q < 3 ? entry(block, r % 3, q % 3) : -entry(block, r % 3, q % 3);
    }
  }
}

const entry = (block: Float64Array, r: number, q: number): number => (r >= q ? block[(r * (r + 1)) / 2 + q]! : block[(q * (q + 1)) / 2 + r]!);

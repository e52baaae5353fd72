import type { Law } from "./law.ts";

/** How firm against the push at which the sheet lies in pleats: so much of it keeps a sheet in pleats even down to 60 % of its width. */
const firmness = 0.15;
/** Directions in which the push is looked for, beyond the limit. */
const beyond = 0.02;

/**
 * A sheet that lies in pleats goes on being pushed together at one and the same force: where it does so is then left to chance, and one
 * row of triangles would take up all of it. This adds c/2 (1/(1 + 2E) − 1/(1 + 2 limit))² of each principal strain E below the limit, just
 * enough for a push per flat width to grow with the push, so that pleats spread out evenly. Nothing is added where nothing is in pleats.
 */
export class FirmPleats implements Law {
  /** The law without what is added. */
  readonly within: Law;
  readonly #limit: number;
  readonly #c: number;
  readonly #one = new Float64Array(3);

  constructor(law: Law, limit: number) {
    const out = new Float64Array(9);
    law.into(out, limit - beyond, 0, 0);
    const first = -out[0]!;
    law.into(out, 0, limit - beyond, 0);
    this.within = law;
    this.#limit = limit;
    this.#c = firmness * Math.max(first, -out[1]!);
  }

  energy(e1: number, e2: number, g: number): number {
    const mean = 0.5 * (e1 + e2), radius = 0.5 * Math.sqrt((e1 - e2) * (e1 - e2) + g * g);
    let sum = this.within.energy(e1, e2, g);
    if (mean - radius < this.#limit) sum += this.#at(mean - radius) + this.#at(mean + radius);
    return sum;
  }

  into(out: Float64Array, e1: number, e2: number, g: number): void {
    this.within.into(out, e1, e2, g);
    const mean = 0.5 * (e1 + e2), radius = 0.5 * Math.sqrt((e1 - e2) * (e1 - e2) + g * g);
    if (!(mean - radius < this.#limit)) return;
    this.#at(mean + radius);
    const [, a, A] = this.#one as unknown as [number, number, number];
    this.#at(mean - radius);
    const [, b, B] = this.#one as unknown as [number, number, number];
    const p = radius > 0 ? (0.5 * (e1 - e2)) / radius : 1, s = radius > 0 ? (0.5 * g) / radius : 0;
    const half = 0.5 * (a - b), turn = radius > 1e-9 ? (a - b) / radius : A + B;
    // Gradients of the larger and the smaller strain, and of the direction between them.
    const u1 = 0.5 + 0.5 * p, u2 = 0.5 - 0.5 * p, u3 = 0.5 * s, t1 = 0.5 * s, t3 = -0.5 * p;
    out[0]! += 0.5 * (a + b) + half * p;
    out[1]! += 0.5 * (a + b) - half * p;
    out[2]! += half * s;
    out[3]! += A * u1 * u1 + B * u2 * u2 + turn * t1 * t1;
    out[4]! += A * u2 * u2 + B * u1 * u1 + turn * t1 * t1;
    out[5]! += (A + B) * u3 * u3 + turn * t3 * t3;
    out[6]! += (A + B) * u1 * u2 - turn * t1 * t1;
    out[7]! += A * u1 * u3 - B * u2 * u3 + turn * t1 * t3;
    out[8]! += A * u2 * u3 - B * u1 * u3 - turn * t1 * t3;
  }

  /** Energy of one principal strain; its first and second derivative into #one. */
  #at(e: number): number {
    this.#one.fill(0);
    if (!(e < this.#limit)) return 0;
    const q = 1 / (1 + 2 * e), off = q - 1 / (1 + 2 * this.#limit);
    this.#one[0] = 0.5 * this.#c * off * off;
    this.#one[1] = -2 * this.#c * off * q * q;
    this.#one[2] = 4 * this.#c * q * q * q * (q + 2 * off);
    return this.#one[0];
  }
}

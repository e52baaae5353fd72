import type { SheetForces } from "./sheet-forces.ts";

/**
 * Friction of the sheet on the last: a share of the pressure, against the way that the sheet slides. That way is given (`along`, three
 * numbers a vertex of length 1), or follows from where the sheet lay before it was pulled (`from`, its flat shape then).
 */
export type Friction = { readonly share: number; readonly along: Float64Array } | { readonly share: number; readonly from: Float64Array };

/** Slips much shorter than this are held by less than the whole friction, mm: it lets the way of the slide turn without a jump. */
const softMm = 0.3;

/**
 * Friction where the way of the slide follows from the sheet's shape: Σ share · N · (√(|F (X₀ − X)|² + soft²) − soft), N and F of the
 * step before; convex in X.
 */
export class Slip {
  readonly #from: Float64Array;
  readonly #share: number;
  readonly #map: Float64Array;
  readonly #holdN: Float64Array;

  constructor(share: number, from: Float64Array) {
    this.#share = share;
    this.#from = from;
    this.#map = new Float64Array(3 * from.length);
    this.#holdN = new Float64Array(from.length / 2);
  }

  /** Takes F and the forces on the last's surface (N, one a vertex) for the next step. */
  lag({ map }: SheetForces, pressN: Float64Array): void {
    this.#map.set(map);
    for (let i = 0; i < pressN.length; i++) this.#holdN[i] = this.#share * Math.max(0, pressN[i]!);
  }

  energy(uv: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < this.#holdN.length; i++) sum += this.#holdN[i]! * (Math.sqrt(this.#slipSquared(uv, i) + softMm * softMm) - softMm);
    return sum;
  }

  addDerivativesInto(gradient: Float64Array, values: Float64Array | undefined, uv: Float64Array): void {
    const m = this.#map;
    for (let i = 0; i < this.#holdN.length; i++) {
      const size = Math.sqrt(this.#slipSquared(uv, i) + softMm * softMm), w = this.#holdN[i]! / size;
      const u = uv[2 * i]! - this.#from[2 * i]!, v = uv[2 * i + 1]! - this.#from[2 * i + 1]!, at = 6 * i;
      const c11 = m[at]! * m[at]! + m[at + 2]! * m[at + 2]! + m[at + 4]! * m[at + 4]!;
      const c22 = m[at + 1]! * m[at + 1]! + m[at + 3]! * m[at + 3]! + m[at + 5]! * m[at + 5]!;
      const c12 = m[at]! * m[at + 1]! + m[at + 2]! * m[at + 3]! + m[at + 4]! * m[at + 5]!;
      const gu = c11 * u + c12 * v, gv = c12 * u + c22 * v;
      gradient[2 * i]! += w * gu;
      gradient[2 * i + 1]! += w * gv;
      if (!values) continue;
      const less = w / (size * size);
      values[4 * i]! += w * c11 - less * gu * gu;
      values[4 * i + 2]! += w * c12 - less * gu * gv;
      values[4 * i + 3]! += w * c22 - less * gv * gv;
    }
  }

  #slipSquared(uv: Float64Array, i: number): number {
    const u = uv[2 * i]! - this.#from[2 * i]!, v = uv[2 * i + 1]! - this.#from[2 * i + 1]!, m = this.#map, at = 6 * i;
    const x = m[at]! * u + m[at + 1]! * v, y = m[at + 2]! * u + m[at + 3]! * v, z = m[at + 4]! * u + m[at + 5]! * v;
    return x * x + y * y + z * z;
  }
}

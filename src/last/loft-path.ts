/** Steps over which a staggered row moves to its half step. */
const ramp = 4;

/** Writes the point at share q (0 … 1) of a curve into `out` at 3 · `at`. */
export type Curve = (out: Float64Array, at: number, q: number) => void;

/**
 * A curve with its length, and the shares at which it is cut into even steps. Length by `chords` chords; the steps are even to about
 * a hundredth, which is all a mesh asks.
 */
export class Path {
  readonly length: number;
  readonly #arc: Float64Array;

  constructor(curve: Curve, chords: number) {
    const p = new Float64Array(3 * (chords + 1));
    const arc = new Float64Array(chords + 1);
    for (let k = 0; k <= chords; k++) curve(p, k, k / chords);
    for (let k = 1; k <= chords; k++) {
      const dx = p[3 * k]! - p[3 * k - 3]!;
      const dy = p[3 * k + 1]! - p[3 * k - 2]!;
      const dz = p[3 * k + 2]! - p[3 * k - 1]!;
      arc[k] = arc[k - 1]! + Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
    this.#arc = arc;
    this.length = arc[chords]!;
  }

  /**
   * Shares of the `steps + 1` ends of that many steps of equal length; 0 and 1 are met exactly. `staggered` moves them on by half a
   * step, but for the first and last few: next to a row that is not staggered they make even triangles.
   */
  evenShares(steps: number, staggered = false): Float64Array {
    const arc = this.#arc;
    const chords = arc.length - 1;
    const out = new Float64Array(steps + 1);
    let k = 0;
    for (let i = 1; i < steps; i++) {
      const on = staggered ? 0.5 * Math.min(1, i / ramp, (steps - i) / ramp) : 0;
      const s = (this.length * (i + on)) / steps;
      while (k < chords - 1 && arc[k + 1]! < s) k++;
      const d = arc[k + 1]! - arc[k]!;
      out[i] = (k + (d > 0 ? (s - arc[k]!) / d : 0)) / chords;
    }
    out[steps] = 1;
    return out;
  }
}

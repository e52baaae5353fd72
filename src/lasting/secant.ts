/**
 * Finds x with miss(x) = 0 where one more of x brings about one more of its own miss: x ← x − B · miss with B the unit matrix at first,
 * made after each step to tell what that step truly did (Broyden, Mathematics of Computation 19 (1965) 577, the form with the inverse).
 */
export class Secant {
  readonly #size: number;
  readonly #most: number;
  /** B, row by row. */
  readonly #b: Float64Array;
  #x: readonly number[] | undefined;
  #miss: readonly number[] = [];
  #least = Infinity;
  #idle = 0;

  /** `most`: no x goes beyond it, either way. */
  constructor(size: number, most: number) {
    this.#size = size;
    this.#most = most;
    this.#b = new Float64Array(size * size);
    for (let i = 0; i < size; i++) this.#b[i * size + i] = 1;
  }

  /** Whether it is worth going on: two steps that do not bring the worst miss nearer by a fifth are enough. To be asked once a step, before {@link next}. */
  worthwhile(miss: readonly number[]): boolean {
    const worst = Math.max(...miss.map(Math.abs));
    this.#idle = worst < 0.8 * this.#least ? 0 : this.#idle + 1;
    this.#least = Math.min(this.#least, worst);
    return this.#idle < 2;
  }

  /** The next x to try. */
  next(x: readonly number[], miss: readonly number[]): readonly number[] {
    if (this.#x) this.#learn(x.map((value, i) => value - this.#x![i]!), miss.map((value, i) => value - this.#miss[i]!));
    this.#x = x;
    this.#miss = miss;
    const step = this.#times(miss);
    return x.map((value, i) => Math.max(-this.#most, Math.min(this.#most, value - step[i]!)));
  }

  /** B ← B + (s − B y) sᵀB / (sᵀ B y): then B y = s. */
  #learn(s: readonly number[], y: readonly number[]): void {
    const n = this.#size, by = this.#times(y), down = s.reduce((sum, value, i) => sum + value * by[i]!, 0), square = s.reduce((sum, value) => sum + value * value, 0);
    // A step that did next to nothing, or the other way, teaches nothing that can be relied on.
    if (!(down > 0.2 * square)) return;
    const left = s.map((value, i) => value - by[i]!), right = Array.from({ length: n }, (_, j) => s.reduce((sum, value, i) => sum + value * this.#b[i * n + j]!, 0));
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) this.#b[i * n + j] = this.#b[i * n + j]! + (left[i]! * right[j]!) / down;
  }

  #times(v: readonly number[]): readonly number[] {
    return Array.from({ length: this.#size }, (_, i) => v.reduce((sum, value, j) => sum + this.#b[i * this.#size + j]! * value, 0));
  }
}

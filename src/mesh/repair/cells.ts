/** Names put into cubes of space, to find those near a place: at most one cube's width away. */
export class Cells {
  readonly #width: number;
  readonly #cells = new Map<string, number[]>();

  constructor(width: number) {
    this.#width = width;
  }

  add(name: number, x: number, y: number, z: number): void {
    const key = this.#key(Math.floor(x / this.#width), Math.floor(y / this.#width), Math.floor(z / this.#width));
    const list = this.#cells.get(key);
    if (list) list.push(name);
    else this.#cells.set(key, [name]);
  }

  /** Calls `each` for all names within a width of the place, and some beyond. */
  near(x: number, y: number, z: number, each: (name: number) => void): void {
    const [i, j, k] = [Math.floor(x / this.#width), Math.floor(y / this.#width), Math.floor(z / this.#width)];
    this.#box(i - 1, j - 1, k - 1, i + 1, j + 1, k + 1, each);
  }

  /** Calls `each` once for all names within a width of the line between points a and b of `p`, and some beyond. */
  along(p: Float64Array, a: number, b: number, each: (name: number) => void): void {
    const length = Math.sqrt((p[3 * a]! - p[3 * b]!) ** 2 + (p[3 * a + 1]! - p[3 * b + 1]!) ** 2 + (p[3 * a + 2]! - p[3 * b + 2]!) ** 2);
    const steps = Math.max(1, Math.ceil(length / this.#width));
    const told = new Set<number>();
    for (let s = 0; s <= steps; s++) {
      const at = (k: number): number => p[3 * a + k]! + (s / steps) * (p[3 * b + k]! - p[3 * a + k]!);
      this.near(at(0), at(1), at(2), (name) => {
        if (told.has(name)) return;
        told.add(name);
        each(name);
      });
    }
  }

  #box(i0: number, j0: number, k0: number, i1: number, j1: number, k1: number, each: (name: number) => void): void {
    for (let i = i0; i <= i1; i++) for (let j = j0; j <= j1; j++) for (let k = k0; k <= k1; k++) for (const name of this.#cells.get(this.#key(i, j, k)) ?? []) each(name);
  }

  #key(i: number, j: number, k: number): string {
    return `${i} ${j} ${k}`;
  }
}

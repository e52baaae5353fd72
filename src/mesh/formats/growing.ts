/** A list of numbers that grows, for files that do not say how much they hold. */
export class GrowingNumbers {
  #values = new Float64Array(3 * 4096);
  length = 0;

  push3(a: number, b: number, c: number): void {
    if (this.length + 3 > this.#values.length) {
      const wider = new Float64Array(this.#values.length * 2);
      wider.set(this.#values);
      this.#values = wider;
    }
    this.#values[this.length] = a;
    this.#values[this.length + 1] = b;
    this.#values[this.length + 2] = c;
    this.length += 3;
  }

  /** A copy of what is held, of exact size. */
  taken(): Float64Array<ArrayBuffer> {
    return this.#values.slice(0, this.length);
  }
}

/** A list of indices that grows, three at a time. */
export class GrowingIndices {
  #values = new Uint32Array(3 * 4096);
  length = 0;

  push3(a: number, b: number, c: number): void {
    if (this.length + 3 > this.#values.length) {
      const wider = new Uint32Array(this.#values.length * 2);
      wider.set(this.#values);
      this.#values = wider;
    }
    this.#values[this.length] = a;
    this.#values[this.length + 1] = b;
    this.#values[this.length + 2] = c;
    this.length += 3;
  }

  taken(): Uint32Array<ArrayBuffer> {
    return this.#values.slice(0, this.length);
  }
}

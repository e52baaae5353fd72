/**
 * Pattern of a sparse symmetric matrix made of small square blocks: `size` points with `block` unknowns each (1 or 2), and
 * the pairs of points that share an off-diagonal block. Values live in one Float64Array of {@link valueCount} entries: the
 * diagonal block of point i at slot i, the block of pair k at slot size + k, each block row-major with block² entries. In a
 * pair's block the rows belong to the pair's smaller point, the columns to the larger. Of diagonal blocks only the lower
 * triangle is read.
 */
export class BlockPattern {
  readonly size: number;
  readonly block: 1 | 2;
  #low: Uint32Array<ArrayBuffer>;
  #high: Uint32Array<ArrayBuffer>;
  /** Pairs with the same smaller point hang in a chain. */
  readonly #first: Int32Array;
  #next: Int32Array<ArrayBuffer>;
  #count = 0;

  constructor(size: number, block: 1 | 2, room = 3 * size) {
    this.size = size;
    this.block = block;
    this.#low = new Uint32Array(room);
    this.#high = new Uint32Array(room);
    this.#next = new Int32Array(room);
    this.#first = new Int32Array(size).fill(-1);
  }

  get pairCount(): number {
    return this.#count;
  }

  /** Smaller and larger point of each pair. */
  get low(): Uint32Array {
    return this.#low.subarray(0, this.#count);
  }
  get high(): Uint32Array {
    return this.#high.subarray(0, this.#count);
  }

  /** Length of the array of values. */
  get valueCount(): number {
    return (this.size + this.#count) * this.block * this.block;
  }

  /** Slot of the block that two different points share, made when it is new. */
  slot(a: number, b: number): number {
    const low = a < b ? a : b;
    const high = a < b ? b : a;
    for (let k = this.#first[low]!; k >= 0; k = this.#next[k]!) if (this.#high[k] === high) return this.size + k;
    if (this.#count === this.#low.length) this.#grow();
    const k = this.#count++;
    this.#low[k] = low;
    this.#high[k] = high;
    this.#next[k] = this.#first[low]!;
    this.#first[low] = k;
    return this.size + k;
  }

  #grow(): void {
    const room = 2 * this.#low.length + 16;
    const wider = <T extends Uint32Array | Int32Array>(from: T, to: T): T => {
      to.set(from);
      return to;
    };
    this.#low = wider(this.#low, new Uint32Array(room));
    this.#high = wider(this.#high, new Uint32Array(room));
    this.#next = wider(this.#next, new Int32Array(room));
  }
}

import type { Adjacency } from "./adjacency.ts";

/**
 * Order of elimination by approximate minimum degree with element absorption, joining of points that have become alike, and
 * mass elimination (the idea: Amestoy, Davis and Duff 1996, "An approximate minimum degree ordering algorithm"; from memory,
 * own implementation).
 * @returns point eliminated first, second, …
 */
export function minimumDegreeOrder(graph: Adjacency): Uint32Array {
  return new QuotientGraph(graph).order();
}

const ELEMENT = 1;
const GONE = 2;

/**
 * The graph during elimination. A point is a variable (standing for `weight` points that have become alike), an element (the
 * clique left by an elimination, listed once instead of pair by pair) or gone. The list of a variable holds first
 * `elements[i]` elements, then plain neighbours; the list of an element holds its variables.
 */
class QuotientGraph {
  readonly #size: number;
  #arena: Int32Array<ArrayBuffer>;
  #free: number;
  readonly #at: Int32Array;
  readonly #length: Int32Array;
  readonly #elements: Int32Array;
  readonly #kind: Uint8Array;
  /** Negated while the point is in the clique being made. */
  readonly #weight: Int32Array;
  readonly #degree: Int32Array;
  /** Of an element: stamp + weight of its part outside the clique being made. */
  readonly #outside: Float64Array;
  #stamp = 1;
  #left: number;
  readonly #head: Int32Array;
  readonly #next: Int32Array;
  readonly #before: Int32Array;
  #least = 0;
  /** Points that come right after their representative or pivot in the order. */
  readonly #follower: Int32Array;
  readonly #lastFollower: Int32Array;
  readonly #scratch: Int32Array;
  readonly #hash: Int32Array;
  readonly #mark: Int32Array;

  constructor(graph: Adjacency) {
    const size = graph.start.length - 1;
    const ints = () => new Int32Array(size);
    this.#size = this.#left = size;
    this.#free = graph.list.length;
    this.#arena = new Int32Array(3 * this.#free + 16);
    this.#arena.set(graph.list);
    [this.#at, this.#length, this.#elements, this.#degree] = [ints(), ints(), ints(), ints()];
    [this.#lastFollower, this.#scratch, this.#hash, this.#mark] = [ints(), new Int32Array(size + 1), ints(), ints()];
    this.#kind = new Uint8Array(size);
    this.#weight = ints().fill(1);
    this.#outside = new Float64Array(size);
    this.#head = new Int32Array(size + 1).fill(-1);
    [this.#next, this.#before, this.#follower] = [ints().fill(-1), ints().fill(-1), ints().fill(-1)];
    for (let i = 0; i < size; i++) {
      this.#at[i] = graph.start[i]!;
      this.#length[i] = this.#degree[i] = graph.start[i + 1]! - graph.start[i]!;
      this.#lastFollower[i] = i;
    }
  }

  order(): Uint32Array {
    const order = new Uint32Array(this.#size);
    let done = 0;
    for (let i = this.#size - 1; i >= 0; i--) this.#enlist(i);
    for (let pivot = this.#take(); pivot >= 0; pivot = this.#take()) {
      this.#left -= this.#weight[pivot]!;
      this.#formClique(pivot);
      this.#measureOutside(pivot);
      this.#pruneMembers(pivot);
      this.#joinAlike(pivot);
      this.#settle(pivot);
      for (let i = pivot; i >= 0; i = this.#follower[i]!) order[done++] = i;
    }
    return order;
  }

  #enlist(i: number): void {
    const d = this.#degree[i]!;
    const other = this.#head[d]!;
    this.#next[i] = other;
    this.#before[i] = -1;
    if (other >= 0) this.#before[other] = i;
    this.#head[d] = i;
    if (d < this.#least) this.#least = d;
  }

  #delist(i: number): void {
    const next = this.#next[i]!;
    const before = this.#before[i]!;
    if (next >= 0) this.#before[next] = before;
    if (before >= 0) this.#next[before] = next;
    else this.#head[this.#degree[i]!] = next;
  }

  /** A variable of least degree, taken out of the lists, or -1. */
  #take(): number {
    for (; this.#least <= this.#size; this.#least++) {
      const i = this.#head[this.#least]!;
      if (i < 0) continue;
      this.#delist(i);
      return i;
    }
    return -1;
  }

  /** Lets a variable and all that it stands for come right after `leader`. */
  #follow(leader: number, i: number): void {
    this.#follower[this.#lastFollower[leader]!] = i;
    this.#lastFollower[leader] = this.#lastFollower[i]!;
    this.#kind[i] = GONE;
    this.#weight[i] = 0;
  }

  /** Makes the pivot an element: the clique of its neighbours and those of its elements, which it swallows. */
  #formClique(pivot: number): void {
    const own = this.#at[pivot]!;
    const elements = this.#elements[pivot]!;
    let most = this.#length[pivot]! - elements;
    for (let k = own; k < own + elements; k++) most += this.#length[this.#arena[k]!]!;
    this.#makeRoom(most);
    const start = this.#free;
    this.#weight[pivot] = -this.#weight[pivot]!;
    this.#degree[pivot] = 0;
    for (let k = own; k < own + elements; k++) {
      const e = this.#arena[k]!;
      this.#collect(pivot, this.#at[e]!, this.#at[e]! + this.#length[e]!);
      this.#kind[e] = GONE;
    }
    this.#collect(pivot, own + elements, own + this.#length[pivot]!);
    this.#kind[pivot] = ELEMENT;
    this.#at[pivot] = start;
    this.#length[pivot] = this.#free - start;
  }

  /** Takes the variables of a list, those not yet in it, into the clique being made. */
  #collect(pivot: number, from: number, to: number): void {
    const arena = this.#arena;
    for (let k = from; k < to; k++) {
      const i = arena[k]!;
      const w = this.#weight[i]!;
      if (w <= 0) continue;
      this.#weight[i] = -w;
      this.#degree[pivot]! += w;
      arena[this.#free++] = i;
      this.#delist(i);
    }
  }

  #makeRoom(more: number): void {
    if (this.#free + more <= this.#arena.length) return;
    const wider = new Int32Array(2 * (this.#free + more));
    wider.set(this.#arena.subarray(0, this.#free));
    this.#arena = wider;
  }

  /** For every element that touches the clique: the weight of its part outside. */
  #measureOutside(pivot: number): void {
    const arena = this.#arena;
    const outside = this.#outside;
    this.#stamp += this.#size + 1;
    const start = this.#at[pivot]!;
    for (let k = start; k < start + this.#length[pivot]!; k++) {
      const i = arena[k]!;
      const at = this.#at[i]!;
      for (let q = at; q < at + this.#elements[i]!; q++) {
        const e = arena[q]!;
        if (this.#kind[e] !== ELEMENT) continue;
        if (outside[e]! < this.#stamp) outside[e] = this.#stamp + this.#degree[e]!;
        outside[e]! += this.#weight[i]!; // negative while in the clique
      }
    }
  }

  /** Takes out of the members' lists what the clique now says, and bounds their degrees from above. */
  #pruneMembers(pivot: number): void {
    const arena = this.#arena;
    const kept = this.#scratch;
    const start = this.#at[pivot]!;
    for (let k = start; k < start + this.#length[pivot]!; k++) {
      const i = arena[k]!;
      const at = this.#at[i]!;
      const plain = at + this.#elements[i]!;
      let count = 0;
      let beyond = 0;
      let hash = 0;
      for (let q = at; q < plain; q++) {
        const e = arena[q]!;
        if (this.#kind[e] !== ELEMENT) continue;
        const rest = this.#outside[e]! - this.#stamp;
        if (rest === 0) {
          this.#kind[e] = GONE; // lies wholly inside the new clique
          continue;
        }
        kept[count++] = e;
        beyond += rest;
        hash += e;
      }
      const elements = count;
      for (let q = plain; q < at + this.#length[i]!; q++) {
        const j = arena[q]!;
        if (this.#weight[j]! <= 0) continue; // gone, the pivot, or in the clique
        kept[count++] = j;
        beyond += this.#weight[j]!;
        hash += j;
      }
      if (count === 0) {
        const w = -this.#weight[i]!;
        this.#left -= w;
        this.#degree[pivot]! -= w;
        this.#follow(pivot, i); // no neighbour left outside the clique: eliminated together with the pivot
        continue;
      }
      // The pivot takes the place of itself as a neighbour or of an element that it swallowed, so the list never grows.
      arena[at] = pivot;
      for (let q = 0; q < count; q++) arena[at + 1 + q] = kept[q]!;
      this.#elements[i] = elements + 1;
      this.#length[i] = count + 1;
      this.#degree[i] = Math.min(this.#degree[i]!, beyond);
      this.#hash[i] = hash % this.#size;
    }
  }

  /** Joins members whose lists are the same: they will stay alike to the end. */
  #joinAlike(pivot: number): void {
    const arena = this.#arena;
    const start = this.#at[pivot]!;
    const end = start + this.#length[pivot]!;
    const bucket = this.#next; // members are in no degree list now; reuse their links
    const first = this.#mark;
    for (let k = start; k < end; k++) first[this.#hash[arena[k]!]!] = -1;
    for (let k = start; k < end; k++) {
      const i = arena[k]!;
      if (this.#kind[i] === GONE) continue;
      bucket[i] = first[this.#hash[i]!]!;
      for (let j = bucket[i]!; j >= 0; j = bucket[j]!) {
        if (this.#kind[j] === GONE || !this.#sameList(i, j)) continue;
        this.#weight[j]! += this.#weight[i]!;
        const w = this.#weight[j]!;
        this.#follow(j, i);
        this.#weight[j] = w;
        break;
      }
      if (this.#kind[i] !== GONE) first[this.#hash[i]!] = i;
    }
  }

  #sameList(i: number, j: number): boolean {
    const count = this.#length[i]!;
    if (this.#length[j] !== count || this.#elements[j] !== this.#elements[i]) return false;
    const arena = this.#arena;
    const a = this.#at[i]!;
    const b = this.#at[j]!;
    // Lists keep the order of their making, mostly the same for alike points; compare as sets all the same.
    for (let q = 1; q < count; q++) {
      const wanted = arena[a + q]!;
      if (arena[b + q] === wanted) continue;
      let found = false;
      for (let r = 1; r < count && !found; r++) found = arena[b + r] === wanted;
      if (!found) return false;
    }
    return true;
  }

  /** Puts the members back into the degree lists and the clique into its final form. */
  #settle(pivot: number): void {
    const arena = this.#arena;
    const start = this.#at[pivot]!;
    let to = start;
    const total = this.#degree[pivot]!;
    for (let k = start; k < start + this.#length[pivot]!; k++) {
      const i = arena[k]!;
      if (this.#kind[i] === GONE) continue;
      const w = -this.#weight[i]!;
      this.#weight[i] = w;
      this.#degree[i] = Math.min(this.#degree[i]! + total - w, this.#left - w);
      this.#enlist(i);
      arena[to++] = i;
    }
    this.#length[pivot] = to - start;
    this.#free = to;
    this.#weight[pivot] = -this.#weight[pivot]!;
    if (to === start) this.#kind[pivot] = GONE;
  }
}

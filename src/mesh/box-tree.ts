import { triangleCount, type Mesh } from "./mesh.ts";

const LEAF = 4;

/**
 * Tree of boxes over the triangles of a mesh, halved at the median along the longest side. Nodes lie depth first: the first child of
 * node i is i + 1, the second `second[i]`. A leaf has `count[i]` > 0 triangles, order[from[i]] and on.
 */
export class BoxTree {
  readonly mesh: Mesh;
  readonly order: Uint32Array;
  /** Low x y z, high x y z of each node. */
  readonly boxes: Float64Array;
  readonly second: Uint32Array;
  readonly from: Uint32Array;
  readonly count: Uint8Array;

  constructor(mesh: Mesh) {
    this.mesh = mesh;
    const n = triangleCount(mesh);
    this.order = new Uint32Array(n);
    for (let t = 0; t < n; t++) this.order[t] = t;
    const most = Math.max(1, 2 * Math.ceil(n / ((LEAF + 1) / 2)));
    this.boxes = new Float64Array(most * 6);
    this.second = new Uint32Array(most);
    this.from = new Uint32Array(most);
    this.count = new Uint8Array(most);
    if (n > 0) this.#build(middles(mesh));
  }

  #build(middle: Float64Array): void {
    // todo list of (from, to, parent whose second child this is, or −1)
    const todo: number[] = [0, this.order.length, -1];
    for (let node = 0; todo.length > 0; node++) {
      const parent = todo.pop()!;
      const to = todo.pop()!;
      const from = todo.pop()!;
      if (parent >= 0) this.second[parent] = node;
      this.#box(node, from, to);
      if (to - from <= LEAF) {
        this.from[node] = from;
        this.count[node] = to - from;
        continue;
      }
      const axis = this.#longest(middle, from, to);
      const half = (from + to) >>> 1;
      select(this.order, middle, axis, from, to - 1, half);
      todo.push(half, to, node, from, half, -1);
    }
  }

  #box(node: number, from: number, to: number): void {
    const { positions: p, triangles } = this.mesh;
    let lx = Infinity, ly = Infinity, lz = Infinity, hx = -Infinity, hy = -Infinity, hz = -Infinity;
    for (let i = from; i < to; i++) {
      const t = 3 * this.order[i]!;
      for (let c = t; c < t + 3; c++) {
        const v = 3 * triangles[c]!;
        const x = p[v]!, y = p[v + 1]!, z = p[v + 2]!;
        if (x < lx) lx = x;
        if (x > hx) hx = x;
        if (y < ly) ly = y;
        if (y > hy) hy = y;
        if (z < lz) lz = z;
        if (z > hz) hz = z;
      }
    }
    this.boxes.set([lx, ly, lz, hx, hy, hz], node * 6);
  }

  /** The axis along which the middles of the triangles spread most. */
  #longest(middle: Float64Array, from: number, to: number): number {
    let best = 0;
    let widest = -1;
    for (let k = 0; k < 3; k++) {
      let low = Infinity;
      let high = -Infinity;
      for (let i = from; i < to; i++) {
        const x = middle[3 * this.order[i]! + k]!;
        if (x < low) low = x;
        if (x > high) high = x;
      }
      if (high - low > widest) [best, widest] = [k, high - low];
    }
    return best;
  }
}

function middles({ positions: p, triangles }: Mesh): Float64Array {
  const out = new Float64Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 0; k < 3; k++) out[i + k] = (p[3 * triangles[i]! + k]! + p[3 * triangles[i + 1]! + k]! + p[3 * triangles[i + 2]! + k]!) / 3;
  return out;
}

/** Quickselect (Hoare 1961): afterwards no triangle before `half` lies beyond it along `axis`. Median of three against sorted input. */
function select(order: Uint32Array, middle: Float64Array, axis: number, low: number, high: number, half: number): void {
  const key = (i: number): number => middle[3 * order[i]! + axis]!;
  while (low < high) {
    const [a, b, c] = [key(low), key((low + high) >>> 1), key(high)];
    const pivot = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    let i = low;
    let j = high;
    while (i <= j) {
      while (key(i) < pivot) i++;
      while (key(j) > pivot) j--;
      if (i > j) break;
      const t = order[i]!;
      order[i++] = order[j]!;
      order[j--] = t;
    }
    if (half <= j) high = j;
    else if (half >= i) low = i;
    else return;
  }
}

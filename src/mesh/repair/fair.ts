import type { Mesh } from "#mesh/mesh.ts";
import { vertexRings } from "#mesh/neighbours.ts";

/**
 * Places of the free vertices that make the surface as little bent as its surroundings let it: the least sum of |L x|²/valence, with
 * L x = valence · x − sum of neighbours, over all free vertices and their neighbours (a thin plate on an even mesh; Kobbelt et al. 1998,
 * from memory). Other vertices stay; those that `bend` marks lie on an edge of the body and count for nothing in how bent it is. Conjugate
 * gradients; stops when a step moves less than `near`.
 */
export function fair(mesh: Mesh, free: Uint8Array, near: number, bend?: Uint8Array): Float64Array {
  const { start, items } = vertexRings(mesh);
  const x = mesh.positions.slice();
  const n = free.length;
  const rows: number[] = []; // vertices whose L x counts
  const counts = new Uint8Array(n);
  for (let v = 0; v < n; v++) {
    if (!free[v]) continue;
    counts[v] = 1;
    for (let i = start[v]!; i < start[v + 1]!; i++) counts[items[i]!] = 1;
  }
  for (let v = 0; v < n; v++) if (counts[v] && !bend?.[v]) rows.push(v);
  const plate = new Plate(rows, start, items, n);
  for (let axis = 0; axis < 3; axis++) plate.solve(x, axis, free, near);
  return x;
}

class Plate {
  readonly #rows: readonly number[];
  readonly #start: Uint32Array;
  readonly #items: Uint32Array;
  readonly #n: number;
  constructor(rows: readonly number[], start: Uint32Array, items: Uint32Array, n: number) {
    this.#rows = rows;
    this.#start = start;
    this.#items = items;
    this.#n = n;
  }

  /** out = Lᵀ W L x. */
  #applyInto(out: Float64Array, x: Float64Array): void {
    out.fill(0);
    const [start, items] = [this.#start, this.#items];
    for (const v of this.#rows) {
      const [from, to] = [start[v]!, start[v + 1]!];
      let y = (to - from) * x[v]!;
      for (let i = from; i < to; i++) y -= x[items[i]!]!;
      y /= to - from;
      out[v]! += (to - from) * y;
      for (let i = from; i < to; i++) out[items[i]!]! -= y;
    }
  }

  solve(positions: Float64Array, axis: number, free: Uint8Array, near: number): void {
    const n = this.#n;
    const x = new Float64Array(n);
    for (let v = 0; v < n; v++) x[v] = positions[3 * v + axis]!;
    const [r, d, q] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
    this.#applyInto(q, x);
    let rr = 0;
    for (let v = 0; v < n; v++) if (free[v]) rr += (r[v] = d[v] = -q[v]!) ** 2;
    for (let step = 0; step < 1500 && rr > 0; step++) {
      this.#applyInto(q, d);
      let dq = 0;
      for (let v = 0; v < n; v++) if (free[v]) dq += d[v]! * q[v]!;
      if (!(dq > 0)) break;
      const alpha = rr / dq;
      let next = 0;
      let moved = 0;
      for (let v = 0; v < n; v++) {
        if (!free[v]) continue;
        x[v]! += alpha * d[v]!;
        moved = Math.max(moved, Math.abs(alpha * d[v]!));
        r[v]! -= alpha * q[v]!;
        next += r[v]! ** 2;
      }
      // conjugate gradients creep at first; only a long quiet stretch means the end
      if (moved < near && step > 40) break;
      const beta = next / rr;
      for (let v = 0; v < n; v++) if (free[v]) d[v] = r[v]! + beta * d[v]!;
      rr = next;
    }
    for (let v = 0; v < n; v++) if (free[v]) positions[3 * v + axis] = x[v]!;
  }
}

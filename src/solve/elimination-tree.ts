import type { Adjacency } from "./adjacency.ts";

/**
 * Elimination tree of a symmetric matrix under an order: parent of the k-th eliminated point as a place in the order, -1 for
 * a root (Liu 1990, with path compression).
 */
export function eliminationTree(graph: Adjacency, order: Uint32Array, place: Uint32Array): Int32Array {
  const size = order.length;
  const parent = new Int32Array(size).fill(-1);
  const ancestor = new Int32Array(size).fill(-1);
  for (let k = 0; k < size; k++) {
    const point = order[k]!;
    for (let q = graph.start[point]!; q < graph.start[point + 1]!; q++) {
      let i = place[graph.list[q]!]!;
      while (i < k) {
        const up = ancestor[i]!;
        ancestor[i] = k;
        if (up < 0) {
          parent[i] = k;
          break;
        }
        if (up === k) break;
        i = up;
      }
    }
  }
  return parent;
}

/** Nodes of a forest, children before parents and every subtree in one run; children in ascending order. */
export function postorder(parent: Int32Array): Uint32Array {
  const size = parent.length;
  const first = new Int32Array(size).fill(-1);
  const next = new Int32Array(size).fill(-1);
  const stack: number[] = [];
  for (let k = size - 1; k >= 0; k--) {
    const p = parent[k]!;
    if (p < 0) stack.push(k);
    else {
      next[k] = first[p]!;
      first[p] = k;
    }
  }
  const order = new Uint32Array(size);
  let done = 0;
  while (stack.length > 0) {
    const top = stack.at(-1)!;
    const child = first[top]!;
    if (child >= 0) {
      first[top] = next[child]!;
      stack.push(child);
    } else {
      order[done++] = top;
      stack.pop();
    }
  }
  return order;
}

/** Where each entry of a permutation stands in it. */
export function inverseOrder(order: Uint32Array): Uint32Array {
  const place = new Uint32Array(order.length);
  for (let k = 0; k < order.length; k++) place[order[k]!] = k;
  return place;
}

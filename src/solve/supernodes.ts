import type { Adjacency } from "./adjacency.ts";
import { eliminationTree, inverseOrder, postorder } from "./elimination-tree.ts";

/**
 * Columns of the factor grouped into fronts with (nearly) the same rows. Front s eliminates the places
 * `columnStart[s] … columnStart[s + 1] - 1`; its further rows are `rows[rowStart[s]] … rows[rowStart[s + 1] - 1]`, ascending
 * places. Fronts are in postorder: all children of a front stand before it, its subtree in one run.
 */
export interface Supernodes {
  /** Point eliminated at each place. */
  readonly order: Uint32Array;
  readonly place: Uint32Array;
  readonly columnStart: Uint32Array;
  readonly rowStart: Uint32Array;
  readonly rows: Uint32Array;
  readonly parent: Int32Array;
}

/** Groups the columns of the factor of `graph` under the order of elimination `given`. */
export function supernodesOf(graph: Adjacency, given: Uint32Array): Supernodes {
  const tree = eliminationTree(graph, given, inverseOrder(given));
  const post = postorder(tree);
  const order = post.map((k) => given[k]!);
  const newPlace = inverseOrder(post);
  const parent = new Int32Array(order.length);
  for (let k = 0; k < order.length; k++) {
    const p = tree[post[k]!]!;
    parent[k] = p < 0 ? -1 : newPlace[p]!;
  }
  return relaxed(fundamental(graph, order, parent));
}

interface Fundamental {
  readonly order: Uint32Array;
  /** First column of each group, and one past the last. */
  readonly columnStart: number[];
  /** Rows below the group. */
  readonly below: Uint32Array[];
  readonly parent: Int32Array;
}

/** Runs of columns whose structures nest exactly, by symbolic factorisation. `parent` is the tree of a postordered matrix. */
function fundamental(graph: Adjacency, order: Uint32Array, parent: Int32Array): Fundamental {
  const size = order.length;
  const place = inverseOrder(order);
  const children = new Uint32Array(size);
  for (let k = 0; k < size; k++) if (parent[k]! >= 0) children[parent[k]!]!++;
  const seen = new Int32Array(size).fill(-1);
  const columnStart: number[] = [];
  const below: Uint32Array[] = [];
  const groupOf = new Int32Array(size);
  const firstChild = new Int32Array(size).fill(-1);
  const nextChild = new Int32Array(size).fill(-1);
  const scratch = new Uint32Array(size);
  for (let k = 0; k < size; k++) {
    let count = 0;
    seen[k] = k;
    const add = (i: number): void => {
      if (i > k && seen[i] !== k) {
        seen[i] = k;
        scratch[count++] = i;
      }
    };
    for (let q = graph.start[order[k]!]!; q < graph.start[order[k]! + 1]!; q++) add(place[graph.list[q]!]!);
    for (let c = firstChild[k]!; c >= 0; c = nextChild[c]!) for (const i of below[groupOf[c]!]!) add(i);
    const last = below.length - 1;
    // k continues the group of k - 1 when k - 1 is its only child and brings all of its rows.
    if (k > 0 && parent[k - 1] === k && children[k] === 1 && below[last]!.length === count + 1) {
      below[last] = scratch.slice(0, count);
      groupOf[k] = last;
    } else {
      columnStart.push(k);
      groupOf[k] = below.length;
      below.push(scratch.slice(0, count));
    }
    const up = parent[k]!;
    if (up >= 0) {
      nextChild[k] = firstChild[up]!;
      firstChild[up] = k;
    }
  }
  columnStart.push(size);
  const groupParent = new Int32Array(below.length);
  for (let s = 0; s < below.length; s++) {
    const up = parent[columnStart[s + 1]! - 1]!;
    groupParent[s] = up < 0 ? -1 : groupOf[up]!;
  }
  return { order, columnStart, below, parent: groupParent };
}

/** Share of zeros that a merged front of so many columns may hold (tried on shells of 5k to 50k triangles). */
const worthMerging = (columns: number, zeros: number): boolean =>
  columns <= 4 ? zeros < 0.6 : columns <= 10 ? zeros < 0.25 : columns <= 24 ? zeros < 0.08 : zeros < 0.03;

/** Merges small fronts into their parents where few zeros are stored for it: fewer, larger dense blocks run faster. */
function relaxed({ order, columnStart, below, parent }: Fundamental): Supernodes {
  const count = below.length;
  const columns: number[][] = [];
  const width = new Float64Array(count);
  const zeros = new Float64Array(count);
  const children: number[][] = Array.from({ length: count }, () => []);
  const into = new Int32Array(count).fill(-1);
  for (let s = 0; s < count; s++) {
    const own: number[] = [];
    for (let k = columnStart[s]!; k < columnStart[s + 1]!; k++) own.push(k);
    width[s] = own.length;
    const kept: number[] = [];
    const rows = below[s]!.length;
    for (const c of children[s]!.sort((a, b) => below[b]!.length - below[a]!.length || a - b)) {
      const added = width[c]! * (width[s]! + rows - below[c]!.length);
      const together = width[c]! + width[s]!;
      const stored = (together * (together + 1)) / 2 + together * rows;
      const empty = zeros[s]! + zeros[c]! + added;
      if (!worthMerging(together, empty / stored)) {
        kept.push(c);
        continue;
      }
      into[c] = s;
      own.unshift(...columns[c]!);
      width[s] = together;
      zeros[s] = empty;
      kept.push(...children[c]!);
    }
    children[s] = kept;
    columns.push(own);
    const up = parent[s]!;
    if (up >= 0) children[up]!.push(s);
  }
  return renumbered(order, columns, below, children, into);
}

/** Lays the merged fronts down in postorder and translates rows into the new places. */
function renumbered(order: Uint32Array, columns: number[][], below: Uint32Array[], children: number[][], into: Int32Array): Supernodes {
  const count = columns.length;
  const up = new Int32Array(count).fill(-1);
  for (let s = 0; s < count; s++) if (into[s]! < 0) for (const c of children[s]!) up[c] = s;
  const fronts = [...postorder(up)].filter((s) => into[s]! < 0);
  const moved = new Uint32Array(order.length);
  const columnStart = new Uint32Array(fronts.length + 1);
  const rowStart = new Uint32Array(fronts.length + 1);
  const index = new Int32Array(count).fill(-1);
  let place = 0;
  fronts.forEach((s, f) => {
    index[s] = f;
    for (const k of columns[s]!) moved[k] = place++;
    columnStart[f + 1] = place;
    rowStart[f + 1] = rowStart[f]! + below[s]!.length;
  });
  const rows = new Uint32Array(rowStart.at(-1)!);
  const parent = new Int32Array(fronts.length);
  fronts.forEach((s, f) => {
    const part = rows.subarray(rowStart[f]!, rowStart[f + 1]!);
    below[s]!.forEach((k, i) => (part[i] = moved[k]!));
    part.sort();
    parent[f] = up[s]! < 0 ? -1 : index[up[s]!]!;
  });
  const newOrder = new Uint32Array(order.length);
  for (let k = 0; k < order.length; k++) newOrder[moved[k]!] = order[k]!;
  return { order: newOrder, place: inverseOrder(newOrder), columnStart, rowStart, rows, parent };
}

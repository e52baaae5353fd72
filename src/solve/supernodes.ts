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
  readonly columnStart: readonly number[];
  /** Rows below the group. */
  readonly below: readonly Uint32Array[];
  readonly parent: Int32Array;
}

/**
 * Runs of columns whose structures nest exactly, by symbolic factorisation. `parent` is the tree of a postordered matrix. A column
 * goes on with the run before it when the column before is its only child and has all of its rows: that shows by its own few
 * entries in the matrix, so rows are gathered only where a run begins.
 */
function fundamental(graph: Adjacency, order: Uint32Array, parent: Int32Array): Fundamental {
  const size = order.length;
  const place = inverseOrder(order);
  const { firstChild, nextChild, childCount } = childrenOf(parent);
  /** First column of the run that a row was last met in. */
  const seen = new Int32Array(size).fill(-1);
  const columnStart: number[] = [];
  const below: Uint32Array[] = [];
  const groupOf = new Int32Array(size);
  const rows = new Uint32Array(size);
  let count = 0;
  let first = 0;
  /** Keeps the rows of the run that ends before column k. */
  const close = (k: number): void => {
    let kept = 0;
    for (let q = 0; q < count; q++) if (rows[q]! >= k) rows[kept++] = rows[q]!;
    if (k > 0) below.push(rows.slice(0, kept));
  };
  const goesOn = (k: number): boolean => {
    if (k === 0 || parent[k - 1] !== k || childCount[k] !== 1) return false;
    for (let q = graph.start[order[k]!]!; q < graph.start[order[k]! + 1]!; q++) {
      const i = place[graph.list[q]!]!;
      if (i > k && seen[i] !== first) return false;
    }
    return true;
  };
  for (let k = 0; k < size; k++) {
    if (!goesOn(k)) {
      close(k);
      columnStart.push((first = k));
      seen[k] = k;
      count = 0;
      for (let q = graph.start[order[k]!]!; q < graph.start[order[k]! + 1]!; q++) {
        const i = place[graph.list[q]!]!;
        if (i > k) {
          seen[i] = k;
          rows[count++] = i;
        }
      }
      for (let c = firstChild[k]!; c >= 0; c = nextChild[c]!) {
        const list = below[groupOf[c]!]!;
        for (let q = 0; q < list.length; q++) {
          const i = list[q]!;
          if (seen[i] === k) continue;
          seen[i] = k;
          rows[count++] = i;
        }
      }
    }
    groupOf[k] = columnStart.length - 1;
  }
  close(size);
  columnStart.push(size);
  const groupParent = new Int32Array(below.length);
  for (let s = 0; s < below.length; s++) {
    const up = parent[columnStart[s + 1]! - 1]!;
    groupParent[s] = up < 0 ? -1 : groupOf[up]!;
  }
  return { order, columnStart, below, parent: groupParent };
}

function childrenOf(parent: Int32Array) {
  const firstChild = new Int32Array(parent.length).fill(-1);
  const nextChild = new Int32Array(parent.length).fill(-1);
  const childCount = new Uint32Array(parent.length);
  for (let k = 0; k < parent.length; k++) {
    const up = parent[k]!;
    if (up < 0) continue;
    nextChild[k] = firstChild[up]!;
    firstChild[up] = k;
    childCount[up]!++;
  }
  return { firstChild, nextChild, childCount };
}

/** Share of zeros that a merged front of so many columns may hold (tried on shells of 5k to 50k triangles). */
const worthMerging = (columns: number, zeros: number): boolean =>
  columns <= 4 ? zeros < 0.6 : columns <= 10 ? zeros < 0.25 : columns <= 24 ? zeros < 0.08 : zeros < 0.03;

/** Merges small fronts into their parents where few zeros are stored for it: fewer, larger dense blocks run faster. */
function relaxed({ order, columnStart, below, parent }: Fundamental): Supernodes {
  const count = below.length;
  const width = new Float64Array(count);
  const zeros = new Float64Array(count);
  const into = new Int32Array(count).fill(-1);
  /** The groups merged into each, as a chain in the order of their columns. */
  const head = new Int32Array(count);
  const nextGroup = new Int32Array(count).fill(-1);
  const tail = new Int32Array(count);
  const children: number[][] = [];
  for (let s = 0; s < count; s++) children.push([]);
  for (let s = 0; s < count; s++) {
    head[s] = tail[s] = s;
    width[s] = columnStart[s + 1]! - columnStart[s]!;
    const rows = below[s]!.length;
    const own = children[s]!;
    if (own.length > 1) own.sort((a, b) => below[b]!.length - below[a]!.length || a - b);
    const kept: number[] = [];
    for (let q = 0; q < own.length; q++) {
      const c = own[q]!;
      const together = width[c]! + width[s]!;
      const stored = (together * (together + 1)) / 2 + together * rows;
      const empty = zeros[s]! + zeros[c]! + width[c]! * (width[s]! + rows - below[c]!.length);
      if (!worthMerging(together, empty / stored)) {
        kept.push(c);
        continue;
      }
      into[c] = s;
      nextGroup[tail[c]!] = head[s]!;
      head[s] = head[c]!;
      width[s] = together;
      zeros[s] = empty;
      for (let r = 0; r < children[c]!.length; r++) kept.push(children[c]![r]!);
    }
    children[s] = kept;
    if (parent[s]! >= 0) children[parent[s]!]!.push(s);
  }
  const up = new Int32Array(count).fill(-1);
  for (let s = 0; s < count; s++) if (into[s]! < 0) for (let q = 0; q < children[s]!.length; q++) up[children[s]![q]!] = s;
  return renumbered({ order, columnStart, below, parent: up }, into, head, nextGroup);
}

/** Lays the merged fronts down in postorder and translates rows into the new places. */
function renumbered({ order, columnStart, below, parent: up }: Fundamental, into: Int32Array, head: Int32Array, nextGroup: Int32Array): Supernodes {
  const fronts = postorder(up).filter((s) => into[s]! < 0);
  const moved = new Uint32Array(order.length);
  const newOrder = new Uint32Array(order.length);
  const starts = new Uint32Array(fronts.length + 1);
  const rowStart = new Uint32Array(fronts.length + 1);
  const index = new Int32Array(below.length).fill(-1);
  let place = 0;
  for (let f = 0; f < fronts.length; f++) {
    const s = fronts[f]!;
    index[s] = f;
    for (let g = head[s]!; g >= 0; g = nextGroup[g]!)
      for (let k = columnStart[g]!; k < columnStart[g + 1]!; k++) {
        newOrder[place] = order[k]!;
        moved[k] = place++;
      }
    starts[f + 1] = place;
    rowStart[f + 1] = rowStart[f]! + below[s]!.length;
  }
  const rows = new Uint32Array(rowStart[fronts.length]!);
  const parent = new Int32Array(fronts.length);
  for (let f = 0; f < fronts.length; f++) {
    const s = fronts[f]!;
    const from = rowStart[f]!;
    for (let q = 0; q < below[s]!.length; q++) rows[from + q] = moved[below[s]![q]!]!;
    rows.subarray(from, rowStart[f + 1]!).sort();
    parent[f] = up[s]! < 0 ? -1 : index[up[s]!]!;
  }
  return { order: newOrder, place: inverseOrder(newOrder), columnStart: starts, rowStart, rows, parent };
}

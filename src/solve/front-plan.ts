import { adjacencyOf } from "./adjacency.ts";
import type { BlockPattern } from "./block-pattern.ts";
import { minimumDegreeOrder } from "./minimum-degree.ts";
import { supernodesOf, type Supernodes } from "./supernodes.ts";

/** Numbers of one front in {@link FrontPlan.fronts}. */
export const FRONT = {
  /** First unknown (in the order of elimination), number of unknowns it eliminates, number of further rows. */
  first: 0,
  width: 1,
  below: 2,
  /** Place of the panel on the heap: `width` columns of (width + below) entries. */
  panel: 3,
  /** Place of the update on the heap: `below` columns of `below` entries; -1 when it has none. */
  update: 4,
  /** Start of its further rows in `rows`, and of their places inside the parent's front in `relative`. */
  rows: 5,
  /** Front of the parent, -1 for a root; first child, next sibling, -1 for none. */
  parent: 6,
  child: 7,
  sibling: 8,
  /** How many of its further rows the parent eliminates. */
  inPanel: 9,
  /** Start of its blocks in `blocks`; they end where those of the next front start. */
  blocks: 10,
  stride: 11,
} as const;

/**
 * All that is known about a factorisation before the values are: plain numbers in typed arrays, addresses in entries of one
 * heap of Float64. Nothing here refers to objects, so the same plan serves the kernels in TypeScript and a compiled twin.
 */
export interface FrontPlan {
  readonly unknowns: number;
  readonly supernodes: Supernodes;
  readonly count: number;
  readonly fronts: Int32Array;
  readonly rows: Int32Array;
  readonly relative: Int32Array;
  /** Unknown of the matrix that is eliminated at each place. */
  readonly unknownAt: Int32Array;
  /**
   * Where the pattern's blocks go, front by front, three numbers each: place of the block in the values, heap place of its
   * first entry, and 1 when it goes there transposed.
   */
  readonly blocks: Int32Array;
  /** Entries of all panels, and of the whole heap with room for the updates. */
  readonly panelEntries: number;
  readonly heapEntries: number;
  /** Entries of the factor and multiply-add pairs of one factorisation, explicit zeros included. */
  readonly factorEntries: number;
  readonly flops: number;
}

/** Plans the factorisation of matrices of this pattern. `order`: point eliminated first, second, …; left out, it is found here. */
export function planFronts(pattern: BlockPattern, order?: Uint32Array): FrontPlan {
  const graph = adjacencyOf(pattern.size, pattern.low, pattern.high);
  const nodes = supernodesOf(graph, order ?? minimumDegreeOrder(graph));
  const { block } = pattern;
  const count = nodes.parent.length;
  const fronts = new Int32Array(count * FRONT.stride);
  const size = { panels: 0, factor: 0, flops: 0 };
  for (let s = 0; s < count; s++) {
    const f = s * FRONT.stride;
    const width = block * (nodes.columnStart[s + 1]! - nodes.columnStart[s]!);
    const below = block * (nodes.rowStart[s + 1]! - nodes.rowStart[s]!);
    fronts[f + FRONT.first] = block * nodes.columnStart[s]!;
    fronts[f + FRONT.width] = width;
    fronts[f + FRONT.below] = below;
    fronts[f + FRONT.panel] = size.panels;
    fronts[f + FRONT.rows] = block * nodes.rowStart[s]!;
    fronts[f + FRONT.parent] = nodes.parent[s]!;
    fronts[f + FRONT.child] = fronts[f + FRONT.sibling] = -1;
    size.panels += (width + below) * width;
    size.factor += (width * (width + 1)) / 2 + below * width;
    for (let c = 1; c <= width; c++) size.flops += (below + c) ** 2;
  }
  linkChildren(fronts, count);
  const heapEntries = placeUpdates(fronts, count, size.panels);
  const rows = new Int32Array(block * nodes.rows.length);
  for (let r = 0; r < rows.length; r++) rows[r] = block * nodes.rows[Math.floor(r / block)]! + (r % block);
  const unknownAt = new Int32Array(block * pattern.size);
  for (let k = 0; k < unknownAt.length; k++) unknownAt[k] = block * nodes.order[Math.floor(k / block)]! + (k % block);
  return {
    unknowns: unknownAt.length,
    supernodes: nodes,
    count,
    fronts,
    rows,
    relative: relativeRows(fronts, count, rows),
    unknownAt,
    blocks: blocksOf(pattern, nodes, fronts),
    panelEntries: size.panels,
    heapEntries,
    factorEntries: size.factor,
    flops: size.flops,
  };
}

function linkChildren(fronts: Int32Array, count: number): void {
  for (let s = count - 1; s >= 0; s--) {
    const f = s * FRONT.stride;
    const parent = fronts[f + FRONT.parent]!;
    if (parent < 0) continue;
    fronts[f + FRONT.sibling] = fronts[parent * FRONT.stride + FRONT.child]!;
    fronts[parent * FRONT.stride + FRONT.child] = s;
  }
}

/**
 * Gives every update its place. Two stacks, one for even and one for odd depth in the tree: a front pushes onto one while
 * its children are popped from the other, so nothing is ever moved.
 */
function placeUpdates(fronts: Int32Array, count: number, panels: number): number {
  const depth = new Uint8Array(count);
  for (let s = count - 1; s >= 0; s--) {
    const parent = fronts[s * FRONT.stride + FRONT.parent]!;
    if (parent >= 0) depth[s] = 1 - depth[parent]!;
  }
  const top = [0, 0] as [number, number];
  const most = [0, 0] as [number, number];
  for (let s = 0; s < count; s++) {
    const f = s * FRONT.stride;
    const side = depth[s]! as 0 | 1;
    const other = (1 - side) as 0 | 1;
    const entries = fronts[f + FRONT.below]! ** 2;
    fronts[f + FRONT.update] = entries > 0 ? top[side] : -1;
    top[side] += entries;
    most[side] = Math.max(most[side], top[side]);
    for (let c = fronts[f + FRONT.child]!; c >= 0; c = fronts[c * FRONT.stride + FRONT.sibling]!) top[other] -= fronts[c * FRONT.stride + FRONT.below]! ** 2;
  }
  for (let s = 0; s < count; s++) {
    const f = s * FRONT.stride;
    if (fronts[f + FRONT.update]! >= 0) fronts[f + FRONT.update]! += panels + (depth[s] === 0 ? 0 : most[0]);
  }
  return panels + most[0] + most[1];
}

/** Where each further row of a front stands inside its parent's front: columns first, then further rows. */
function relativeRows(fronts: Int32Array, count: number, rows: Int32Array): Int32Array {
  const at = (s: number, what: number): number => fronts[s * FRONT.stride + what]!;
  const relative = new Int32Array(rows.length);
  for (let s = 0; s < count; s++) {
    const parent = at(s, FRONT.parent);
    if (parent < 0) continue;
    const first = at(parent, FRONT.first);
    const width = at(parent, FRONT.width);
    let q = at(parent, FRONT.rows);
    const from = q;
    for (let r = at(s, FRONT.rows); r < at(s, FRONT.rows) + at(s, FRONT.below); r++) {
      const row = rows[r]!;
      if (row < first + width) {
        relative[r] = row - first;
        fronts[s * FRONT.stride + FRONT.inPanel]!++;
      } else {
        while (rows[q]! < row) q++; // both lists ascend
        relative[r] = width + q - from;
      }
    }
  }
  return relative;
}

/** Sorts the pattern's blocks by the front that holds them and finds their heap places. */
function blocksOf({ block, size, low, high }: BlockPattern, nodes: Supernodes, fronts: Int32Array): Int32Array {
  const { place, columnStart, rowStart, rows } = nodes;
  const count = nodes.parent.length;
  const frontOf = new Int32Array(size);
  for (let s = 0; s < count; s++) frontOf.fill(s, columnStart[s]!, columnStart[s + 1]!);
  const slots = size + low.length;
  const next = new Int32Array(count + 1);
  const holder = new Int32Array(slots);
  for (let k = 0; k < slots; k++) {
    holder[k] = frontOf[k < size ? place[k]! : Math.min(place[low[k - size]!]!, place[high[k - size]!]!)]!;
    next[holder[k]! + 1]!++;
  }
  for (let s = 0; s < count; s++) {
    next[s + 1]! += next[s]!;
    fronts[s * FRONT.stride + FRONT.blocks] = next[s]!;
  }
  const blocks = new Int32Array(3 * slots);
  for (let k = 0; k < slots; k++) {
    const a = place[k < size ? k : low[k - size]!]!;
    const b = place[k < size ? k : high[k - size]!]!;
    const row = a < b ? b : a;
    const s = holder[k]!;
    const width = columnStart[s + 1]! - columnStart[s]!;
    const tall = width + rowStart[s + 1]! - rowStart[s]!;
    let local = row - columnStart[s]!;
    if (local >= width) local = width + indexOf(rows, rowStart[s]!, rowStart[s + 1]!, row) - rowStart[s]!;
    const at = 3 * next[s]!++;
    blocks[at] = block * block * k;
    blocks[at + 1] = fronts[s * FRONT.stride + FRONT.panel]! + block * (block * ((a < b ? a : b) - columnStart[s]!) * tall + local);
    blocks[at + 2] = a < b ? 1 : 0;
  }
  return blocks;
}

/** Place of `wanted` in the ascending run `list[from … to - 1]`, where it must be. */
function indexOf(list: Uint32Array, from: number, to: number, wanted: number): number {
  while (from < to) {
    const middle = (from + to) >> 1;
    if (list[middle]! < wanted) from = middle + 1;
    else to = middle;
  }
  return from;
}

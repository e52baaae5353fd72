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
  /** Place of the panel on the heap: (width + below) rows of `width` entries. */
  panel: 3,
  /** Place of the update on the heap: `below` rows of `below` entries; -1 when it has none. */
  update: 4,
  /** Start of its further rows in `rows`, and of their places inside the parent's front in `relative`. */
  rows: 5,
  /** Front of the parent, -1 for a root; first child, next sibling, -1 for none. */
  parent: 6,
  child: 7,
  sibling: 8,
  /** How many of its further rows the parent eliminates. */
  inPanel: 9,
  stride: 10,
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
  /** Per block of the pattern: heap place of its first entry, distance between its rows, and whether it lies transposed. */
  readonly target: Int32Array;
  readonly targetStride: Int32Array;
  readonly turned: Uint8Array;
  /** Entries of all panels, and of the whole heap with room for the updates. */
  readonly panelEntries: number;
  readonly heapEntries: number;
  /** Entries of the factor and multiply-add pairs of one factorisation, explicit zeros included. */
  readonly factorEntries: number;
  readonly flops: number;
}

/** Plans the factorisation of matrices of this pattern. */
export function planFronts(pattern: BlockPattern): FrontPlan {
  const graph = adjacencyOf(pattern.size, pattern.low, pattern.high);
  const nodes = supernodesOf(graph, minimumDegreeOrder(graph));
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
    ...targetsOf(pattern, nodes, fronts),
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

/** Heap place of every block of the pattern. */
function targetsOf(pattern: BlockPattern, nodes: Supernodes, fronts: Int32Array): Pick<FrontPlan, "target" | "targetStride" | "turned"> {
  const { block, size, low, high } = pattern;
  const slots = size + pattern.pairCount;
  const target = new Int32Array(slots);
  const targetStride = new Int32Array(slots);
  const turned = new Uint8Array(slots);
  const frontOf = new Int32Array(size);
  for (let s = 0; s < nodes.parent.length; s++) frontOf.fill(s, nodes.columnStart[s]!, nodes.columnStart[s + 1]!);
  const put = (slot: number, row: number, column: number): void => {
    const s = frontOf[column]!;
    const f = s * FRONT.stride;
    const width = fronts[f + FRONT.width]!;
    let local = row - nodes.columnStart[s]!;
    if (block * local >= width) local = width / block + indexOf(nodes.rows, nodes.rowStart[s]!, nodes.rowStart[s + 1]!, row) - nodes.rowStart[s]!;
    target[slot] = fronts[f + FRONT.panel]! + block * (local * width + column - nodes.columnStart[s]!);
    targetStride[slot] = width;
  };
  for (let i = 0; i < size; i++) put(i, nodes.place[i]!, nodes.place[i]!);
  for (let k = 0; k < pattern.pairCount; k++) {
    const a = nodes.place[low[k]!]!;
    const b = nodes.place[high[k]!]!;
    turned[size + k] = a < b ? 1 : 0;
    put(size + k, a < b ? b : a, a < b ? a : b);
  }
  return { target, targetStride, turned };
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

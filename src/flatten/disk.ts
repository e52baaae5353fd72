import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { BlockPattern } from "#solve/block-pattern.ts";

/** Connectivity of a piece of surface that can be laid flat: one part with one rim and no handle. */
export interface Disk {
  readonly vertices: number;
  /** The mesh's triangles, each begun at its smallest vertex and all turned the same way, see `turned`. */
  readonly triangles: Uint32Array;
  /**
   * Whether the triangles were turned round. The turn depends on vertex numbers alone, so a mesh and its mirror image come
   * to the same triangles here and are laid flat by the very same arithmetic.
   */
  readonly turned: boolean;
  /** Vertices of the rim in the turn of the triangles here. */
  readonly rim: Uint32Array;
  /** Pattern of a matrix with two unknowns a vertex whose blocks are the edges, and the slots of each triangle's edges 0-1, 0-2, 1-2. */
  readonly pattern: BlockPattern;
  readonly slots: Uint32Array;
}

/**
 * Checks that the triangles make a disk.
 * @throws Refusal that says why the surface cannot be laid flat
 */
export function diskOf(vertices: number, given: Uint32Array): Disk {
  if (given.length === 0) throw new Refusal(finding("surface-empty", {}));
  must(given.length % 3 === 0, "triangles come in threes");
  const { triangles, turned } = inOneTurn(given, vertices);
  const { pattern, slots, before } = edgesOf(vertices, triangles);
  const parts = countParts(vertices, triangles);
  if (parts > 1) throw new Refusal(finding("surface-in-parts", { parts }));
  const rims = ringsOf(before);
  if (rims.length === 0) throw new Refusal(finding("surface-closed", {}));
  if (rims.length > 1) throw new Refusal(finding("surface-with-holes", { rims: rims.length }));
  const rim = rims[0]!;
  const edges = (triangles.length + rim.length) / 2;
  // Euler: a disk has vertices - edges + triangles = 1; every handle takes 2 away.
  const handles = (1 - (vertices - edges + triangles.length / 3)) / 2;
  if (handles !== 0) throw new Refusal(finding("surface-with-handle", { handles }));
  return { vertices, triangles, turned, rim, pattern, slots };
}

function inOneTurn(given: Uint32Array, vertices: number): { triangles: Uint32Array; turned: boolean } {
  const triangles = new Uint32Array(given.length);
  const used = new Uint8Array(vertices);
  let turned = false;
  for (let k = 0; k < given.length; k += 3) {
    const a = given[k]!;
    const b = given[k + 1]!;
    const c = given[k + 2]!;
    must(a < vertices && b < vertices && c < vertices, "a triangle asks for a vertex that is not there");
    used[a] = used[b] = used[c] = 1;
    const first = a < b ? (a < c ? a : c) : b < c ? b : c;
    const second = first === a ? b : first === b ? c : a;
    const third = first === a ? c : first === b ? a : b;
    if (k === 0) turned = second > third;
    triangles[k] = first;
    triangles[k + 1] = turned ? third : second;
    triangles[k + 2] = turned ? second : third;
  }
  must(!used.includes(0), "a vertex to be laid flat belongs to no triangle");
  return { triangles, turned };
}

/** The edges, and for every vertex of the rim the one before it along the rim, -1 elsewhere. */
function edgesOf(vertices: number, triangles: Uint32Array) {
  const pattern = new BlockPattern(vertices, 2);
  const slots = new Uint32Array(triangles.length);
  // Bit 0: passed from the smaller vertex to the larger, bit 1: the other way.
  const passed = new Uint8Array(triangles.length);
  for (let k = 0; k < triangles.length; k += 3)
    for (let e = 0; e < 3; e++) {
      const a = triangles[k + e]!;
      const b = triangles[k + (e === 2 ? 0 : e + 1)]!;
      const slot = a === b ? vertices : pattern.slot(a, b);
      const way = a < b ? 1 : 2;
      if (a === b || (passed[slot - vertices]! & way) !== 0) throw new Refusal(finding("surface-branches", { triangle: k / 3 }));
      passed[slot - vertices]! |= way;
      slots[k + (e === 0 ? 0 : 3 - e)] = slot;
    }
  const { low, high } = pattern;
  const before = new Int32Array(vertices).fill(-1);
  for (let q = 0; q < low.length; q++) {
    if (passed[q] === 3) continue;
    const b = passed[q] === 1 ? high[q]! : low[q]!;
    if (before[b]! >= 0) throw new Refusal(finding("surface-pinched", { vertex: b }));
    before[b] = passed[q] === 1 ? low[q]! : high[q]!;
  }
  return { pattern, slots, before };
}

function ringsOf(before: Int32Array): Uint32Array[] {
  const seen = new Uint8Array(before.length);
  const rings: Uint32Array[] = [];
  for (let i = 0; i < before.length; i++) {
    if (before[i]! < 0 || seen[i] === 1) continue;
    const ring: number[] = [];
    for (let j = i; seen[j] === 0; j = before[j]!) {
      seen[j] = 1;
      ring.push(j);
    }
    rings.push(new Uint32Array(ring.reverse()));
  }
  return rings;
}

function countParts(vertices: number, triangles: Uint32Array): number {
  const root = new Uint32Array(vertices);
  for (let i = 0; i < vertices; i++) root[i] = i;
  let parts = vertices;
  for (let k = 0; k < triangles.length; k += 3)
    for (let e = 1; e < 3; e++) {
      const a = rootOf(root, triangles[k]!);
      const b = rootOf(root, triangles[k + e]!);
      if (a === b) continue;
      root[a] = b;
      parts--;
    }
  return parts;
}

/** Representative of i, halving the path on the way. */
function rootOf(root: Uint32Array, i: number): number {
  while (root[i] !== i) i = root[i] = root[root[i]!]!;
  return i;
}

import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";

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
}

/**
 * Checks that the triangles make a disk.
 * @throws Refusal that says why the surface cannot be laid flat
 */
export function diskOf(vertices: number, given: Uint32Array): Disk {
  if (given.length === 0) throw new Refusal(finding("surface-empty", {}));
  must(given.length % 3 === 0, "triangles come in threes");
  must(given.every((i) => i < vertices), "a triangle asks for a vertex that is not there");
  const { triangles, turned } = inOneTurn(given);
  const before = rimOf(vertices, triangles);
  const used = new Uint8Array(vertices);
  for (const i of triangles) used[i] = 1;
  must(used.every((u) => u === 1), "a vertex to be laid flat belongs to no triangle");
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
  return { vertices, triangles, turned, rim };
}

function inOneTurn(given: Uint32Array): { triangles: Uint32Array; turned: boolean } {
  const triangles = new Uint32Array(given.length);
  let turned = false;
  for (let k = 0; k < given.length; k += 3) {
    const [a, b, c] = [given[k]!, given[k + 1]!, given[k + 2]!];
    const [p, q, r] = a < b ? (a < c ? [a, b, c] : [c, a, b]) : b < c ? [b, c, a] : [c, a, b];
    if (k === 0) turned = q > r;
    triangles[k] = p;
    triangles[k + 1] = turned ? r : q;
    triangles[k + 2] = turned ? q : r;
  }
  return { triangles, turned };
}

/** For every vertex of the rim the one before it along the rim, -1 elsewhere. */
function rimOf(vertices: number, triangles: Uint32Array): Int32Array {
  // Half-edges hang in chains by their first vertex.
  const first = new Int32Array(vertices).fill(-1);
  const chain = new Int32Array(triangles.length);
  const to = (h: number): number => triangles[h % 3 === 2 ? h - 2 : h + 1]!;
  const find = (a: number, b: number): number => {
    let h = first[a]!;
    while (h >= 0 && to(h) !== b) h = chain[h]!;
    return h;
  };
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h]!;
    if (a === to(h) || find(a, to(h)) >= 0) throw new Refusal(finding("surface-branches", { triangle: Math.floor(h / 3) }));
    chain[h] = first[a]!;
    first[a] = h;
  }
  const before = new Int32Array(vertices).fill(-1);
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h]!;
    const b = to(h);
    if (find(b, a) >= 0) continue;
    if (before[b]! >= 0) throw new Refusal(finding("surface-pinched", { vertex: b }));
    before[b] = a;
  }
  return before;
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
  const root = new Uint32Array(vertices).map((_, i) => i);
  const rootOf = (i: number): number => {
    while (root[i] !== i) i = root[i] = root[root[i]!]!;
    return i;
  };
  let parts = vertices;
  for (let k = 0; k < triangles.length; k += 3)
    for (let e = 1; e < 3; e++) {
      const a = rootOf(triangles[k]!);
      const b = rootOf(triangles[k + e]!);
      if (a === b) continue;
      root[a] = b;
      parts--;
    }
  return parts;
}

import { must } from "#base/bug.ts";
import { vertexCount, type Mesh } from "#mesh/mesh.ts";
import { neighbours, nextCorner } from "#mesh/neighbours.ts";
import type { Shell, ShellEdges } from "./shell.ts";

/** A mesh that was cut along lines, and for each of its vertices the one it was before. Triangles keep their order and corners. */
export interface Slit {
  readonly mesh: Mesh;
  readonly source: Uint32Array;
}

/**
 * Cuts a mesh along paths of vertices, each running along edges. A path opens the mesh where it starts or ends on the rim (or on
 * another path); an end inside stays whole, as the end of a knife's slit does. A path from rim to rim cuts a part off. Every cut
 * vertex is doubled, once for each fan of triangles that no longer hangs together round it.
 */
export function slit(mesh: Mesh, paths: readonly ArrayLike<number>[], twin: Int32Array = neighbours(mesh).twin): Slit {
  const { triangles } = mesh;
  const n = vertexCount(mesh);
  const isCut = cutHalfEdges(mesh, paths, twin);
  // Corners of one vertex hang together across every edge that is not cut.
  const root = new Uint32Array(triangles.length);
  for (let h = 0; h < root.length; h++) root[h] = h;
  const find = (h: number): number => {
    while (root[h] !== h) h = root[h] = root[root[h]!]!;
    return h;
  };
  const join = (a: number, b: number): void => {
    const [x, y] = [find(a), find(b)];
    root[Math.max(x, y)] = Math.min(x, y);
  };
  for (let h = 0; h < triangles.length; h++) {
    const g = twin[h]!;
    if (g < h || isCut[h] === 1) continue;
    join(h, nextCorner(g));
    join(nextCorner(h), g);
  }
  const fanVertex = new Int32Array(triangles.length).fill(-1);
  const taken = new Uint8Array(n);
  const source: number[] = Array.from({ length: n }, (_, v) => v);
  const out = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) {
    const fan = find(h), v = triangles[h]!;
    if (fanVertex[fan] === -1) {
      fanVertex[fan] = taken[v] === 1 ? source.push(v) - 1 : v;
      taken[v] = 1;
    }
    out[h] = fanVertex[fan]!;
  }
  const positions = new Float64Array(3 * source.length);
  for (let v = 0; v < source.length; v++) for (let d = 0; d < 3; d++) positions[3 * v + d] = mesh.positions[3 * source[v]! + d]!;
  return { mesh: { positions, triangles: out }, source: Uint32Array.from(source) };
}

/** 1 for every half-edge on a path, both ways. */
function cutHalfEdges(mesh: Mesh, paths: readonly ArrayLike<number>[], twin: Int32Array): Uint8Array {
  const { triangles } = mesh;
  const onPath = new Uint8Array(vertexCount(mesh));
  const wanted = new Map<number, Set<number>>();
  let steps = 0;
  for (const path of paths) {
    for (let k = 0; k < path.length; k++) onPath[path[k]!] = 1;
    for (let k = 0; k + 1 < path.length; k++) {
      const low = Math.min(path[k]!, path[k + 1]!), high = Math.max(path[k]!, path[k + 1]!);
      const of = wanted.get(low) ?? new Set();
      wanted.set(low, of);
      if (!of.has(high)) steps++;
      of.add(high);
    }
  }
  const isCut = new Uint8Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h]!, b = triangles[nextCorner(h)]!;
    // Most edges lie on no path, and asking the map costs more than looking.
    if (onPath[a] === 0 || onPath[b] === 0) continue;
    if (!wanted.get(Math.min(a, b))?.has(Math.max(a, b))) continue;
    isCut[h] = 1;
    if (twin[h]! < h) steps--;
  }
  must(steps === 0, "a slit runs along edges of the mesh");
  return isCut;
}

/** A shell whose back is closed: a ring, to be opened elsewhere. Its two back edges are one and the same row of vertices. */
export interface ClosedShell {
  readonly shell: Shell;
  /** Vertices of the open shell by their numbers in the closed one. */
  readonly renamed: (ids: Uint32Array) => Uint32Array;
}

/** Welds the two banks of the back. */
export function closeBack({ mesh, edges }: Shell): ClosedShell {
  const { backMedial, backLateral } = edges;
  must(backMedial.length === backLateral.length, "the two banks of the back have equally many points");
  const into = Uint32Array.from({ length: vertexCount(mesh) }, (_, v) => v);
  for (let k = 0; k < backLateral.length; k++) into[backLateral[k]!] = backMedial[k]!;
  const place = new Uint32Array(into.length);
  const positions: number[] = [];
  for (let v = 0; v < into.length; v++) if (into[v] === v) place[v] = positions.push(mesh.positions[3 * v]!, mesh.positions[3 * v + 1]!, mesh.positions[3 * v + 2]!) / 3 - 1;
  const renamed = (ids: Uint32Array): Uint32Array => ids.map((v) => place[into[v]!]!);
  const welded: ShellEdges = {
    featherMedial: renamed(edges.featherMedial),
    featherLateral: renamed(edges.featherLateral),
    backMedial: renamed(backMedial),
    backLateral: renamed(backLateral),
    toplineMedial: renamed(edges.toplineMedial),
    toplineLateral: renamed(edges.toplineLateral),
    centre: renamed(edges.centre),
  };
  return { shell: { mesh: { positions: Float64Array.from(positions), triangles: renamed(mesh.triangles) }, edges: welded }, renamed };
}

/**
 * Half-edges, by number 3 · triangle + corner, that lie on a row of vertices, whichever way they run: one for each step on the rim, two
 * inside. They keep their numbers when the mesh is slit, whatever becomes of the vertices.
 */
export function halfEdgesOn(mesh: Mesh, row: ArrayLike<number>): Uint32Array {
  const { triangles } = mesh;
  const next = new Int32Array(vertexCount(mesh)).fill(-1);
  for (let k = 0; k + 1 < row.length; k++) next[row[k]!] = row[k + 1]!;
  const found: number[] = [];
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h]!, b = triangles[nextCorner(h)]!;
    if (next[a] === b || next[b] === a) found.push(h);
  }
  must(found.length >= row.length - 1, "an edge of the shell runs along edges of its mesh");
  return Uint32Array.from(found);
}

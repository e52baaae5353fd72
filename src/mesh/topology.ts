import { triangleArea } from "./area.ts";
import { triangleCount, vertexCount, type Mesh } from "./mesh.ts";
import { boundaryLoops, neighbours } from "./neighbours.ts";

/** One connected part of a mesh. `euler` = vertices − edges + triangles = 2 − 2·genus − loops for an orderly surface (Euler–Poincaré). */
export interface Part {
  readonly triangles: number;
  readonly vertices: number;
  readonly edges: number;
  readonly euler: number;
  /** Closed loops of open edges: 0 when the part has no holes. */
  readonly loops: number;
  /** Handles: 0 for a ball, 1 for a ring. Not a whole number where edges join more than two triangles. */
  readonly genus: number;
  /** In squares of the mesh's unit. */
  readonly area: number;
}

/** The part that each triangle belongs to, numbered from 0 by first triangle; parts hang together by shared vertices. */
export function partOfTriangle(mesh: Mesh): { readonly part: Uint32Array; readonly count: number } {
  const { triangles } = mesh;
  const root = new Uint32Array(vertexCount(mesh));
  for (let v = 0; v < root.length; v++) root[v] = v;
  const find = (v: number): number => {
    while (root[v] !== v) v = root[v] = root[root[v]!]!;
    return v;
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const a = find(triangles[i]!);
    root[find(triangles[i + 1]!)] = a;
    root[find(triangles[i + 2]!)] = a;
  }
  const number = new Int32Array(root.length).fill(-1);
  const part = new Uint32Array(triangleCount(mesh));
  let count = 0;
  for (let t = 0; t < part.length; t++) {
    const r = find(triangles[3 * t]!);
    if (number[r] === -1) number[r] = count++;
    part[t] = number[r]!;
  }
  return { part, count };
}

/** Counts of each connected part, in the order of {@link partOfTriangle}. */
export function parts(mesh: Mesh): Part[] {
  const { triangles } = mesh;
  const { part, count } = partOfTriangle(mesh);
  const { twin } = neighbours(mesh);
  const tally = Array.from({ length: count }, () => ({ triangles: 0, vertices: 0, halves: 0, open: 0, loops: 0, area: 0 }));
  const seen = new Uint8Array(vertexCount(mesh));
  for (let h = 0; h < triangles.length; h++) {
    const own = tally[part[Math.floor(h / 3)]!]!;
    if (!seen[triangles[h]!]) own.vertices++;
    seen[triangles[h]!] = 1;
    own.halves++;
    if (twin[h] === -1) own.open++;
    if (h % 3 === 0) {
      own.triangles++;
      own.area += triangleArea(mesh, h / 3);
    }
  }
  for (const loop of boundaryLoops(twin)) tally[part[Math.floor(loop[0]! / 3)]!]!.loops++;
  return tally.map(({ triangles: faces, vertices, halves, open, loops, area }) => {
    const edges = (halves - open) / 2 + open;
    const euler = vertices - edges + faces;
    return { triangles: faces, vertices, edges, euler, loops, genus: (2 - euler - loops) / 2, area };
  });
}

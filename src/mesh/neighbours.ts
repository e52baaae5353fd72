import { vertexCount, type Mesh } from "./mesh.ts";

/**
 * Half-edge h = 3·t + k runs from corner k of triangle t to its next corner. `twin[h]` is the half-edge of the neighbour that runs
 * the other way, −1 at an open edge and wherever an edge does not join exactly two triangles that agree in their turning sense.
 */
export interface Neighbours {
  readonly twin: Int32Array;
  /** For each vertex a half-edge that leaves it; at an open vertex the first one of its fan. −1 for a vertex of no triangle. */
  readonly leaving: Int32Array;
  /** Edges of one triangle, of three or more, and of two that disagree in their turning sense. */
  readonly openEdges: number;
  readonly crowdedEdges: number;
  readonly turnedEdges: number;
}

export const nextCorner = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);
export const previousCorner = (h: number): number => (h % 3 === 0 ? h + 2 : h - 1);

/** Builds the table of a mesh of any kind in linear time. */
export function neighbours(mesh: Mesh): Neighbours {
  const { triangles } = mesh;
  const { partner, openEdges, crowdedEdges } = edgePartners(mesh);
  const twin = partner;
  let turned = 0;
  for (let h = 0; h < twin.length; h++) {
    const other = twin[h]!;
    if (other < 0) twin[h] = -1;
    else if (triangles[other] === triangles[h]) {
      turned++;
      twin[h] = twin[other] = -1;
    }
  }
  return { twin, leaving: leavingEdges(triangles, twin, vertexCount(mesh)), openEdges, crowdedEdges, turnedEdges: turned };
}

export const OPEN = -1;
export const CROWDED = -2;

/**
 * For each half-edge the other one on the same edge, in whichever sense it runs; OPEN where there is none, CROWDED where three or more
 * meet. Half-edges are put into buckets by their lower vertex and paired there by their upper one.
 */
export function edgePartners(mesh: Mesh): { partner: Int32Array; openEdges: number; crowdedEdges: number } {
  const { triangles } = mesh;
  const vertices = vertexCount(mesh);
  const { start, sorted } = byLowerVertex(triangles, vertices);
  const partner = new Int32Array(triangles.length).fill(OPEN);
  const head = new Int32Array(vertices);
  const seen = new Uint32Array(vertices);
  let [openEdges, crowdedEdges] = [0, 0];
  for (let v = 0; v < vertices; v++) {
    for (let i = start[v]!; i < start[v + 1]!; i++) {
      const h = sorted[i]!;
      const upper = upperVertex(triangles, h);
      const before = seen[upper]!++;
      if (before === 0) head[upper] = h;
      else if (before === 1) [partner[h], partner[head[upper]!]] = [head[upper]!, h];
      else if (before === 2) crowdedEdges++;
    }
    for (let i = start[v]!; i < start[v + 1]!; i++) {
      const h = sorted[i]!;
      if (seen[upperVertex(triangles, h)]! > 2) partner[h] = CROWDED;
      else if (partner[h] === OPEN) openEdges++;
    }
    for (let i = start[v]!; i < start[v + 1]!; i++) seen[upperVertex(triangles, sorted[i]!)] = 0;
  }
  return { partner, openEdges, crowdedEdges };
}

const upperVertex = (triangles: Uint32Array, h: number): number => Math.max(triangles[h]!, triangles[nextCorner(h)]!);

/** Half-edges grouped by the lower one of their two vertices: bucket v is sorted[start[v] … start[v + 1] − 1]. */
function byLowerVertex(triangles: Uint32Array, vertices: number): { start: Uint32Array; sorted: Uint32Array } {
  const start = new Uint32Array(vertices + 1);
  const lower = (h: number): number => Math.min(triangles[h]!, triangles[nextCorner(h)]!);
  for (let h = 0; h < triangles.length; h++) start[lower(h) + 1]!++;
  for (let v = 0; v < vertices; v++) start[v + 1]! += start[v]!;
  const fill = start.slice();
  const sorted = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) sorted[fill[lower(h)]!++] = h;
  return { start, sorted };
}

function leavingEdges(triangles: Uint32Array, twin: Int32Array, vertices: number): Int32Array {
  const leaving = new Int32Array(vertices).fill(-1);
  for (let h = 0; h < triangles.length; h++) {
    const v = triangles[h]!;
    if (leaving[v] === -1 || twin[h] === -1) leaving[v] = h;
  }
  return leaving;
}

/** Open edges chained into closed loops of half-edges, each running as its triangles turn (the hole lies on its right). */
export function boundaryLoops(twin: Int32Array): Int32Array[] {
  const done = new Uint8Array(twin.length);
  const loops: Int32Array[] = [];
  for (let h = 0; h < twin.length; h++) {
    if (twin[h] !== -1 || done[h]) continue;
    const loop: number[] = [];
    for (let e = h; !done[e]; e = nextOpenEdge(twin, e)) {
      done[e] = 1;
      loop.push(e);
    }
    loops.push(Int32Array.from(loop));
  }
  return loops;
}

/** The open edge that follows open edge `h` around its hole, staying in the fan of triangles that `h` belongs to. */
export function nextOpenEdge(twin: Int32Array, h: number): number {
  let e = nextCorner(h);
  while (twin[e]! >= 0) e = nextCorner(twin[e]!);
  return e;
}

/** Grouped lists: those of item i are items[start[i] … start[i + 1] − 1]. */
export interface Groups {
  readonly start: Uint32Array;
  readonly items: Uint32Array;
}

/** The corners (positions in `triangles`) at each vertex, in order of their triangles; any mesh. */
export function vertexCorners(mesh: Mesh): Groups {
  const { triangles } = mesh;
  const start = new Uint32Array(vertexCount(mesh) + 1);
  for (const v of triangles) start[v + 1]!++;
  for (let v = 0; v + 1 < start.length; v++) start[v + 1]! += start[v]!;
  const fill = start.slice();
  const items = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) items[fill[triangles[h]!]!++] = h;
  return { start, items };
}

/** The vertices joined to each vertex by an edge, each named once; any mesh. */
export function vertexRings(mesh: Mesh): Groups {
  const { triangles } = mesh;
  const corners = vertexCorners(mesh);
  const vertices = vertexCount(mesh);
  const start = new Uint32Array(vertices + 1);
  const items = new Uint32Array(triangles.length * 2);
  const mark = new Int32Array(vertices).fill(-1);
  let n = 0;
  for (let v = 0; v < vertices; v++) {
    for (let i = corners.start[v]!; i < corners.start[v + 1]!; i++) {
      const h = corners.items[i]!;
      for (const w of [triangles[nextCorner(h)]!, triangles[previousCorner(h)]!]) {
        if (mark[w] === v || w === v) continue;
        mark[w] = v;
        items[n++] = w;
      }
    }
    start[v + 1] = n;
  }
  return { start, items: items.slice(0, n) };
}

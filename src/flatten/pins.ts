import type { Adjacency } from "#solve/adjacency.ts";

/**
 * Two points of the rim to pin a conformal map at: where the rim crosses the middle of the piece, half-way between its two
 * ends (for a pump shell that is toe and throat; pinned at the ends instead, a horseshoe opens far too wide). Counted in
 * edges, so connectivity alone decides.
 */
export function middlePins(graph: Adjacency, rim: Uint32Array): [number, number] {
  const end = farthest(rim, edgesFrom(graph, rim[0]!));
  const fromEnd = edgesFrom(graph, end);
  const fromOther = edgesFrom(graph, farthest(rim, fromEnd));
  const count = rim.length;
  const crossings: number[] = [];
  for (let k = 0; k < count; k++) {
    const here = rim[k]!;
    const next = rim[(k + 1) % count]!;
    if (fromEnd[here]! < fromOther[here]! !== fromEnd[next]! < fromOther[next]!) crossings.push(k);
  }
  // Both ends lie on the rim, on either side of the middle, so there are two crossings at least; of more take opposite ones.
  const first = crossings[0]!;
  let best = crossings[1]!;
  for (const k of crossings) if (Math.abs(k - first - count / 2) < Math.abs(best - first - count / 2)) best = k;
  return [rim[first]!, rim[best]!];
}

/** Number of edges on the shortest way from a vertex to every other. */
function edgesFrom({ start, list }: Adjacency, from: number): Uint32Array {
  const far = new Uint32Array(start.length - 1).fill(0xffffffff);
  const queue = new Uint32Array(start.length - 1);
  queue[0] = from;
  far[from] = 0;
  for (let head = 0, tail = 1; head < tail; head++) {
    const i = queue[head]!;
    for (let q = start[i]!; q < start[i + 1]!; q++) {
      const j = list[q]!;
      if (far[j] !== 0xffffffff) continue;
      far[j] = far[i]! + 1;
      queue[tail++] = j;
    }
  }
  return far;
}

function farthest(rim: Uint32Array, edges: Uint32Array): number {
  let best = rim[0]!;
  for (const i of rim) if (edges[i]! > edges[best]!) best = i;
  return best;
}

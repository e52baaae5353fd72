import { must } from "#base/bug.ts";
import type { PlaneMesh } from "./fill.ts";

/** Rounds of relaxation; the move of the outline has then reached some dozen triangles inward, which is enough for a small one. */
const rounds = 30;
/** A triangle that shrinks or grows by more than this against its former area is no longer trusted. */
const mostChange = 4;

/**
 * The mesh with its first points moved to `fixed` (x0 y0 …) and all others moved along, each by the mean of its neighbours' moves
 * (Gauss-Seidel on the graph's Laplacian). Nothing when a triangle would come out badly shaped: then it should be filled anew.
 */
export function movedLike({ xy: from, triangles }: PlaneMesh, fixed: Float64Array): PlaneMesh | undefined {
  must(fixed.length <= from.length, "more fixed points than the mesh has");
  const n = from.length / 2, given = fixed.length / 2;
  const move = new Float64Array(2 * n);
  for (let i = 0; i < fixed.length; i++) move[i] = fixed[i]! - from[i]!;
  const { start, items } = neighboursIn(n, triangles);
  for (let round = 0; round < rounds; round++)
    for (let v = given; v < n; v++) {
      const a = start[v]!, b = start[v + 1]!;
      let x = 0, y = 0;
      for (let k = a; k < b; k++) {
        x += move[2 * items[k]!]!;
        y += move[2 * items[k]! + 1]!;
      }
      move[2 * v] = x / (b - a);
      move[2 * v + 1] = y / (b - a);
    }
  const xy = from.map((x, i) => x + move[i]!);
  for (let t = 0; t < triangles.length; t += 3) {
    const before = twiceArea(from, triangles, t), after = twiceArea(xy, triangles, t);
    if (!(after * mostChange > before && after < before * mostChange)) return undefined;
  }
  return { xy, triangles };
}

/** Neighbours of each point, once for every triangle between the two. */
function neighboursIn(n: number, triangles: Uint32Array): { readonly start: Uint32Array; readonly items: Uint32Array } {
  const start = new Uint32Array(n + 1);
  for (const v of triangles) start[v + 1]! += 2;
  for (let v = 0; v < n; v++) start[v + 1]! += start[v]!;
  const items = new Uint32Array(2 * triangles.length);
  const at = start.slice();
  for (let t = 0; t < triangles.length; t += 3)
    for (let k = 0; k < 3; k++) {
      const v = triangles[t + k]!;
      items[at[v]!++] = triangles[t + ((k + 1) % 3)]!;
      items[at[v]!++] = triangles[t + ((k + 2) % 3)]!;
    }
  return { start, items };
}

function twiceArea(xy: Float64Array, triangles: Uint32Array, t: number): number {
  const a = 2 * triangles[t]!, b = 2 * triangles[t + 1]!, c = 2 * triangles[t + 2]!;
  return (xy[b]! - xy[a]!) * (xy[c + 1]! - xy[a + 1]!) - (xy[b + 1]! - xy[a + 1]!) * (xy[c]! - xy[a]!);
}

import type { Watch } from "#base/watch.ts";
import { area } from "#mesh/area.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { EditMesh } from "#mesh/edit-mesh.ts";
import { keepsShape } from "#mesh/keeps-shape.ts";
import { triangleCount, vertexCount, type Mesh } from "#mesh/mesh.ts";
import { nextCorner } from "#mesh/neighbours.ts";

const PASSES = 14;
/** A collapse may turn a triangle by at most 60°: more would fold it. */
const FOLD_COSINE = 0.5;
/** So many of the points left out are asked how far the new surface lies from them. */
const ASKED = 20_000;

/**
 * Draws short edges together until about `most` triangles are left; points that stay keep their places, so a fine scan loses only what is
 * finer than its new edges. `error`: how far points left out lie off the new surface, at most, of a sample; in the mesh's unit.
 * The mesh must be manifold and turned alike; holes keep their edges.
 */
export function thin(mesh: Mesh, most: number, watch: Watch): { mesh: Mesh; error: number } {
  if (triangleCount(mesh) <= most) return { mesh, error: 0 };
  const m = new EditMesh(mesh);
  // an even mesh of equilateral triangles with this edge would have `most` of them; drawing together overshoots by about a fifth
  const edge = 0.85 * Math.sqrt((area(mesh) / most) * (4 / Math.sqrt(3)));
  let left = triangleCount(mesh);
  for (let pass = 1; pass <= PASSES && left > most; pass++) {
    watch("thin", (0.8 * (triangleCount(mesh) - left)) / (triangleCount(mesh) - most));
    left -= collapsePass(m, edge * (0.5 + 0.1 * pass), edge * 2, left - most);
  }
  watch("thin", 0.8);
  const thinned = m.taken().mesh;
  return { mesh: thinned, error: errorOf(mesh, thinned) };
}

/** Draws edges shorter than `shortest` together as long as none grows beyond `longest`; triangles taken away, about `enough` at most. */
function collapsePass(m: EditMesh, shortest: number, longest: number, enough: number): number {
  const ring: number[] = [];
  const moved = new Uint8Array(m.vertices); // each point takes part once a pass, so that the thinning is even
  let gone = 0;
  for (let h = 0; h < m.triangles * 3 && gone < enough; h++) {
    if (m.corners[h]! < 0 || m.squareLength(h) >= shortest * shortest) continue;
    const a = m.corners[h]!;
    const b = m.corners[nextCorner(h)]!;
    if (moved[a] || moved[b] || m.isOpen(a)) continue;
    const n = m.ringInto(ring, a);
    if (!m.canCollapse(h) || !keepsShape(m, a, b, ring, n, longest, FOLD_COSINE)) continue;
    moved[b] = 1;
    m.collapse(h);
    gone += 2;
  }
  return gone;
}

function errorOf(before: Mesh, after: Mesh): number {
  const closest = new ClosestPoint(after);
  const out = new Float64Array(3);
  const p = before.positions;
  let worst = 0;
  const step = Math.max(1, Math.floor(vertexCount(before) / ASKED));
  for (let v = 0; v < vertexCount(before); v += step) {
    closest.findInto(out, p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!);
    worst = Math.max(worst, closest.squaredDistance);
  }
  return Math.sqrt(worst);
}

import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { keepTriangles } from "#mesh/weld.ts";

/** The middle box leaves out this share of corners at either side of each axis … */
const OUTER = 0.02;
/** … and what lies farther beyond it than so many of its diagonals is not of the scanned body. */
const BEYOND = 1;
/** Corners that are looked at for the box. */
const ASKED = 30_000;

/**
 * Parts the triangles with a corner far off from all others. They must go before any extent is taken: one of them at a hundred metres
 * makes every tolerance larger than the last. Undefined when there are none. A mesh of fewer than 50 corners has no far ones.
 */
export function partFar(mesh: Mesh): { readonly near: Mesh; readonly count: number } | undefined {
  const { positions: p, triangles } = mesh;
  const box = middleBox(mesh);
  const diagonal = Math.sqrt(box.reduce((sum, { low, high }) => sum + (high - low) ** 2, 0));
  const away = new Uint8Array(triangleCount(mesh));
  let count = 0;
  for (let i = 0; i < triangles.length; i++) {
    const t = Math.floor(i / 3);
    if (away[t] || box.every(({ low, high }, k) => p[3 * triangles[i]! + k]! >= low - BEYOND * diagonal && p[3 * triangles[i]! + k]! <= high + BEYOND * diagonal)) continue;
    away[t] = 1;
    count++;
  }
  return count === 0 ? undefined : { near: keepTriangles(mesh, (t) => !away[t]), count };
}

function middleBox({ positions: p, triangles }: Mesh): readonly { readonly low: number; readonly high: number }[] {
  const stride = Math.max(1, Math.floor(triangles.length / ASKED));
  return [0, 1, 2].map((k) => {
    const sorted = Float64Array.from({ length: Math.ceil(triangles.length / stride) }, (_, i) => p[3 * triangles[i * stride]! + k]!).sort();
    const cut = Math.floor(OUTER * sorted.length);
    return { low: sorted[cut]!, high: sorted[sorted.length - 1 - cut]! };
  });
}

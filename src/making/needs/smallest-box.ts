import { hullOf } from "#plane/hull.ts";
import type { Outline } from "#plane/outline.ts";

/** The rectangle of least area that holds an outline, however it is turned; mm. One of its sides lies along an edge of the hull (Freeman and Shapira, Communications of the ACM 18, 1975), so all edges are tried. */
export function smallestBox({ xy }: Outline): { readonly longMm: number; readonly wideMm: number } {
  const hull = hullOf(xy);
  let best = { longMm: Infinity, wideMm: Infinity };
  let least = Infinity;
  hull.forEach(([x, y], k) => {
    const [nx, ny] = hull[(k + 1) % hull.length]!;
    const length = Math.sqrt((nx - x) ** 2 + (ny - y) ** 2);
    if (length === 0) return;
    const [a, b] = extents(hull, (nx - x) / length, (ny - y) / length);
    if (a * b >= least) return;
    least = a * b;
    best = { longMm: Math.max(a, b), wideMm: Math.min(a, b) };
  });
  return best;
}

/** How far points reach along a direction of length 1 and across it. */
function extents(points: readonly (readonly [number, number])[], ux: number, uy: number): readonly [number, number] {
  let alongLeast = Infinity, alongMost = -Infinity, acrossLeast = Infinity, acrossMost = -Infinity;
  for (const [x, y] of points) {
    const along = x * ux + y * uy, across = y * ux - x * uy;
    alongLeast = Math.min(alongLeast, along);
    alongMost = Math.max(alongMost, along);
    acrossLeast = Math.min(acrossLeast, across);
    acrossMost = Math.max(acrossMost, across);
  }
  return [alongMost - alongLeast, acrossMost - acrossLeast];
}

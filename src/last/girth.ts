import type { Mesh } from "#mesh/mesh.ts";
import { hullGirth, type Sectioner } from "#mesh/section.ts";
import type { Point3 } from "./last.ts";

/** What a tape pulled round the last in a plane reads, mm: the perimeter of the convex hull of the section. 0 off the last. */
export function tapeGirth(cutter: Sectioner, point: Point3, normal: Point3): number {
  const sections = cutter.cut(point, normal);
  const total = sections.reduce((n, s) => n + s.points.length, 0);
  if (total < 9) return 0;
  const all = new Float64Array(total);
  let at = 0;
  for (const { points } of sections) {
    all.set(points, at);
    at += points.length;
  }
  return hullGirth(all, normal);
}

/** Length along x of everything, seen from above: heel bulge to toe wall, parallel to the ground. */
export function planLength({ positions }: Mesh): number {
  const [low, high] = extentX(positions);
  return high - low;
}

/** Tape girth in the plane square to the long axis at a share of the plan length from the heel. */
export function girthAt(cutter: Sectioner, share: number): number {
  const [low, high] = extentX(cutter.mesh.positions);
  return tapeGirth(cutter, [low + share * (high - low), 0, 0], [1, 0, 0]);
}

function extentX(positions: Float64Array): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < positions.length; i += 3) {
    low = Math.min(low, positions[i]!);
    high = Math.max(high, positions[i]!);
  }
  return [low, high];
}

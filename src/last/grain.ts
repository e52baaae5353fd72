import type { Mesh } from "#mesh/mesh.ts";
import { nextCorner } from "#mesh/neighbours.ts";
import { noiseOf } from "#mesh/noise.ts";
import { smoothScan } from "#mesh/smooth.ts";

/** A scan made fit to measure on, and how it was sampled; lengths in its own unit. */
export interface Calmed {
  readonly mesh: Mesh;
  /** Roughness that was smoothed: standard deviation of the surface across itself; 0 when none was. */
  readonly noise: number;
  readonly smoothed: boolean;
  /** Edge length under which nine of ten edges stay. */
  readonly edge: number;
}

/** Roughness under this share of the scan's extent (0.03 mm on a last) moves no measure by 0.1 mm and is left. */
const leftAlone = 1.2e-4;

/** Over this share (8 mm on a last) edges are so long that bends of the surface pass for roughness: nothing is smoothed. */
const tooCoarse = 0.03;

/** Smooths a rough scan, edges kept. Arc lengths and tape girths read long on a rough surface: 0.3 mm adds 20 mm to a last length. */
export function calm(scan: Mesh, extent: number): Calmed {
  const noise = noiseOf(scan);
  const edge = longEdge(scan);
  const smoothed = noise > leftAlone * extent && edge < tooCoarse * extent;
  return { mesh: smoothed ? smoothScan(scan, noise).mesh : scan, noise: smoothed ? noise : 0, smoothed, edge };
}

function longEdge(mesh: Mesh): number {
  const { positions: p, triangles } = mesh;
  const stride = Math.max(1, Math.floor(triangles.length / 6000));
  const lengths: number[] = [];
  for (let h = 0; h < triangles.length; h += stride) {
    const a = 3 * triangles[h]!;
    const b = 3 * triangles[nextCorner(h)]!;
    lengths.push(Math.sqrt((p[a]! - p[b]!) ** 2 + (p[a + 1]! - p[b + 1]!) ** 2 + (p[a + 2]! - p[b + 2]!) ** 2));
  }
  lengths.sort((a, b) => a - b);
  return lengths[Math.floor(lengths.length * 0.9)] ?? 0;
}

import type { Mesh } from "#mesh/mesh.ts";
import { vertexRings } from "#mesh/neighbours.ts";
import { vertexNormals } from "#mesh/normals.ts";

/** How a scan's surface was sampled. */
export interface Grain {
  /** Roughness: standard deviation of the surface across itself, mm. */
  readonly noiseMm: number;
  /** Edge length that 9 of 10 vertices stay under on average, mm. */
  readonly edgeMm: number;
}

/**
 * Roughness from how far each vertex stands off the middle of its neighbours, less how far those do: a curved surface stands off
 * evenly, noise does not. Medians, so edges and holes do not count. For white noise of deviation σ on six neighbours the
 * difference has deviation σ √((1 + 1/6)² + … ) ≈ 1.56 σ (found by trial on a plane), and a median of magnitudes is 0.6745 of it.
 */
export function grainOf(mesh: Mesh): Grain {
  const { positions: p } = mesh;
  const n = p.length / 3;
  const rings = vertexRings(mesh);
  const normals = vertexNormals(mesh);
  const stand = new Float64Array(n);
  const edges: number[] = [];
  const stride = Math.max(1, Math.floor(n / 4000));
  for (let v = 0; v < n; v++) {
    const from = rings.start[v]!;
    const to = rings.start[v + 1]!;
    if (to === from) continue;
    let [x, y, z, length] = [0, 0, 0, 0];
    for (let i = from; i < to; i++) {
      const w = rings.items[i]!;
      const [dx, dy, dz] = [p[3 * w]! - p[3 * v]!, p[3 * w + 1]! - p[3 * v + 1]!, p[3 * w + 2]! - p[3 * v + 2]!];
      x += dx;
      y += dy;
      z += dz;
      length += Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
    const k = to - from;
    stand[v] = -(x * normals[3 * v]! + y * normals[3 * v + 1]! + z * normals[3 * v + 2]!) / k;
    if (v % stride === 0) edges.push(length / k);
  }
  const uneven: number[] = [];
  for (let v = 0; v < n; v += stride) {
    const from = rings.start[v]!;
    const to = rings.start[v + 1]!;
    if (to === from) continue;
    let sum = 0;
    for (let i = from; i < to; i++) sum += stand[rings.items[i]!]!;
    uneven.push(Math.abs(stand[v]! - sum / (to - from)));
  }
  uneven.sort((a, b) => a - b);
  edges.sort((a, b) => a - b);
  return { noiseMm: (uneven[uneven.length >> 1] ?? 0) / (0.6745 * 1.56), edgeMm: edges[Math.floor(edges.length * 0.9)] ?? 0 };
}

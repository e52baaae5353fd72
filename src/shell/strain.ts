import type { Mesh } from "#mesh/mesh.ts";
import type { StrainSummary } from "./shell.ts";

/** Area-weighted summary of the larger of the two principal strains (as |stretch − 1|) of each triangle. */
export function summarise(mesh: Mesh, stretchMax: Float64Array, stretchMin: Float64Array): StrainSummary {
  const n = stretchMax.length;
  const worst = new Float64Array(n);
  const area = areas(mesh);
  for (let f = 0; f < n; f++) worst[f] = Math.max(Math.abs(stretchMax[f]! - 1), Math.abs(stretchMin[f]! - 1));
  const order = Uint32Array.from({ length: n }, (_, f) => f).sort((a, b) => worst[a]! - worst[b]! || a - b);
  let total = 0;
  for (const a of area) total += a;
  const at = (share: number): number => {
    let sum = 0;
    for (const f of order) {
      sum += area[f]!;
      if (sum >= share * total) return worst[f]!;
    }
    return n > 0 ? worst[order[n - 1]!]! : 0;
  };
  return { p50: at(0.5), p95: at(0.95), max: n > 0 ? worst[order[n - 1]!]! : 0 };
}

/** Area of each triangle in space, mm². */
export function areas({ positions: p, triangles: t }: Mesh): Float64Array {
  const out = new Float64Array(t.length / 3);
  for (let f = 0; f < out.length; f++) {
    const a = 3 * t[3 * f]!, b = 3 * t[3 * f + 1]!, c = 3 * t[3 * f + 2]!;
    const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
    out[f] = 0.5 * Math.sqrt((uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2);
  }
  return out;
}

import { triangleArea } from "#mesh/area.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
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
export function areas(mesh: Mesh): Float64Array {
  return Float64Array.from({ length: triangleCount(mesh) }, (_, f) => triangleArea(mesh, f));
}

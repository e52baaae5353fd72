import { triangleArea } from "#mesh/area.ts";
import { triangleCount, vertexCount, type Mesh } from "#mesh/mesh.ts";
import type { StrainSummary } from "./shell.ts";

/**
 * Area-weighted summary of the larger of the two principal strains (as |stretch − 1|). p50 and p95 count triangles; `max`, `give` and
 * `gather` are the largest mean round a vertex, since a single sliver of a triangle at the rim says nothing about the leather.
 */
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
    return 0;
  };
  const most = (perTriangle: Float64Array) => vertexMeans(mesh, perTriangle).reduce((a, b) => Math.max(a, b), 0);
  return { p50: at(0.5), p95: at(0.95), max: most(worst), give: most(stretchMax.map((s) => s - 1)), gather: most(stretchMin.map((s) => 1 - s)) };
}

/** Mean of a value per triangle round each vertex, weighted by area. */
export function vertexMeans(mesh: Mesh, perTriangle: Float64Array): Float64Array {
  const area = areas(mesh);
  const sum = new Float64Array(vertexCount(mesh)), weight = new Float64Array(vertexCount(mesh));
  for (let k = 0; k < mesh.triangles.length; k++) {
    const f = Math.floor(k / 3), v = mesh.triangles[k]!;
    sum[v]! += area[f]! * perTriangle[f]!;
    weight[v]! += area[f]!;
  }
  for (let v = 0; v < sum.length; v++) if (weight[v]! > 0) sum[v]! /= weight[v]!;
  return sum;
}

/** Area of each triangle in space, mm². */
export function areas(mesh: Mesh): Float64Array {
  return Float64Array.from({ length: triangleCount(mesh) }, (_, f) => triangleArea(mesh, f));
}

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
  for (let f = 0; f < n; f++) worst[f] = Math.max(Math.abs(stretchMax[f]! - 1), Math.abs(stretchMin[f]! - 1));
  const area = areas(mesh);
  const sorted = worst.slice().sort();
  /** The least of the values below or at which this share of the area lies. */
  const at = (share: number): number => {
    const wanted = share * areaUpTo(Infinity, worst, area);
    let low = 0, high = n - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (areaUpTo(sorted[middle]!, worst, area) >= wanted) high = middle;
      else low = middle + 1;
    }
    return sorted[low] ?? 0;
  };
  const most = (perTriangle: Float64Array) => meansOver(mesh, area, perTriangle).reduce((a, b) => Math.max(a, b), 0);
  return { p50: at(0.5), p95: at(0.95), max: most(worst), give: most(stretchMax.map((s) => s - 1)), gather: most(stretchMin.map((s) => 1 - s)) };
}

function areaUpTo(value: number, worst: Float64Array, area: Float64Array): number {
  let sum = 0;
  for (let f = 0; f < worst.length; f++) if (worst[f]! <= value) sum += area[f]!;
  return sum;
}

/** Mean of a value per triangle round each vertex, weighted by area. */
export function vertexMeans(mesh: Mesh, perTriangle: Float64Array): Float64Array {
  return meansOver(mesh, areas(mesh), perTriangle);
}

function meansOver(mesh: Mesh, area: Float64Array, perTriangle: Float64Array): Float64Array {
  const { triangles } = mesh;
  const sum = new Float64Array(vertexCount(mesh)), weight = new Float64Array(vertexCount(mesh));
  for (let f = 0; 3 * f < triangles.length; f++) {
    const a = area[f]!, times = a * perTriangle[f]!;
    for (let k = 3 * f; k < 3 * f + 3; k++) {
      const v = triangles[k]!;
      sum[v]! += times;
      weight[v]! += a;
    }
  }
  for (let v = 0; v < sum.length; v++) if (weight[v]! > 0) sum[v]! /= weight[v]!;
  return sum;
}

/** Area of each triangle in space, mm². */
export function areas(mesh: Mesh): Float64Array {
  const out = new Float64Array(triangleCount(mesh));
  for (let f = 0; f < out.length; f++) out[f] = triangleArea(mesh, f);
  return out;
}

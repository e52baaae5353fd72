import { vertexCount, type Mesh } from "./mesh.ts";
import { vertexRings, type Groups } from "./neighbours.ts";
import { vertexNormals } from "./normals.ts";

/** So many points tell the noise of the whole. */
const SAMPLES = 3000;
/** A quadric needs six points; fewer neighbours than this say nothing about the residual. */
const FEWEST = 10;

/**
 * Standard deviation of the scan's roughness along its normals, in the mesh's unit. At sampled points a quadric z = f(x, y) is fitted to
 * two rings of neighbours; the median of how far the point itself lies off it, scaled to a normal distribution, is immune to edges and
 * holes. Curvature does not count as noise as far as a quadric follows it.
 */
export function noiseOf(mesh: Mesh): number {
  const rings = vertexRings(mesh);
  const normals = vertexNormals(mesh);
  const n = vertexCount(mesh);
  const step = Math.max(1, Math.floor(n / SAMPLES));
  const off: number[] = [];
  for (let v = 0; v < n; v += step) {
    const residual = offQuadric(mesh.positions, rings, normals, v);
    if (residual !== undefined) off.push(residual);
  }
  if (off.length === 0) return 0;
  off.sort((a, b) => a - b);
  return off[off.length >> 1]! / 0.6745;
}

/** |distance| of vertex v from the quadric of its two rings, over the square root of 1 + its own leverage. */
function offQuadric(p: Float64Array, rings: Groups, normals: Float64Array, v: number): number | undefined {
  const around = twoRings(rings, v);
  if (around.length < FEWEST) return undefined;
  const [nx, ny, nz] = [normals[3 * v]!, normals[3 * v + 1]!, normals[3 * v + 2]!];
  const [ax, ay, az] = Math.abs(nx) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  let [ux, uy, uz] = [ay * nz - az * ny, az * nx - ax * nz, ax * ny - ay * nx];
  const s = 1 / Math.sqrt(ux * ux + uy * uy + uz * uz);
  [ux, uy, uz] = [ux * s, uy * s, uz * s];
  const [wx, wy, wz] = [ny * uz - nz * uy, nz * ux - nx * uz, nx * uy - ny * ux];
  const normal = new Float64Array(36);
  const right = new Float64Array(6);
  let reach = 0;
  for (const w of around) reach = Math.max(reach, (p[3 * w]! - p[3 * v]!) ** 2 + (p[3 * w + 1]! - p[3 * v + 1]!) ** 2 + (p[3 * w + 2]! - p[3 * v + 2]!) ** 2);
  const scale = 1 / Math.sqrt(reach || 1);
  for (const w of around) {
    const [dx, dy, dz] = [p[3 * w]! - p[3 * v]!, p[3 * w + 1]! - p[3 * v + 1]!, p[3 * w + 2]! - p[3 * v + 2]!];
    const x = (dx * ux + dy * uy + dz * uz) * scale;
    const y = (dx * wx + dy * wy + dz * wz) * scale;
    const z = dx * nx + dy * ny + dz * nz;
    const row = [1, x, y, x * x, x * y, y * y];
    for (let i = 0; i < 6; i++) {
      right[i]! += row[i]! * z;
      for (let j = 0; j <= i; j++) normal[6 * i + j]! += row[i]! * row[j]!;
    }
  }
  return constantTerm(normal, right);
}

/** |first unknown| / √(1 + its variance factor), by Cholesky of the 6×6 normal matrix; undefined when it is singular. */
function constantTerm(a: Float64Array, b: Float64Array): number | undefined {
  for (let i = 0; i < 6; i++) a[7 * i]! += 1e-9;
  for (let j = 0; j < 6; j++) {
    for (let k = 0; k < j; k++) for (let i = j; i < 6; i++) a[6 * i + j]! -= a[6 * i + k]! * a[6 * j + k]!;
    const d = a[7 * j]!;
    if (!(d > 1e-9)) return undefined;
    const root = Math.sqrt(d);
    for (let i = j; i < 6; i++) a[6 * i + j]! /= root;
  }
  const solve = (y: Float64Array): number => {
    for (let i = 0; i < 6; i++) {
      for (let k = 0; k < i; k++) y[i]! -= a[6 * i + k]! * y[k]!;
      y[i]! /= a[7 * i]!;
    }
    for (let i = 5; i >= 0; i--) {
      for (let k = i + 1; k < 6; k++) y[i]! -= a[6 * k + i]! * y[k]!;
      y[i]! /= a[7 * i]!;
    }
    return y[0]!;
  };
  const variance = solve(Float64Array.from([1, 0, 0, 0, 0, 0]));
  return Math.abs(solve(b)) / Math.sqrt(1 + variance);
}

function twoRings({ start, items }: Groups, v: number): number[] {
  const out = new Set<number>();
  for (let i = start[v]!; i < start[v + 1]!; i++) {
    const w = items[i]!;
    out.add(w);
    for (let j = start[w]!; j < start[w + 1]!; j++) out.add(items[j]!);
  }
  out.delete(v);
  return [...out];
}

import { vertexCount, type Mesh } from "./mesh.ts";
import { nextCorner, vertexCorners, vertexRings } from "./neighbours.ts";
import { noiseOf } from "./noise.ts";
import { vertexNormals } from "./normals.ts";
import { smoothNormals, triangleRings } from "./smooth-normals.ts";

/** Roughness below this share of an edge is left alone: smoothing could only lose detail. */
const LEAST_NOISE = 0.02;
/** Unit normals that differ by this much (60°) belong to two sides of an edge. */
const REACH = 1;
/** The same while the roughness still tilts triangles by a third of that. */
const ROUGH_REACH = 1.2;
const ROUGH = 0.12;
const UPDATES = 20;

export interface Smoothed {
  readonly mesh: Mesh;
  /** Roughness found, standard deviation along the normal, in the mesh's unit. */
  readonly noise: number;
  /** False when the scan was fine as it was and was handed back unchanged. */
  readonly changed: boolean;
}

/**
 * Takes the roughness off a scan and keeps its edges: normals are averaged over neighbours that look the same way, points are moved to
 * match them, and what that took off on the whole (not the roughness) is given back, so that nothing shrinks. How strongly goes by the
 * roughness against the mean edge. Method, sources and errors: docs/method/scan.md.
 */
export function smoothScan(mesh: Mesh, noise: number = noiseOf(mesh)): Smoothed {
  const rough = noise / meanEdge(mesh);
  if (!(rough >= LEAST_NOISE)) return { mesh, noise, changed: false };
  const rounds = Math.min(18, Math.max(3, Math.round(90 * rough)));
  const reaches = Array.from({ length: rounds }, (_, i) => (rough > ROUGH && i < rounds / 3 ? ROUGH_REACH : REACH));
  const normals = smoothNormals(mesh, triangleRings(mesh), reaches);
  const moved: Mesh = { positions: followNormals(mesh, normals), triangles: mesh.triangles };
  const back = Math.min(16, Math.round(4 + 60 * rough));
  const once: Mesh = { positions: giveBack(mesh, moved, back), triangles: mesh.triangles };
  // At a tight tip the first time brings back only part of what was lost: 0.4 mm at a pointed toe, 0.27 after the second.
  return { mesh: { positions: giveBack(mesh, once, back), triangles: mesh.triangles }, noise, changed: true };
}

function meanEdge({ positions: p, triangles }: Mesh): number {
  let sum = 0;
  for (let h = 0; h < triangles.length; h++) {
    const a = 3 * triangles[h]!;
    const b = 3 * triangles[nextCorner(h)]!;
    sum += Math.sqrt((p[a]! - p[b]!) ** 2 + (p[a + 1]! - p[b + 1]!) ** 2 + (p[a + 2]! - p[b + 2]!) ** 2);
  }
  return sum / triangles.length;
}

/** Moves each point toward the planes through the middles of its triangles across the wanted normals (Sun et al. 2007, Fast and effective feature-preserving mesh denoising; from memory). */
function followNormals(mesh: Mesh, normals: Float64Array): Float64Array {
  const { triangles } = mesh;
  const { start, items } = vertexCorners(mesh);
  const p = mesh.positions.slice();
  const vertices = vertexCount(mesh);
  for (let round = 0; round < UPDATES; round++) {
    for (let v = 0; v < vertices; v++) {
      const vx = p[3 * v]!, vy = p[3 * v + 1]!, vz = p[3 * v + 2]!;
      let x = 0, y = 0, z = 0;
      for (let i = start[v]!; i < start[v + 1]!; i++) {
        const t = items[i]! - (items[i]! % 3);
        const a = 3 * triangles[t]!, b = 3 * triangles[t + 1]!, c = 3 * triangles[t + 2]!;
        const nx = normals[t]!, ny = normals[t + 1]!, nz = normals[t + 2]!;
        const off = ((p[a]! + p[b]! + p[c]!) / 3 - vx) * nx + ((p[a + 1]! + p[b + 1]! + p[c + 1]!) / 3 - vy) * ny + ((p[a + 2]! + p[b + 2]! + p[c + 2]!) / 3 - vz) * nz;
        x += nx * off;
        y += ny * off;
        z += nz * off;
      }
      const count = start[v + 1]! - start[v]!;
      if (count === 0) continue;
      p[3 * v] = vx + x / count;
      p[3 * v + 1] = vy + y / count;
      p[3 * v + 2] = vz + z / count;
    }
  }
  return p;
}

/**
 * What smoothing took off each point along the normal is roughness plus a slow part, where the surface's own bend was flattened.
 * Averaged over neighbours on the same side of an edge the roughness cancels; the slow part is put back (twicing, Tukey 1977).
 */
function giveBack(before: Mesh, after: Mesh, rounds: number): Float64Array {
  const normals = vertexNormals(after);
  const { start, items } = vertexRings(after);
  const vertices = vertexCount(after);
  let off = new Float64Array(vertices);
  for (let v = 0; v < vertices; v++) for (let k = 3 * v; k < 3 * v + 3; k++) off[v]! += (before.positions[k]! - after.positions[k]!) * normals[k]!;
  let next = new Float64Array(vertices);
  for (let round = 0; round < rounds; round++) {
    for (let v = 0; v < vertices; v++) {
      const nx = normals[3 * v]!, ny = normals[3 * v + 1]!, nz = normals[3 * v + 2]!;
      let weight = 1;
      let sum = off[v]!;
      for (let i = start[v]!; i < start[v + 1]!; i++) {
        const u = items[i]!;
        const near = 1 - 4 * ((normals[3 * u]! - nx) ** 2 + (normals[3 * u + 1]! - ny) ** 2 + (normals[3 * u + 2]! - nz) ** 2);
        if (near <= 0) continue;
        weight += near * near;
        sum += near * near * off[u]!;
      }
      next[v] = sum / weight;
    }
    [off, next] = [next, off];
  }
  return after.positions.map((x, i) => x + off[(i - (i % 3)) / 3]! * normals[i]!);
}

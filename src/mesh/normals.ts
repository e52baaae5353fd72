import { triangleCount, type Mesh } from "./mesh.ts";

/** Unit normal of each triangle, x0 y0 z0 …; zero for a triangle without area. */
export function faceNormals(mesh: Mesh): Float64Array {
  return faceNormalsInto(new Float64Array(triangleCount(mesh) * 3), mesh);
}

export function faceNormalsInto(out: Float64Array, { positions: p, triangles }: Mesh): Float64Array {
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i]!;
    const b = 3 * triangles[i + 1]!;
    const c = 3 * triangles[i + 2]!;
    const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
    const nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const s = length > 0 ? 1 / length : 0;
    out[i] = nx * s;
    out[i + 1] = ny * s;
    out[i + 2] = nz * s;
  }
  return out;
}

/**
 * Sum of the normals of the triangles round each vertex, x0 y0 z0 …; zero for a vertex of no triangle. Weights u × v / (|u|²|v|²) of each
 * corner, exact for vertices that lie on a ball (Max 1999, Weights for computing vertex normals from facet normals, J. Graphics Tools
 * 4(2); from memory).
 */
export function normalSums({ positions: p, triangles }: Mesh): Float64Array {
  const out = new Float64Array(p.length);
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = 3 * triangles[i + k]!;
      const b = 3 * triangles[i + ((k + 1) % 3)]!;
      const c = 3 * triangles[i + ((k + 2) % 3)]!;
      const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
      const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
      const weight = (ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz);
      if (!(weight > 0)) continue;
      out[a]! += (uy * vz - uz * vy) / weight;
      out[a + 1]! += (uz * vx - ux * vz) / weight;
      out[a + 2]! += (ux * vy - uy * vx) / weight;
    }
  }
  return out;
}

/** Unit normal of each vertex, {@link normalSums} brought to length one; zero for a vertex of no triangle. */
export function vertexNormals(mesh: Mesh): Float64Array {
  const out = normalSums(mesh);
  for (let i = 0; i < out.length; i += 3) {
    const length = Math.sqrt(out[i]! ** 2 + out[i + 1]! ** 2 + out[i + 2]! ** 2);
    if (length > 0) for (let k = 0; k < 3; k++) out[i + k]! /= length;
  }
  return out;
}

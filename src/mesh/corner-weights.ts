import type { Mesh } from "./mesh.ts";

/**
 * Weights of a triangle's corners at the point of its plane nearest to x y z; they add up to 1. Undefined where the triangle has no area.
 */
export function cornerWeights({ positions: p, triangles }: Pick<Mesh, "positions" | "triangles">, triangle: number, [x, y, z]: readonly [number, number, number]): readonly [number, number, number] | undefined {
  const a = 3 * triangles[3 * triangle]!, b = 3 * triangles[3 * triangle + 1]!, c = 3 * triangles[3 * triangle + 2]!;
  const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
  const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
  const wx = x - p[a]!, wy = y - p[a + 1]!, wz = z - p[a + 2]!;
  const uu = ux * ux + uy * uy + uz * uz, uv = ux * vx + uy * vy + uz * vz, vv = vx * vx + vy * vy + vz * vz;
  const wu = wx * ux + wy * uy + wz * uz, wv = wx * vx + wy * vy + wz * vz;
  const det = uu * vv - uv * uv;
  if (!(det > 0)) return undefined;
  const s = (vv * wu - uv * wv) / det, r = (uu * wv - uv * wu) / det;
  return [1 - s - r, s, r];
}

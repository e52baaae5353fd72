import { triangleCount, type Mesh } from "./mesh.ts";

/** Area of triangle `t`, in squares of the mesh's unit. */
export function triangleArea({ positions: p, triangles }: Mesh, t: number): number {
  const a = 3 * triangles[3 * t]!;
  const b = 3 * triangles[3 * t + 1]!;
  const c = 3 * triangles[3 * t + 2]!;
  const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
  const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  return 0.5 * Math.sqrt(nx * nx + ny * ny + nz * nz);
}

/** Area of the whole surface, in squares of the mesh's unit. */
export function area(mesh: Mesh): number {
  let sum = 0;
  for (let t = 0; t < triangleCount(mesh); t++) sum += triangleArea(mesh, t);
  return sum;
}

/** Volume enclosed by a closed mesh (divergence theorem), positive when its triangles face outward. Taken about the middle of the box. */
export function volume(mesh: Mesh): number {
  const { positions: p, triangles } = mesh;
  const { low, high } = bounds(mesh);
  const [ox, oy, oz] = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i]!;
    const b = 3 * triangles[i + 1]!;
    const c = 3 * triangles[i + 2]!;
    const [ax, ay, az] = [p[a]! - ox, p[a + 1]! - oy, p[a + 2]! - oz];
    const [bx, by, bz] = [p[b]! - ox, p[b + 1]! - oy, p[b + 2]! - oz];
    const [cx, cy, cz] = [p[c]! - ox, p[c + 1]! - oy, p[c + 2]! - oz];
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum / 6;
}

export interface Bounds {
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

/** Box around the points that triangles use; ±Infinity for a mesh of none. */
export function bounds({ positions, triangles }: Mesh): Bounds {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const v of triangles) {
    for (let k = 0; k < 3; k++) {
      const x = positions[3 * v + k]!;
      if (x < low[k]!) low[k] = x;
      if (x > high[k]!) high[k] = x;
    }
  }
  return { low, high };
}

/** Length of the diagonal of the box around the mesh. */
export function diagonal(mesh: Mesh): number {
  const { low, high } = bounds(mesh);
  return Math.sqrt((high[0] - low[0]) ** 2 + (high[1] - low[1]) ** 2 + (high[2] - low[2]) ** 2);
}

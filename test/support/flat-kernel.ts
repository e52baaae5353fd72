import type { Mesh } from "#mesh/mesh.ts";
import { Dirichlet } from "#flatten/dirichlet.ts";
import { diskOf } from "#flatten/disk.ts";
import { framesOf } from "#flatten/frames.ts";
import { conformalMap } from "#flatten/lscm.ts";
import { NewtonSystem } from "#flatten/newton-system.ts";

/** The parts a flattening is made of, for testing them one by one. */
export function kernelOf(mesh: Mesh) {
  const disk = diskOf(mesh.positions.length / 3, mesh.triangles);
  return { disk, pattern: disk.pattern, dirichlet: new Dirichlet(disk), frames: framesOf(mesh.positions, disk.triangles) };
}

/** The conformal start alone, pinned at two vertices. */
export function conformalOf(mesh: Mesh, a: number, b: number, apart: number): Float64Array {
  const { pattern, dirichlet, frames } = kernelOf(mesh);
  return conformalMap(new NewtonSystem(pattern), dirichlet, frames, a, b, apart)!;
}

/** Distance of two vertices in the plane, mm. */
export function flatDistance(uv: Float64Array, a: number, b: number): number {
  return Math.hypot(uv[2 * a]! - uv[2 * b]!, uv[2 * a + 1]! - uv[2 * b + 1]!);
}

/** Sum of the signed areas of the triangles in the plane, mm². */
export function flatArea(uv: Float64Array, triangles: Uint32Array): number {
  let sum = 0;
  for (let k = 0; k < triangles.length; k += 3) {
    const [a, b, c] = [2 * triangles[k]!, 2 * triangles[k + 1]!, 2 * triangles[k + 2]!];
    sum += 0.5 * ((uv[b]! - uv[a]!) * (uv[c + 1]! - uv[a + 1]!) - (uv[c]! - uv[a]!) * (uv[b + 1]! - uv[a + 1]!));
  }
  return sum;
}

import type { Mesh } from "#mesh/mesh.ts";
import type { Point3 } from "./last.ts";
import { eachTriangle } from "./samples.ts";
import { dot, unit } from "./vector.ts";

/** The flat top of the back part. */
export interface Comb {
  /** Unit, upward. A point p lies on the comb where dot(normal, p) = level. */
  readonly normal: Point3;
  readonly level: number;
  readonly areaMm2: number;
}

/** Less than this is no comb to go by; a woman's comb has some 2000 … 4000 mm². */
const leastAreaMm2 = 600;

/**
 * The comb of a last that lies with z up (mm): the flat patch among the highest surfaces. Fitted as a plane by the area-weighted
 * mean of normals and middles, taking only what lies within `flatMm` of it, four times over. Undefined when no patch is flat.
 */
export function findComb(mesh: Mesh, flatMm: number): Comb | undefined {
  let top = -Infinity;
  let ground = Infinity;
  for (let i = 2; i < mesh.positions.length; i += 3) {
    top = Math.max(top, mesh.positions[i]!);
    ground = Math.min(ground, mesh.positions[i]!);
  }
  const fifth = ground + 0.8 * (top - ground);
  let normal: Point3 = [0, 0, 1];
  let level = NaN;
  let area = 0;
  for (let round = 0; round < 5; round++) {
    const cone = round === 0 ? 0.94 : 0.99; // 20, then 8 degrees
    let sum: Point3 = [0, 0, 0];
    let middle: Point3 = [0, 0, 0];
    area = 0;
    eachTriangle(mesh, (a, nx, ny, nz, cx, cy, cz) => {
      if (cz < fifth || nx * normal[0] + ny * normal[1] + nz * normal[2] < cone) return;
      // Where the plane lies is not known at first: all of it; then a slab that narrows to `flatMm`.
      if (round > 0 && Math.abs(cx * normal[0] + cy * normal[1] + cz * normal[2] - level) > flatMm * (5 - round)) return;
      sum = [sum[0] + a * nx, sum[1] + a * ny, sum[2] + a * nz];
      middle = [middle[0] + a * cx, middle[1] + a * cy, middle[2] + a * cz];
      area += a;
    });
    if (area < leastAreaMm2) return undefined;
    normal = unit(sum);
    level = dot(normal, middle) / area;
  }
  return { normal, level, areaMm2: area };
}

import type { Point3 } from "#last/last.ts";
import type { Mesh } from "#mesh/mesh.ts";

/** A pull of the pincers at the edge of the upper: where, which way, and how long its arrow is drawn, mm. */
export interface PullArrow {
  readonly at: Point3;
  /** Along the leather, square to its edge and outward; length 1. */
  readonly way: Point3;
  readonly longMm: number;
}

/** Drawn so long for no pull at all, and so much longer for each newton; the strongest no longer than this, mm. */
const shortest = 12, perN = 0.22, longest = 38;

/** The arrow of a pull at the edge nearest to `near`, on the sheet as it lies in one picture. */
export function pullArrow({ triangles, positions }: Mesh, edges: readonly (readonly [number, number])[], near: Point3, pullN: number): PullArrow | undefined {
  const away = (v: number): number => Math.hypot(positions[3 * v]! - near[0], positions[3 * v + 1]! - near[1], positions[3 * v + 2]! - near[2]);
  let best: readonly [number, number] | undefined, least = Infinity;
  for (const edge of edges) {
    const far = away(edge[0]) + away(edge[1]);
    if (far < least) [best, least] = [edge, far];
  }
  if (!best) return undefined;
  const [a, b] = best, third = thirdOf(triangles, a, b);
  if (third === undefined) return undefined;
  const p = (v: number): Point3 => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!];
  const [pa, pb, pc] = [p(a), p(b), p(third)];
  const along = unit(minus(pb, pa)), middle: Point3 = [(pa[0] + pb[0]) / 2, (pa[1] + pb[1]) / 2, (pa[2] + pb[2]) / 2];
  const out = minus(middle, pc), slant = dot(out, along);
  return { at: middle, way: unit([out[0] - slant * along[0], out[1] - slant * along[1], out[2] - slant * along[2]]), longMm: Math.min(longest, shortest + perN * pullN) };
}

/** The corner across an edge at the rim, of the one triangle that has it. */
function thirdOf(triangles: Uint32Array, a: number, b: number): number | undefined {
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    if (corners.includes(a) && corners.includes(b)) return corners.find((v) => v !== a && v !== b);
  }
  return undefined;
}

const minus = (p: Point3, q: Point3): Point3 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Point3, q: Point3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const unit = (p: Point3): Point3 => {
  const long = Math.sqrt(dot(p, p)) || 1;
  return [p[0] / long, p[1] / long, p[2] / long];
};

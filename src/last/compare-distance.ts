import type { Watch } from "#base/watch.ts";
import { triangleArea } from "#mesh/area.ts";
import type { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { vertexNormals } from "#mesh/normals.ts";
import { moved, type Motion } from "./compare-align.ts";
import { nearestOnRing } from "./centre-section.ts";
import { pointAtIndex } from "./closed-curve.ts";
import type { Point3 } from "./last.ts";
import { distance, pointAt } from "./vector.ts";

/**
 * How far another surface lies from every vertex of a mesh, mm: positive where it stands out beyond the mesh, negative where it lies
 * inside. `motion` leads from the mesh to the other surface's frame.
 */
export function signedDistances(mesh: Mesh, other: ClosestPoint, motion: Motion, watch: Watch): Float64Array {
  const n = mesh.positions.length / 3;
  const normals = vertexNormals(mesh);
  const out = new Float64Array(n);
  const found = new Float64Array(3);
  const r = motion.rotation;
  let hint = -1;
  for (let i = 0; i < n; i++) {
    if (i % 4096 === 0) watch("comparing", i / n);
    const p = moved(motion, pointAt(mesh.positions, i));
    hint = other.findInto(found, p[0], p[1], p[2], hint);
    const off = Math.sqrt(other.squaredDistance);
    const [x, y, z] = [normals[3 * i]!, normals[3 * i + 1]!, normals[3 * i + 2]!];
    let out1 = 0;
    for (let k = 0; k < 3; k++) out1 += (found[k]! - p[k]!) * (r[3 * k]! * x + r[3 * k + 1]! * y + r[3 * k + 2]! * z);
    out[i] = out1 < 0 ? -off : off;
  }
  return out;
}

/** What of the surface is closer than …: by area, mm. */
export interface Spread {
  readonly meanMm: number;
  readonly rmsMm: number;
  /** 95 % of the surface lies closer than this. */
  readonly p95Mm: number;
  /** The greatest distance, with its sign, and its vertex. */
  readonly maxMm: number;
  readonly maxAt: number;
}

/** Distances summed up over the vertices that count, each weighed by its share of the area. */
export function spreadOf(mesh: Mesh, distances: Float64Array, counts: (vertex: number) => boolean): Spread {
  const weight = vertexAreas(mesh);
  let [sum, signed, squares, maxMm, maxAt] = [0, 0, 0, 0, 0];
  const order: number[] = [];
  for (let i = 0; i < distances.length; i++) {
    if (weight[i] === 0 || !counts(i)) continue;
    const d = distances[i]!;
    order.push(i);
    sum += weight[i]!;
    signed += weight[i]! * d;
    squares += weight[i]! * d * d;
    if (Math.abs(d) > Math.abs(maxMm)) [maxMm, maxAt] = [d, i];
  }
  order.sort((a, b) => Math.abs(distances[a]!) - Math.abs(distances[b]!) || a - b);
  let [run, p95Mm] = [0, 0];
  for (const i of order) {
    run += weight[i]!;
    p95Mm = Math.abs(distances[i]!);
    if (run >= 0.95 * sum) break;
  }
  return sum > 0 ? { meanMm: signed / sum, rmsMm: Math.sqrt(squares / sum), p95Mm, maxMm, maxAt } : { meanMm: 0, rmsMm: 0, p95Mm: 0, maxMm: 0, maxAt: 0 };
}

function vertexAreas(mesh: Mesh): Float64Array {
  const out = new Float64Array(mesh.positions.length / 3);
  for (let t = 0; 3 * t < mesh.triangles.length; t++) {
    const third = triangleArea(mesh, t) / 3;
    for (let k = 0; k < 3; k++) out[mesh.triangles[3 * t + k]!]! += third;
  }
  return out;
}

/** How far one closed line lies from another: root mean square and greatest, and where that is on the first, mm. */
export function lineDistance(points: Float64Array, other: Float64Array, motion: Motion): { readonly rmsMm: number; readonly maxMm: number; readonly maxAt: Point3 } {
  const n = points.length / 3;
  let [squares, maxMm] = [0, 0];
  let maxAt: Point3 = pointAt(points, 0);
  for (let i = 0; i < n; i++) {
    const p = moved(motion, pointAt(points, i));
    const off = distance(p, pointAtIndex(other, nearestOnRing(other, p)));
    squares += off * off;
    if (off > maxMm) [maxMm, maxAt] = [off, pointAt(points, i)];
  }
  return { rmsMm: Math.sqrt(squares / n), maxMm, maxAt };
}

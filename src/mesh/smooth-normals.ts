import { triangleArea } from "./area.ts";
import { triangleCount, type Mesh } from "./mesh.ts";
import { vertexCorners, type Groups } from "./neighbours.ts";
import { faceNormals } from "./normals.ts";

/** For each triangle those that share a point with it, itself left out. */
export function triangleRings(mesh: Mesh): Groups {
  const { triangles } = mesh;
  const corners = vertexCorners(mesh);
  const total = triangleCount(mesh);
  const start = new Uint32Array(total + 1);
  let room = 0;
  for (const v of triangles) room += corners.start[v + 1]! - corners.start[v]!;
  const items = new Uint32Array(room);
  const mark = new Int32Array(total).fill(-1);
  let n = 0;
  for (let t = 0; t < total; t++) {
    mark[t] = t;
    for (let k = 3 * t; k < 3 * t + 3; k++) {
      const v = triangles[k]!;
      for (let i = corners.start[v]!; i < corners.start[v + 1]!; i++) {
        const c = corners.items[i]!;
        const u = (c - (c % 3)) / 3;
        if (mark[u] === t) continue;
        mark[u] = t;
        items[n++] = u;
      }
    }
    start[t + 1] = n;
  }
  return { start, items: items.slice(0, n) };
}

/**
 * Triangle normals averaged over neighbours that look the same way: a neighbour counts by its area and by (1 − d²/reach²)² of the
 * difference d of the unit normals, nothing beyond `reach` (bilateral filter of normals after Zheng et al. 2011, with a kernel of
 * finite reach instead of a bell). One round per entry of `reaches`.
 */
export function smoothNormals(mesh: Mesh, rings: Groups, reaches: readonly number[]): Float64Array {
  const areas = new Float64Array(triangleCount(mesh));
  for (let t = 0; t < areas.length; t++) areas[t] = triangleArea(mesh, t);
  let from: Float64Array = faceNormals(mesh);
  let to: Float64Array = new Float64Array(from.length);
  const { start, items } = rings;
  for (const reach of reaches) {
    const inverse = 1 / (reach * reach);
    for (let t = 0; t < areas.length; t++) {
      const nx = from[3 * t]!, ny = from[3 * t + 1]!, nz = from[3 * t + 2]!;
      const own = areas[t]!;
      let sx = nx * own, sy = ny * own, sz = nz * own;
      for (let i = start[t]!; i < start[t + 1]!; i++) {
        const u = items[i]!;
        const ux = from[3 * u]!, uy = from[3 * u + 1]!, uz = from[3 * u + 2]!;
        const near = 1 - ((ux - nx) * (ux - nx) + (uy - ny) * (uy - ny) + (uz - nz) * (uz - nz)) * inverse;
        if (near <= 0) continue;
        const w = areas[u]! * near * near;
        sx += w * ux;
        sy += w * uy;
        sz += w * uz;
      }
      const length = Math.sqrt(sx * sx + sy * sy + sz * sz);
      const s = length > 0 ? 1 / length : 0;
      to[3 * t] = sx * s;
      to[3 * t + 1] = sy * s;
      to[3 * t + 2] = sz * s;
    }
    [from, to] = [to, from];
  }
  return from;
}

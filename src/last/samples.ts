import type { Mesh } from "#mesh/mesh.ts";

/** Places on a surface that each stand for the same area: x y z … and outward unit normals, and that area. */
export interface Samples {
  readonly points: Float64Array;
  readonly normals: Float64Array;
  readonly areaEach: number;
  readonly count: number;
  /** Vertices of the mesh, x y z …: all of a coarse one, evenly thinned ones of a fine one. For extents, which coarse triangles cut short. */
  readonly corners: Float64Array;
}

/**
 * About `wanted` samples of equal area, in the order of the triangles; the same mesh gives the same samples. A triangle larger
 * than one share gives several, all at its middle: enough for questions of pose, not for measuring.
 */
export function sampleSurface(mesh: Mesh, wanted: number): Samples {
  const total = surfaceArea(mesh);
  const share = total / wanted;
  const points = new Float64Array(3 * (wanted + 1));
  const normals = new Float64Array(3 * (wanted + 1));
  let count = 0;
  let due = share / 2;
  let seen = 0;
  eachTriangle(mesh, (area, nx, ny, nz, cx, cy, cz) => {
    seen += area;
    while (due < seen && count <= wanted) {
      const k = 3 * count++;
      points[k] = cx;
      points[k + 1] = cy;
      points[k + 2] = cz;
      normals[k] = nx;
      normals[k + 1] = ny;
      normals[k + 2] = nz;
      due += share;
    }
  });
  return { points, normals, areaEach: share, count, corners: thinned(mesh.positions, 2 * wanted) };
}

function thinned(positions: Float64Array, most: number): Float64Array {
  const n = positions.length / 3;
  const stride = Math.ceil(n / most);
  const out = new Float64Array(3 * Math.ceil(n / stride));
  for (let i = 0; 3 * i < out.length; i++) out.set(positions.subarray(3 * stride * i, 3 * stride * i + 3), 3 * i);
  return out;
}

export function surfaceArea(mesh: Mesh): number {
  let total = 0;
  eachTriangle(mesh, (area) => (total += area));
  return total;
}

type Visit = (area: number, nx: number, ny: number, nz: number, cx: number, cy: number, cz: number) => void;

/** Area, unit normal and middle of every triangle that has an area. */
export function eachTriangle({ positions: p, triangles: t }: Mesh, visit: Visit): void {
  for (let i = 0; i < t.length; i += 3) {
    const a = 3 * t[i]!;
    const b = 3 * t[i + 1]!;
    const c = 3 * t[i + 2]!;
    const ux = p[b]! - p[a]!;
    const uy = p[b + 1]! - p[a + 1]!;
    const uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!;
    const vy = p[c + 1]! - p[a + 1]!;
    const vz = p[c + 2]! - p[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (!(twice > 0)) continue;
    const third = 1 / 3;
    visit(
      twice / 2,
      nx / twice,
      ny / twice,
      nz / twice,
      (p[a]! + p[b]! + p[c]!) * third,
      (p[a + 1]! + p[b + 1]! + p[c + 1]!) * third,
      (p[a + 2]! + p[b + 2]! + p[c + 2]!) * third,
    );
  }
}

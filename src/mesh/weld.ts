import { vertexCount, type Mesh } from "./mesh.ts";

/** Cells are this many tolerances wide, so that few points lie near enough to a wall to need a look next door. */
const CELL = 32;

/**
 * Joins points that lie within `tolerance` of an earlier one and drops triangles that collapse by it, and points of no triangle.
 * Points keep the place of the first of their group. Linear in time.
 */
export function weld(mesh: Mesh, tolerance: number): Mesh {
  const { positions, triangles } = mesh;
  const groups = new PointGroups(positions, tolerance);
  const target = new Int32Array(vertexCount(mesh)).fill(-1);
  const kept = new Uint32Array(triangles.length);
  let n = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const v = triangles[i + k]!;
      if (target[v] === -1) target[v] = groups.join(v);
      kept[n + k] = target[v]!;
    }
    if (kept[n] !== kept[n + 1] && kept[n + 1] !== kept[n + 2] && kept[n + 2] !== kept[n]) n += 3;
  }
  return compact({ positions, triangles: kept.slice(0, n) });
}

/** Drops points of no triangle and numbers the rest by first use. */
export function compact({ positions, triangles }: Mesh): Mesh {
  const number = new Int32Array(positions.length / 3).fill(-1);
  const out = new Float64Array(positions.length);
  const renamed = new Uint32Array(triangles.length);
  let n = 0;
  for (let i = 0; i < triangles.length; i++) {
    const v = triangles[i]!;
    if (number[v] === -1) {
      number[v] = n;
      for (let k = 0; k < 3; k++) out[3 * n + k] = positions[3 * v + k]!;
      n++;
    }
    renamed[i] = number[v]!;
  }
  return { positions: out.slice(0, 3 * n), triangles: renamed };
}

/** The mesh with only the triangles for which `keep` holds, points renumbered. */
export function keepTriangles(mesh: Mesh, keep: (t: number) => boolean): Mesh {
  const { triangles } = mesh;
  const kept = new Uint32Array(triangles.length);
  let n = 0;
  for (let t = 0; t < triangles.length / 3; t++) if (keep(t)) for (let k = 0; k < 3; k++) kept[n++] = triangles[3 * t + k]!;
  return compact({ positions: mesh.positions, triangles: kept.slice(0, n) });
}

/** Finds for each point the first one within the tolerance: a hash of grid cells, each with a chain of points. */
class PointGroups {
  readonly #p: Float64Array;
  readonly #tolerance: number;
  readonly #cell: number;
  readonly #heads: Int32Array;
  readonly #next: Int32Array;
  readonly #mask: number;

  constructor(positions: Float64Array, tolerance: number) {
    this.#p = positions;
    this.#tolerance = tolerance;
    this.#cell = tolerance * CELL;
    const count = positions.length / 3;
    let size = 1024;
    while (size < count * 2) size *= 2;
    this.#mask = size - 1;
    this.#heads = new Int32Array(size).fill(-1);
    this.#next = new Int32Array(count).fill(-1);
  }

  /** The point that `v` is joined to: an earlier one or itself. */
  join(v: number): number {
    const p = this.#p;
    const [x, y, z] = [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];
    const t = this.#tolerance;
    const c = this.#cell;
    const [i0, i1] = [Math.floor((x - t) / c), Math.floor((x + t) / c)];
    const [j0, j1] = [Math.floor((y - t) / c), Math.floor((y + t) / c)];
    const [k0, k1] = [Math.floor((z - t) / c), Math.floor((z + t) / c)];
    for (let i = i0; i <= i1; i++)
      for (let j = j0; j <= j1; j++)
        for (let k = k0; k <= k1; k++) {
          for (let w = this.#heads[this.#slot(i, j, k)]!; w >= 0; w = this.#next[w]!) {
            const [dx, dy, dz] = [p[3 * w]! - x, p[3 * w + 1]! - y, p[3 * w + 2]! - z];
            if (dx * dx + dy * dy + dz * dz <= t * t) return w;
          }
        }
    const slot = this.#slot(Math.floor(x / c), Math.floor(y / c), Math.floor(z / c));
    this.#next[v] = this.#heads[slot]!;
    this.#heads[slot] = v;
    return v;
  }

  #slot(i: number, j: number, k: number): number {
    return (Math.imul(i, 73856093) ^ Math.imul(j, 19349663) ^ Math.imul(k, 83492791)) & this.#mask;
  }
}

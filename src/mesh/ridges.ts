import type { EditMesh } from "./edit-mesh.ts";
import { nextCorner, previousCorner } from "./neighbours.ts";

const WIDE = 2 ** 26;

/** Edges of a changing mesh that must stay where they are, named by their two vertices so that they survive any renumbering of triangles. */
export class Ridges {
  readonly #edges = new Set<number>();
  /** How many ridge edges meet at each vertex. */
  readonly #count = new Map<number, number>();

  /** Takes every edge whose triangles' normals have a dot product below `cosine`, and every open edge. */
  constructor(m: EditMesh, cosine: number) {
    for (let h = 0; h < m.triangles * 3; h++) {
      const g = m.twin[h]!;
      if (g < 0 || (g > h && normalsDot(m, h, g) < cosine)) this.#add(m.corners[h]!, m.corners[nextCorner(h)]!);
    }
  }

  meeting(v: number): number {
    return this.#count.get(v) ?? 0;
  }

  has(a: number, b: number): boolean {
    return this.meeting(a) > 0 && this.meeting(b) > 0 && this.#edges.has(key(a, b));
  }

  /** Edge a–b got vertex m in its middle. */
  split(a: number, b: number, m: number): void {
    if (!this.has(a, b)) return;
    this.#remove(a, b);
    this.#add(a, m);
    this.#add(m, b);
  }

  /** Vertex a, with `ring` around it, is drawn on to b along a ridge edge. */
  collapse(a: number, b: number, ring: readonly number[], n: number): void {
    if (this.meeting(a) === 0) return;
    for (let i = 0; i < n; i++) {
      const w = ring[i]!;
      if (!this.has(a, w)) continue;
      this.#remove(a, w);
      if (w !== b) this.#add(b, w);
    }
  }

  #add(a: number, b: number): void {
    const k = key(a, b);
    if (this.#edges.has(k)) return;
    this.#edges.add(k);
    this.#count.set(a, this.meeting(a) + 1);
    this.#count.set(b, this.meeting(b) + 1);
  }

  #remove(a: number, b: number): void {
    this.#edges.delete(key(a, b));
    this.#count.set(a, this.meeting(a) - 1);
    this.#count.set(b, this.meeting(b) - 1);
  }
}

const key = (a: number, b: number): number => (a < b ? a * WIDE + b : b * WIDE + a);

/** Dot product of the unit normals of the triangles on both sides of an edge. */
export function normalsDot(m: EditMesh, h: number, g: number): number {
  const a = normalOf(m, h);
  const b = normalOf(m, g);
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Unit normal of the triangle of half-edge h; zero when it has no area. */
export function normalOf(m: EditMesh, h: number): readonly [number, number, number] {
  return normalAcross(m.positions, m.corners[h]!, m.corners[nextCorner(h)]!, m.corners[previousCorner(h)]!);
}

/** Unit normal of the triangle on vertices a, b, c. */
export function normalAcross(p: Float64Array, a: number, b: number, c: number): readonly [number, number, number] {
  const ux = p[3 * b]! - p[3 * a]!, uy = p[3 * b + 1]! - p[3 * a + 1]!, uz = p[3 * b + 2]! - p[3 * a + 2]!;
  const vx = p[3 * c]! - p[3 * a]!, vy = p[3 * c + 1]! - p[3 * a + 1]!, vz = p[3 * c + 2]! - p[3 * a + 2]!;
  const nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
  const s = length > 0 ? 1 / length : 0;
  return [nx * s, ny * s, nz * s];
}

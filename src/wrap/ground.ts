import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { vertexNormals } from "#mesh/normals.ts";
import { weld } from "#mesh/weld.ts";

/** Vertices nearer than this are one, so that a surface cut open lengthwise has no edge at its cut, mm. */
const joinMm = 1e-6;

/**
 * A rigid surface to lie on. At every point it is taken as the plane through its nearest point, square to its normal there, the
 * vertices' normals blended over each triangle: it looks as smooth as what its triangles stand for, and beyond its edge it goes on straight.
 */
export class Ground {
  readonly mesh: Mesh;
  readonly #normals: Float64Array;
  readonly #closest: ClosestPoint;
  readonly #at = new Float64Array(3);

  /** Triangles counter-clockwise seen from the side that the sheet lies on. */
  constructor(mesh: Mesh) {
    this.mesh = weld(mesh, joinMm);
    this.#normals = vertexNormals(this.mesh);
    this.#closest = new ClosestPoint(this.mesh);
  }

  /**
   * Planes under all points: `plane` gets four numbers a point, unit normal n and offset c, so that n · x − c is the height over it; `foot` the
   * nearest points. `near` remembers the triangles for the next time; begin with −1.
   */
  planesInto(plane: Float64Array, foot: Float64Array, near: Int32Array, x: Float64Array): void {
    const q = this.#at;
    for (let i = 0; i < near.length; i++) {
      const t = this.#closest.findInto(q, x[3 * i]!, x[3 * i + 1]!, x[3 * i + 2]!, near[i]!);
      near[i] = t;
      foot.set(q, 3 * i);
      this.#normalInto(plane, 4 * i, t);
      plane[4 * i + 3] = plane[4 * i]! * q[0]! + plane[4 * i + 1]! * q[1]! + plane[4 * i + 2]! * q[2]!;
    }
  }

  /** Blended normal at the point in #at, which lies on triangle t. */
  #normalInto(out: Float64Array, at: number, t: number): void {
    const { positions: p, triangles } = this.mesh;
    const q = this.#at, m = this.#normals;
    const a = 3 * triangles[3 * t]!, b = 3 * triangles[3 * t + 1]!, c = 3 * triangles[3 * t + 2]!;
    let uu = 0, uv = 0, vv = 0, uw = 0, vw = 0;
    for (let d = 0; d < 3; d++) {
      const u = p[b + d]! - p[a + d]!, v = p[c + d]! - p[a + d]!, w = q[d]! - p[a + d]!;
      uu += u * u;
      uv += u * v;
      vv += v * v;
      uw += u * w;
      vw += v * w;
    }
    const det = uu * vv - uv * uv;
    const s = det > 0 ? (vv * uw - uv * vw) / det : 0, r = det > 0 ? (uu * vw - uv * uw) / det : 0;
    let size = 0;
    for (let d = 0; d < 3; d++) {
      const n = (1 - s - r) * m[a + d]! + s * m[b + d]! + r * m[c + d]!;
      out[at + d] = n;
      size += n * n;
    }
    size = 1 / Math.sqrt(size);
    for (let d = 0; d < 3; d++) out[at + d]! *= size;
  }
}

import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { vertexNormals } from "#mesh/normals.ts";
import { weld } from "#mesh/weld.ts";

/** Vertices nearer than this are one, so that a surface cut open lengthwise has no edge at its cut, mm. */
const joinMm = 1e-6;
/** Bends sharper than this are an edge of the surface, which no single point feels, 1/mm. */
const sharpest = 0.5;

/**
 * A rigid surface to lie on. At every point it is taken as the plane through its nearest point, square to its normal there, the
 * vertices' normals blended over each triangle: it looks as smooth as what its triangles stand for, and beyond its edge it goes on straight.
 */
export class Ground {
  readonly mesh: Mesh;
  readonly #normals: Float64Array;
  readonly #closest: ClosestPoint;
  readonly #at = new Float64Array(3);
  readonly #off = new Float64Array(3);

  /** Triangles counter-clockwise seen from the side that the sheet lies on. */
  constructor(mesh: Mesh) {
    this.mesh = weld(mesh, joinMm);
    this.#normals = vertexNormals(this.mesh);
    this.#closest = new ClosestPoint(this.mesh);
  }

  /**
   * Planes under all points: `plane` gets four numbers a point, unit normal n and offset c, so that n · x − c is the height over it; `foot` the
   * nearest points. `near` remembers the triangles for the next time; begin with −1. `bend`, where it is asked for, gets six numbers a point,
   * xx yx yy zx zy zz: how the normal turns as the point goes along, 1/mm, positive on a dome, none beyond the edge.
   */
  planesInto(plane: Float64Array, foot: Float64Array, near: Int32Array, x: Float64Array, bend?: Float64Array): void {
    const q = this.#at;
    for (let i = 0; i < near.length; i++) {
      const t = this.#closest.findInto(q, x[3 * i]!, x[3 * i + 1]!, x[3 * i + 2]!, near[i]!);
      near[i] = t;
      foot.set(q, 3 * i);
      this.#normalInto(plane, 4 * i, t);
      plane[4 * i + 3] = plane[4 * i]! * q[0]! + plane[4 * i + 1]! * q[1]! + plane[4 * i + 2]! * q[2]!;
      if (bend) this.#bendInto(bend, 6 * i, plane, 4 * i, t, x[3 * i]!, x[3 * i + 1]!, x[3 * i + 2]!);
    }
  }

  /** Turn of the blended normal along triangle t, for the point x y z whose nearest point is in #at. */
  #bendInto(out: Float64Array, at: number, plane: Float64Array, from: number, t: number, x: number, y: number, z: number): void {
    out.fill(0, at, at + 6);
    const n = plane.subarray(from, from + 3);
    const q = this.#at, off = this.#off;
    off[0] = x - q[0]!;
    off[1] = y - q[1]!;
    off[2] = z - q[2]!;
    const high = off[0] * n[0]! + off[1] * n[1]! + off[2] * n[2]!;
    const aside = off[0] * off[0] + off[1] * off[1] + off[2] * off[2] - high * high;
    // Beyond the edge the plane goes on straight.
    if (aside > 0.25 * high * high + 1e-6) return;
    turnInto(out, at, this.mesh, this.#normals, t, n);
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

/** Derivative of the normals' blend over triangle t, square to n on both sides, made symmetric, and bounded. */
function turnInto(out: Float64Array, at: number, { positions: p, triangles }: Mesh, m: Float64Array, t: number, n: Float64Array): void {
  const a = 3 * triangles[3 * t]!, b = 3 * triangles[3 * t + 1]!, c = 3 * triangles[3 * t + 2]!;
  let uu = 0, uv = 0, vv = 0, size = 0;
  for (let d = 0; d < 3; d++) {
    const u = p[b + d]! - p[a + d]!, v = p[c + d]! - p[a + d]!;
    uu += u * u;
    uv += u * v;
    vv += v * v;
    size += (m[a + d]! + m[b + d]! + m[c + d]!) * n[d]!;
  }
  const det = uu * vv - uv * uv;
  if (!(det > 0 && size > 0)) return;
  // Rows r = (turn of the normal) · 3/size, columns the gradients of the second and third corner's weights.
  const turn = new Float64Array(9);
  for (let d = 0; d < 3; d++)
    for (let e = 0; e < 3; e++) {
      const u = p[b + e]! - p[a + e]!, v = p[c + e]! - p[a + e]!;
      turn[3 * d + e] = ((m[b + d]! - m[a + d]!) * (vv * u - uv * v) + (m[c + d]! - m[a + d]!) * (uu * v - uv * u)) * (3 / (det * size));
    }
  for (let pass = 0; pass < 2; pass++)
    for (let k = 0; k < 3; k++) {
      const [step, from] = pass === 0 ? [3, k] : [1, 3 * k];
      const along = n[0]! * turn[from]! + n[1]! * turn[from + step]! + n[2]! * turn[from + 2 * step]!;
      for (let d = 0; d < 3; d++) turn[from + d * step]! -= along * n[d]!;
    }
  let square = 0;
  for (let d = 0; d < 9; d++) square += turn[d]! * turn[d]!;
  const part = Math.min(1, sharpest / Math.sqrt(square + 1e-30));
  for (let d = 0, k = at; d < 3; d++) for (let e = 0; e <= d; e++, k++) out[k] = 0.5 * part * (turn[3 * d + e]! + turn[3 * e + d]!);
}

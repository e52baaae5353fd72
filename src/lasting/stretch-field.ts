import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { Corrected } from "./correct.ts";

/** A flat sheet at some place of the last: its triangles there and on the flat. */
export interface SheetAt {
  readonly onLast: Mesh;
  readonly uv: Float64Array;
}

/** Stretch U of each triangle of the corrected upper against the uncorrected one, U₁₁ U₂₂ U₁₂ in the axes of that. */
function ownStretch({ before, flat }: Pick<Corrected, "before" | "flat">): Float64Array {
  const { triangles } = before.shell.mesh, out = new Float64Array(triangles.length);
  for (let k = 0; k < triangles.length; k += 3) {
    const [a, b, c, d] = mapOf(edgesOf(before.uv, triangles, k), edgesOf(flat.uv, triangles, k));
    // U = √(GᵀG) in closed form: (C + √det C 1) / √(tr C + 2 √det C).
    const c11 = a * a + c * c, c22 = b * b + d * d, c12 = a * b + c * d, root = a * d - b * c;
    const size = Math.sqrt(c11 + c22 + 2 * root);
    out.set([(c11 + root) / size, (c22 + root) / size, c12 / size], k);
  }
  return out;
}

type Quad = readonly [number, number, number, number];

/** Two edges from a triangle's first corner. */
function edgesOf(uv: Float64Array, triangles: Uint32Array, k: number): Quad {
  const [p, q, r] = [2 * triangles[k]!, 2 * triangles[k + 1]!, 2 * triangles[k + 2]!];
  return [uv[q]! - uv[p]!, uv[q + 1]! - uv[p + 1]!, uv[r]! - uv[p]!, uv[r + 1]! - uv[p + 1]!];
}

/** The linear map, row by row, that takes two edges to two others. */
function mapOf([px, py, qx, qy]: Quad, [ux, uy, vx, vy]: Quad): Quad {
  const det = px * qy - py * qx;
  return [(ux * qy - vx * py) / det, (vx * px - ux * qx) / det, (uy * qy - vy * py) / det, (vy * px - uy * qx) / det];
}

/**
 * The corrected upper's stretch at every triangle of another flat sheet at the same place of the last: taken where the triangle's middle
 * lies nearest, and turned into that sheet's axes.
 */
export function stretchAt(corrected: Pick<Corrected, "before" | "flat">, { onLast, uv }: SheetAt): Float64Array {
  const { before } = corrected, own = ownStretch(corrected), ground = before.onLast.mesh;
  if (onLast.triangles === ground.triangles && uv.length === before.uv.length) return turnedInto(own, before.uv, ground, onLast, uv, (t) => t);
  const nearest = new ClosestPoint(ground), found = new Float64Array(3), { positions: p } = onLast;
  let hint = -1;
  return turnedInto(own, before.uv, ground, onLast, uv, (t) => {
    const [a, b, c] = [3 * onLast.triangles[3 * t]!, 3 * onLast.triangles[3 * t + 1]!, 3 * onLast.triangles[3 * t + 2]!];
    const middle = (i: number): number => (p[a + i]! + p[b + i]! + p[c + i]!) / 3;
    hint = nearest.findInto(found, middle(0), middle(1), middle(2), hint);
    return hint;
  });
}

function turnedInto(own: Float64Array, before: Float64Array, ground: Mesh, sheet: Mesh, uv: Float64Array, at: (t: number) => number): Float64Array {
  const out = new Float64Array(sheet.triangles.length);
  for (let k = 0; k < out.length; k += 3) {
    const t = at(k / 3);
    // Where the sheet's own edges lie on the uncorrected upper, and by which turn that differs from where they lie on the sheet.
    const there = carriedEdges(ground, before, 3 * t, sheet, k), [a, b, c, d] = mapOf(edgesOf(uv, sheet.triangles, k), there);
    const size = Math.sqrt((a + d) * (a + d) + (c - b) * (c - b)), cos = (a + d) / size, sin = (c - b) / size;
    const [u11, u22, u12] = [own[3 * t]!, own[3 * t + 1]!, own[3 * t + 2]!];
    const cc = cos * cos, ss = sin * sin, cs = cos * sin;
    out[k] = cc * u11 + ss * u22 + 2 * cs * u12;
    out[k + 1] = ss * u11 + cc * u22 - 2 * cs * u12;
    out[k + 2] = cs * (u22 - u11) + (cc - ss) * u12;
  }
  return out;
}

/** A triangle's two edges in space as the flat map of triangle `j` of the ground would lay them. */
function carriedEdges(ground: Mesh, flat: Float64Array, j: number, sheet: Mesh, k: number): Quad {
  const p = vectorsOf(ground, j), e = vectorsOf(sheet, k), f = edgesOf(flat, ground.triangles, j);
  const [aa, ab, bb] = [dot(p, 0, p, 0), dot(p, 0, p, 3), dot(p, 3, p, 3)], det = aa * bb - ab * ab;
  const lay = (from: number): readonly [number, number] => {
    const s = dot(e, from, p, 0), t = dot(e, from, p, 3), x = (s * bb - t * ab) / det, y = (t * aa - s * ab) / det;
    return [x * f[0] + y * f[2], x * f[1] + y * f[3]];
  };
  return [...lay(0), ...lay(3)];
}

function vectorsOf({ positions: p, triangles }: Mesh, k: number): readonly number[] {
  const [a, b, c] = [3 * triangles[k]!, 3 * triangles[k + 1]!, 3 * triangles[k + 2]!];
  return [0, 1, 2, 3, 4, 5].map((i) => (i < 3 ? p[b + i]! - p[a + i]! : p[c + i - 3]! - p[a + i - 3]!));
}

const dot = (u: readonly number[], i: number, v: readonly number[], j: number): number => u[i]! * v[j]! + u[i + 1]! * v[j + 1]! + u[i + 2]! * v[j + 2]!;

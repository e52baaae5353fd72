/**
 * One triangle's numbers, by which energies of a map of triangles into the plane are summed. With J = (a b; c d) row by row: Hessian
 * aa ab bb ac ad bc bd cc cd dd at 0 … 9, then J itself, replaced by the gradient, at 10 … 13.
 */
export const numbersOfATriangle = 14;

/** Writes J of the triangle whose corners begin at k, its frame at f. */
export function jacobianInto(local: Float64Array, of: Float64Array, f: number, uv: Float64Array, triangles: Uint32Array, k: number): void {
  const p = 2 * triangles[k]!;
  const q = 2 * triangles[k + 1]!;
  const r = 2 * triangles[k + 2]!;
  const gx = of[f]!;
  const gy = of[f + 1]!;
  const hy = of[f + 2]!;
  const du = uv[q]! - uv[p]!;
  const dv = uv[q + 1]! - uv[p + 1]!;
  local[10] = du * gx;
  local[11] = du * gy + (uv[r]! - uv[p]!) * hy;
  local[12] = dv * gx;
  local[13] = dv * gy + (uv[r + 1]! - uv[p + 1]!) * hy;
}

/** From the gradient in J to that in the corners' uv; corner 0's follows from the others, as the three weights add up to one. */
export function scatterGradient(gradient: Float64Array, of: Float64Array, f: number, triangles: Uint32Array, k: number, h: Float64Array): void {
  const gx = of[f]!;
  const gy = of[f + 1]!;
  const hy = of[f + 2]!;
  const p = triangles[k]!;
  const q = triangles[k + 1]!;
  const r = triangles[k + 2]!;
  const u1 = gx * h[10]! + gy * h[11]!;
  const u2 = hy * h[11]!;
  const v1 = gx * h[12]! + gy * h[13]!;
  const v2 = hy * h[13]!;
  gradient[2 * p]! -= u1 + u2;
  gradient[2 * p + 1]! -= v1 + v2;
  gradient[2 * q]! += u1;
  gradient[2 * q + 1]! += v1;
  gradient[2 * r]! += u2;
  gradient[2 * r + 1]! += v2;
}

/** The same for gradient and Hessian. */
export function scatter(gradient: Float64Array, values: Float64Array, of: Float64Array, f: number, triangles: Uint32Array, slots: Uint32Array, k: number, h: Float64Array): void {
  scatterGradient(gradient, of, f, triangles, k, h);
  const gx = of[f]!;
  const gy = of[f + 1]!;
  const hy = of[f + 2]!;
  const p = triangles[k]!;
  const q = triangles[k + 1]!;
  const r = triangles[k + 2]!;
  // Blocks of corners 1 and 2; first letter the row (u or v of the first corner), second the column.
  const tb = gx * h[1]! + gy * h[2]!;
  const td = gx * h[4]! + gy * h[6]!;
  const td2 = gx * h[8]! + gy * h[9]!;
  const tb2 = gx * h[5]! + gy * h[6]!;
  const uu11 = gx * (gx * h[0]! + gy * h[1]!) + gy * tb;
  const uv11 = gx * (gx * h[3]! + gy * h[5]!) + gy * td;
  const vv11 = gx * (gx * h[7]! + gy * h[8]!) + gy * td2;
  const uu12 = tb * hy;
  const uv12 = td * hy;
  const vu12 = tb2 * hy;
  const vv12 = td2 * hy;
  const hh = hy * hy;
  const uu22 = h[2]! * hh;
  const uv22 = h[6]! * hh;
  const vv22 = h[9]! * hh;
  const uu01 = -(uu11 + uu12);
  const uv01 = -(uv11 + vu12);
  const vu01 = -(uv11 + uv12);
  const vv01 = -(vv11 + vv12);
  const uu02 = -(uu12 + uu22);
  const uv02 = -(uv12 + uv22);
  const vu02 = -(vu12 + uv22);
  const vv02 = -(vv12 + vv22);
  let at = 4 * p;
  values[at]! -= uu01 + uu02;
  values[at + 2]! -= vu01 + vu02;
  values[at + 3]! -= vv01 + vv02;
  at = 4 * q;
  values[at]! += uu11;
  values[at + 2]! += uv11;
  values[at + 3]! += vv11;
  at = 4 * r;
  values[at]! += uu22;
  values[at + 2]! += uv22;
  values[at + 3]! += vv22;
  at = 4 * slots[k]!;
  values[at]! += uu01;
  values[at + 1]! += uv01;
  values[at + 2]! += vu01;
  values[at + 3]! += vv01;
  at = 4 * slots[k + 1]!;
  values[at]! += uu02;
  values[at + 1]! += uv02;
  values[at + 2]! += vu02;
  values[at + 3]! += vv02;
  const across = q < r ? 1 : 2; // the block's rows belong to the smaller vertex
  at = 4 * slots[k + 2]!;
  values[at]! += uu12;
  values[at + across]! += uv12;
  values[at + 3 - across]! += vu12;
  values[at + 3]! += vv12;
}

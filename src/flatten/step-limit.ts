/**
 * The first t > 0 at which a triangle of uv + t · step loses its area, Infinity when none does: smallest positive root of the
 * determinant, a quadratic in t for each triangle (Smith and Schaefer 2015, from memory).
 */
export function firstCollapse(triangles: Uint32Array, uv: Float64Array, step: Float64Array): number {
  let denominator = 0; // largest of 1/t
  for (let k = 0; k < triangles.length; k += 3) {
    const p = 2 * triangles[k]!;
    const q = 2 * triangles[k + 1]!;
    const r = 2 * triangles[k + 2]!;
    const e0 = uv[q]! - uv[p]!;
    const e1 = uv[q + 1]! - uv[p + 1]!;
    const f0 = uv[r]! - uv[p]!;
    const f1 = uv[r + 1]! - uv[p + 1]!;
    const s0 = step[q]! - step[p]!;
    const s1 = step[q + 1]! - step[p + 1]!;
    const t0 = step[r]! - step[p]!;
    const t1 = step[r + 1]! - step[p + 1]!;
    // D + B t + C t² = 0 with D > 0 has the positive roots 2 D / (−B ± √(B² − 4 C D)).
    const D = e0 * f1 - e1 * f0;
    const B = e0 * t1 - e1 * t0 + s0 * f1 - s1 * f0;
    const C = s0 * t1 - s1 * t0;
    const inside = B * B - 4 * C * D;
    if (inside < 0) continue;
    const rate = (Math.sqrt(inside) - B) / (2 * D);
    if (rate > denominator) denominator = rate;
  }
  return 1 / denominator;
}

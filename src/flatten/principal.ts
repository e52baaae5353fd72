import type { Frames } from "./frames.ts";

/** Larger and smaller principal stretch of every triangle from the flat to the surface in space. */
export interface Principal {
  readonly stretchMax: Float64Array;
  readonly stretchMin: Float64Array;
  /** Triangles that are folded over or without area in the flat; their stretches are Infinity and that of their outline. */
  readonly flipped: number;
}

/**
 * Principal stretches by the closed form σ₁ ± σ₂ = |(a + d, c − b)|, |(a − d, b + c)| for J = (a b; c d), only + − × ÷ √.
 * J maps the surface into the plane, so the stretches from the flat to the surface are 1/σ₂ and 1/σ₁.
 */
export function principalStretches({ of }: Frames, triangles: Uint32Array, uv: Float64Array): Principal {
  const count = triangles.length / 3;
  const stretchMax = new Float64Array(count);
  const stretchMin = new Float64Array(count);
  let flipped = 0;
  for (let k = 0; k < count; k++) {
    const p = 2 * triangles[3 * k]!;
    const q = 2 * triangles[3 * k + 1]!;
    const r = 2 * triangles[3 * k + 2]!;
    const gx = of[4 * k]!;
    const gy = of[4 * k + 1]!;
    const hy = of[4 * k + 2]!;
    const du = uv[q]! - uv[p]!;
    const dv = uv[q + 1]! - uv[p + 1]!;
    const a = du * gx;
    const b = du * gy + (uv[r]! - uv[p]!) * hy;
    const c = dv * gx;
    const d = dv * gy + (uv[r + 1]! - uv[p + 1]!) * hy;
    const sum = Math.sqrt((a + d) * (a + d) + (c - b) * (c - b));
    const difference = Math.sqrt((a - d) * (a - d) + (b + c) * (b + c));
    const det = a * d - b * c;
    const larger = 0.5 * (sum + difference);
    if (!(det > 0)) flipped++;
    // σ₂ = det / σ₁ keeps its digits where sum and difference nearly cancel.
    stretchMax[k] = det > 0 ? larger / det : Infinity;
    stretchMin[k] = 1 / larger;
  }
  return { stretchMax, stretchMin, flipped };
}

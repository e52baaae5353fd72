/**
 * How the card's plane lies in a picture: a plane point (x, y, 1) in mm goes through the homography to (u, v) in units of
 * `radiusPx` about the middle of the picture, then outward by 1 + k1 r² + k2 r⁴ (radial distortion, r² = u² + v²).
 * Plane: x to the right, y up, seen from above, origin at the lower left corner of the squares. Picture: pixels, x to the
 * right, y down, the middle of the first pixel at (0, 0).
 */
export interface Placing {
  /** Row by row, 9 numbers, last one 1. */
  readonly homography: Float64Array;
  readonly k1: number;
  readonly k2: number;
  readonly centrePx: readonly [number, number];
  readonly radiusPx: number;
}

/** Where a plane point (mm) is seen, px. */
export function toPicture({ homography: h, k1, k2, centrePx, radiusPx }: Placing, x: number, y: number): [number, number] {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  const u = (h[0]! * x + h[1]! * y + h[2]!) / w;
  const v = (h[3]! * x + h[4]! * y + h[5]!) / w;
  const r = u * u + v * v;
  const out = radiusPx * (1 + r * (k1 + r * k2));
  return [centrePx[0] + out * u, centrePx[1] + out * v];
}

/** The plane point (mm) that is seen at a pixel. */
export function toPlane({ homography: h, k1, k2, centrePx, radiusPx }: Placing, px: number, py: number): [number, number] {
  const du = (px - centrePx[0]) / radiusPx;
  const dv = (py - centrePx[1]) / radiusPx;
  const d = Math.sqrt(du * du + dv * dv);
  // Newton on r (1 + k1 r² + k2 r⁴) = d; three or four steps for any lens that is not a fisheye.
  let r = d;
  for (let i = 0; i < 20; i++) {
    const s = r * r;
    const step = (r * (1 + s * (k1 + s * k2)) - d) / (1 + s * (3 * k1 + 5 * s * k2));
    r -= step;
    if (Math.abs(step) < 1e-14) break;
  }
  const scale = d > 0 ? r / d : 1;
  const u = du * scale;
  const v = dv * scale;
  // Two lines in x and y: (h0 − u h6) x + (h1 − u h7) y = u h8 − h2, and the same for v.
  const a = h[0]! - u * h[6]!, b = h[1]! - u * h[7]!, e = u * h[8]! - h[2]!;
  const c = h[3]! - v * h[6]!, f = h[4]! - v * h[7]!, g = v * h[8]! - h[5]!;
  const det = a * f - b * c;
  return [(e * f - b * g) / det, (a * g - e * c) / det];
}

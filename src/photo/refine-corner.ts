import { lightAt, type Grey } from "./grey.ts";

/**
 * The saddle point where two black and two white squares meet, near a first guess, px; undefined where there is none. Every
 * slope of the light near the corner is at right angles to the way from the corner, so that the corner solves a 2 × 2 system
 * (Förstner and Gülch 1987). Slopes are weighted by a bell of `reachPx` about the guess.
 */
export function refineCorner(grey: Grey, guessX: number, guessY: number, reachPx: number): [number, number] | undefined {
  const size = Math.max(2, Math.ceil(reachPx));
  let x = guessX, y = guessY;
  for (let round = 0; round < 30; round++) {
    let gxx = 0, gxy = 0, gyy = 0, bx = 0, by = 0;
    for (let j = -size; j <= size; j++) {
      for (let i = -size; i <= size; i++) {
        const px = x + i, py = y + j;
        const gx = (lightAt(grey, px + 1, py) - lightAt(grey, px - 1, py)) / 2;
        const gy = (lightAt(grey, px, py + 1) - lightAt(grey, px, py - 1)) / 2;
        const fall = Math.max(0, 1 - (i * i + j * j) / (reachPx * reachPx + 1));
        const w = fall * fall;
        const xx = w * gx * gx, xy = w * gx * gy, yy = w * gy * gy;
        gxx += xx;
        gxy += xy;
        gyy += yy;
        bx += xx * i + xy * j;
        by += xy * i + yy * j;
      }
    }
    const det = gxx * gyy - gxy * gxy;
    // A corner has slopes both ways; along a plain edge or on plain paper the system has no single solution.
    if (!(det > 0.02 * (gxx + gyy) ** 2)) return undefined;
    const dx = (bx * gyy - by * gxy) / det;
    const dy = (by * gxx - bx * gxy) / det;
    x += dx;
    y += dy;
    if (Math.abs(x - guessX) + Math.abs(y - guessY) > 1.5 * reachPx) return undefined;
    if (dx * dx + dy * dy < 1e-8) break;
  }
  return [x, y];
}

import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";

/**
 * Every triangle in a plane of its own: corner 0 at the origin, corner 1 at (x1, 0), corner 2 at (x2, y2), mm, y2 > 0. Kept
 * as what the energy needs: the gradients of the corners' weights, (gx, gy) of corner 1 and (0, hy) of corner 2, four numbers
 * a triangle with the area's share of the whole last: gx gy hy share.
 */
export interface Frames {
  readonly of: Float64Array;
  /** mm² */
  readonly area: number;
}

/** Lower limit of a triangle's height over its first side as a part of its longest side; thinner ones are taken to be this high. */
const THINNEST = 1e-4;

/**
 * Frames from positions x y z, mm. Made of + − × ÷ √ on differences and products that a mirror image shares, so both come
 * out the same to the last bit. A triangle without height is lifted to {@link THINNEST}.
 * @throws Refusal when two corners of a triangle coincide or a position is no number
 */
export function framesOf(positions: Float64Array, triangles: Uint32Array): Frames {
  const count = triangles.length / 3;
  const of = new Float64Array(4 * count);
  let area = 0;
  for (let k = 0; k < count; k++) {
    const a = 3 * triangles[3 * k]!;
    const b = 3 * triangles[3 * k + 1]!;
    const c = 3 * triangles[3 * k + 2]!;
    const [px, py, pz] = [positions[b]! - positions[a]!, positions[b + 1]! - positions[a + 1]!, positions[b + 2]! - positions[a + 2]!];
    const [qx, qy, qz] = [positions[c]! - positions[a]!, positions[c + 1]! - positions[a + 1]!, positions[c + 2]! - positions[a + 2]!];
    const [nx, ny, nz] = [py * qz - pz * qy, pz * qx - px * qz, px * qy - py * qx];
    const pp = px * px + py * py + pz * pz;
    const qq = qx * qx + qy * qy + qz * qz;
    const x1 = Math.sqrt(pp);
    const x2 = (px * qx + py * qy + pz * qz) / x1;
    const [rx, ry, rz] = [qx - px, qy - py, qz - pz];
    const rr = rx * rx + ry * ry + rz * rz;
    const longest = Math.sqrt(Math.max(pp, qq, rr));
    const y2 = Math.max(Math.sqrt(nx * nx + ny * ny + nz * nz), THINNEST * x1 * longest) / x1;
    if (!(Math.sqrt(Math.min(pp, qq, rr)) > 1e-9 * longest && y2 < Infinity)) {
      throw new Refusal(finding("surface-point-twice", { triangle: k }, [positions[a]!, positions[a + 1]!, positions[a + 2]!]));
    }
    of[4 * k] = 1 / x1;
    of[4 * k + 1] = -x2 / (x1 * y2);
    of[4 * k + 2] = 1 / y2;
    of[4 * k + 3] = 0.5 * x1 * y2;
    area += 0.5 * x1 * y2;
  }
  for (let k = 3; k < of.length; k += 4) of[k]! /= area;
  return { of, area };
}

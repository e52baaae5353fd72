import type { Mesh } from "#mesh/mesh.ts";
import type { Side } from "./last.ts";

/** Which foot a last is for, and how sure: 0 none, 1 every sign agrees. */
export interface SideGuess {
  readonly side: Side;
  readonly sure: number;
}

/**
 * Left or right from three signs: the waist of the bottom is hollower on the medial side, the lateral joint lies farther back,
 * and the crest of the cone leans medially (common practice, no source). Feather line and mesh in the last's frame:
 * seat point at x = 0, toe point in front, both at y = 0, z up.
 */
export function guessSide(feather: Float64Array, mesh: Mesh): SideGuess {
  let toeX = 0;
  for (let i = 0; i < feather.length; i += 3) toeX = Math.max(toeX, feather[i]!);
  const hollow = (halfWidth(feather, toeX, -1) - halfWidth(feather, toeX, 1)) / (0.02 * toeX);
  const joints = (widest(feather, toeX, 1) - widest(feather, toeX, -1)) / (0.05 * toeX);
  const lean = crestLean(mesh, toeX) / (0.008 * toeX);
  const clip = (v: number): number => Math.max(-1, Math.min(1, v));
  // Each sign is positive where medial is +y, as on a right last.
  const sum = clip(hollow) + 0.8 * clip(joints) + 0.6 * clip(lean);
  return { side: sum >= 0 ? "right" : "left", sure: Math.abs(sum) / 2.4 };
}

/** Mean distance of the feather from the axis at 38 … 50 % of the length on one side (+1: +y). */
function halfWidth(feather: Float64Array, toeX: number, sign: 1 | -1): number {
  let sum = 0;
  let n = 0;
  for (let i = 0; i < feather.length; i += 3) {
    const share = feather[i]! / toeX;
    if (share < 0.38 || share > 0.5 || feather[i + 1]! * sign < 0) continue;
    sum += feather[i + 1]! * sign;
    n++;
  }
  return n > 0 ? sum / n : 0;
}

/** x of the point farthest from the axis in the forepart on one side. */
function widest(feather: Float64Array, toeX: number, sign: 1 | -1): number {
  let best = -Infinity;
  let x = 0;
  for (let i = 0; i < feather.length; i += 3) {
    const share = feather[i]! / toeX;
    if (share > 0.5 && share < 0.93 && feather[i + 1]! * sign > best) {
      best = feather[i + 1]! * sign;
      x = feather[i]!;
    }
  }
  return x;
}

/** Mean y of the highest point of the slices between 55 and 75 % of the length. */
function crestLean({ positions: p }: Mesh, toeX: number): number {
  const slices = 10;
  const top = new Float64Array(slices).fill(-Infinity);
  const y = new Float64Array(slices);
  for (let i = 0; i < p.length; i += 3) {
    const k = Math.floor((p[i]! / toeX - 0.55) * (slices / 0.2));
    if (k < 0 || k >= slices || p[i + 2]! <= top[k]!) continue;
    top[k] = p[i + 2]!;
    y[k] = p[i + 1]!;
  }
  return y.reduce((sum, v) => sum + v, 0) / slices;
}

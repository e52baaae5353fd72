import { BlockPattern } from "#solve/block-pattern.ts";
import { Cholesky } from "#solve/cholesky.ts";
import { planFronts } from "#solve/front-plan.ts";
import type { Disk } from "./disk.ts";
import type { Frames } from "./frames.ts";

/**
 * A map without folds for any disk (Tutte 1963, Floater 1997): the rim goes round a circle by its lengths, every inner vertex
 * is the weighted mean of its neighbours with positive, symmetric weights. Weights are those of the Laplace equation
 * (cotangents, from the frames) where they are positive enough, so that even meshes keep their shape; with `plain` all are 1,
 * which folds least in finite arithmetic.
 */
export function convexMap({ vertices, triangles, rim }: Disk, frames: Frames, positions: Float64Array, plain: boolean): Float64Array {
  const pattern = new BlockPattern(vertices, 1);
  for (let k = 0; k < triangles.length; k += 3) for (let e = 0; e < 3; e++) pattern.slot(triangles[k + e]!, triangles[k + ((e + 1) % 3)]!);
  const weight = new Float64Array(pattern.valueCount);
  if (plain) weight.fill(1, vertices);
  else addCotangentsInto(weight, pattern, triangles, frames);
  const uv = new Float64Array(2 * vertices);
  const onRim = new Uint8Array(vertices);
  for (const i of rim) onRim[i] = 1;
  roundInto(uv, rim, positions, frames.area);
  const values = new Float64Array(pattern.valueCount);
  const u = new Float64Array(vertices);
  const v = new Float64Array(vertices);
  const { low, high } = pattern;
  for (let k = 0; k < low.length; k++) {
    const [a, b] = [low[k]!, high[k]!];
    const w = plain ? 1 : Math.max(weight[vertices + k]!, 0.02);
    values[a]! += w;
    values[b]! += w;
    if (onRim[a] === 0 && onRim[b] === 0) values[vertices + k] = -w;
    else if (onRim[a] !== onRim[b]) {
      const [inner, outer] = onRim[a] === 1 ? [b, a] : [a, b];
      u[inner]! += w * uv[2 * outer]!;
      v[inner]! += w * uv[2 * outer + 1]!;
    }
  }
  const cholesky = new Cholesky(pattern, planFronts(pattern));
  cholesky.factor(values); // diagonally dominant with positive weights: always positive definite
  cholesky.solveInto(u, u);
  cholesky.solveInto(v, v);
  for (let i = 0; i < vertices; i++) {
    if (onRim[i] === 1) continue;
    uv[2 * i] = u[i]!;
    uv[2 * i + 1] = v[i]!;
  }
  return uv;
}

/** Half the sum of the cotangents opposite to each edge. */
function addCotangentsInto(weight: Float64Array, pattern: BlockPattern, triangles: Uint32Array, { of, area }: Frames): void {
  for (let k = 0, f = 0; k < triangles.length; k += 3, f += 4) {
    const [gx, gy, hy] = [of[f]!, of[f + 1]!, of[f + 2]!];
    const full = of[f + 3]! * area;
    // −area · gᵢ · gⱼ is half the cotangent opposite to edge ij; g₀ = −g₁ − g₂.
    const w12 = -full * gy * hy;
    const w01 = full * (gx * gx + gy * gy + gy * hy);
    const w02 = full * (hy * hy + gy * hy);
    const [a, b, c] = [triangles[k]!, triangles[k + 1]!, triangles[k + 2]!];
    weight[pattern.slot(a, b)]! += w01;
    weight[pattern.slot(a, c)]! += w02;
    weight[pattern.slot(b, c)]! += w12;
  }
}

/** Rim vertices on the circle that has the surface's area, by chord lengths; the circle by its rational formula. */
function roundInto(uv: Float64Array, rim: Uint32Array, positions: Float64Array, area: number): void {
  const lengths = new Float64Array(rim.length);
  let total = 0;
  for (let k = 0; k < rim.length; k++) {
    const a = 3 * rim[k]!;
    const b = 3 * rim[(k + 1) % rim.length]!;
    const [x, y, z] = [positions[b]! - positions[a]!, positions[b + 1]! - positions[a + 1]!, positions[b + 2]! - positions[a + 2]!];
    lengths[k] = Math.sqrt(x * x + y * y + z * z);
    total += lengths[k]!;
  }
  const radius = Math.sqrt(area / Math.PI);
  let along = 0;
  for (let k = 0; k < rim.length; k++) {
    const quarters = Math.min((4 * along) / total, 4 - 1e-12);
    const quarter = Math.floor(quarters);
    const s = quarters - quarter;
    const tau = s * (0.8284 + 0.1716 * s * s); // near tan(π s / 4), exact at both ends
    const x = (radius * (1 - tau * tau)) / (1 + tau * tau);
    const y = (radius * 2 * tau) / (1 + tau * tau);
    const [u, v] = quarter === 0 ? [x, y] : quarter === 1 ? [-y, x] : quarter === 2 ? [-x, -y] : [y, -x];
    uv[2 * rim[k]!] = u;
    uv[2 * rim[k]! + 1] = v;
    along += lengths[k]!;
  }
}

/** Longer loops are cut up greedily: the exact way takes the cube of the number of points. */
const MOST_FOR_EXACT = 260;
/** Dearer than any triangle of a scan. */
const SHUNNED = 1e30;

/**
 * Triangles across a closed loop of points (x0 y0 z0 …), as indices into the loop, turned as the loop runs. The least area over
 * all ways to cut it up (Barequet and Sharir 1995, dynamic programme; from memory);
 * for long loops the ear of least such cost first. `taken` tells which chords to shun.
 */
export function fillLoop(points: Float64Array, taken: (i: number, j: number) => boolean = () => false): Uint32Array {
  const n = points.length / 3;
  if (n < 3) return new Uint32Array(0);
  return n <= MOST_FOR_EXACT ? leastArea(points, n, taken) : earByEar(points, n, taken);
}

/** Twice the area, with a share of the squared edges so that flat and straight loops are cut evenly too. */
function cost(p: Float64Array, a: number, b: number, c: number): number {
  const ux = p[3 * b]! - p[3 * a]!, uy = p[3 * b + 1]! - p[3 * a + 1]!, uz = p[3 * b + 2]! - p[3 * a + 2]!;
  const vx = p[3 * c]! - p[3 * a]!, vy = p[3 * c + 1]! - p[3 * a + 1]!, vz = p[3 * c + 2]! - p[3 * a + 2]!;
  const nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
  return Math.sqrt(nx * nx + ny * ny + nz * nz) + 1e-3 * (ux * ux + uy * uy + uz * uz + vx * vx + vy * vy + vz * vz);
}

function leastArea(p: Float64Array, n: number, taken: (i: number, j: number) => boolean): Uint32Array {
  const best = new Float64Array(n * n);
  const via = new Uint16Array(n * n);
  for (let span = 2; span < n; span++) {
    for (let i = 0; i + span < n; i++) {
      const k = i + span;
      let least = Infinity;
      let at = i + 1;
      for (let j = i + 1; j < k; j++) {
        const sum = best[i * n + j]! + best[j * n + k]!;
        if (sum >= least) continue;
        const total = sum + cost(p, i, j, k);
        if (total < least) [least, at] = [total, j];
      }
      best[i * n + k] = taken(i, k) ? least + SHUNNED : least;
      via[i * n + k] = at;
    }
  }
  const out: number[] = [];
  const todo = [0, n - 1];
  while (todo.length > 0) {
    const k = todo.pop()!;
    const i = todo.pop()!;
    if (k - i < 2) continue;
    const j = via[i * n + k]!;
    out.push(i, j, k);
    todo.push(i, j, j, k);
  }
  return Uint32Array.from(out);
}

/** Cuts off the cheapest ear again and again; looks at all ears of a round before it cuts those of the cheaper half. */
function earByEar(p: Float64Array, n: number, taken: (i: number, j: number) => boolean): Uint32Array {
  const out: number[] = [];
  let ring = Array.from({ length: n }, (_, i) => i);
  while (ring.length > 3) {
    const m = ring.length;
    const costs = ring.map((v, i) => cost(p, ring[(i + m - 1) % m]!, v, ring[(i + 1) % m]!) + (taken(ring[(i + m - 1) % m]!, ring[(i + 1) % m]!) ? SHUNNED : 0));
    const limit = costs.slice().sort((a, b) => a - b)[Math.floor(m / 3)]!;
    const cut = new Uint8Array(m);
    let left = m;
    for (let i = 0; i < m && left > 3; i++) {
      if (costs[i]! > limit || cut[(i + m - 1) % m] || cut[(i + 1) % m]) continue;
      out.push(ring[(i + m - 1) % m]!, ring[i]!, ring[(i + 1) % m]!);
      cut[i] = 1;
      left--;
    }
    ring = ring.filter((_, i) => !cut[i]);
  }
  out.push(ring[0]!, ring[1]!, ring[2]!);
  return Uint32Array.from(out);
}
